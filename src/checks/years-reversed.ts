import { defineCheck } from './define.ts';

/** A machine whose last year stands before its first. */
export default defineCheck({
  id: 'years-reversed',
  severity: 'error',
  group: 'reading',
  summary: 'The years of a machine run backward.',
  explain:
    'Readers look for their car by its year, and find none in a span that ends before it begins. It ' +
    'cannot be accepted, only mended.',
  messages: {
    reversed: {
      message: '{years} ends {difference} before it begins',
      fix: 'write {turned}, or correct the year that is wrong',
    },
  },
  run(sheet, _context, report) {
    for (const { years, span } of sheet.fits) {
      const [, first = '', last = ''] = /^(\d{4})\s*[-–]\s*(\d{4})$/.exec(years ?? '') ?? [];
      const difference = Number(first) - Number(last);
      if (years === null || difference <= 0) continue;
      report({
        message: 'reversed',
        span,
        values: {
          years,
          turned: `${last}-${first}`,
          difference: difference === 1 ? '1 year' : `${difference} years`,
        },
        compared: [first, last],
        suggest: () => {
          const at = sheet.text.indexOf(years, span.start);
          const isThere = at !== -1 && at < span.end;
          return isThere
            ? [{ write: `${last}-${first}`, at: { start: at, end: at + years.length } }]
            : [];
        },
      });
    }
  },
  examples: [
    {
      name: 'two years in the wrong order',
      sheet: { front: 'fits:\n  - { marque: Wexcombe, model: Four, years: 1950-1948 }' },
      expect: [
        {
          at: '{ marque: Wexcombe, model: Four, years: 1950-1948 }',
          message: '1950-1948 ends 2 years before it begins',
          fix: 'write 1948-1950, or correct the year that is wrong',
        },
      ],
    },
    {
      name: 'one year only',
      sheet: { front: 'fits:\n  - { marque: Wexcombe, model: Four, years: 1948-1948 }' },
      expect: [],
    },
  ],
});
