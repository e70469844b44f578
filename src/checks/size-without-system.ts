import { defineCheck } from './define.ts';
import { statedSizes } from './stated-sizes.ts';

/** `No. 60`, `60`, `1.5`: a name or number that is a different size in every system. */
export default defineCheck({
  id: 'size-without-system',
  severity: 'error',
  group: 'sizes',
  summary: 'A size has a number or a name, and no unit or gauge system.',
  explain:
    'No. 60 is 0.0400 in on the drill gauge, 0.60 mm as a jet marked in hundredths of a millimeter ' +
    'and 0.060 in as one marked in thousandths. A guess would print one of them as if the source had ' +
    'said it. Find out which the source means and write that.',
  messages: {
    bare: { message: '{problem}', fix: '{fix}' },
  },
  run(sheet, _context, report) {
    for (const { size, subject } of statedSizes(sheet)) {
      if (size.reading.ok) continue;
      const { code, message, fix } = size.reading.problem;
      if (code !== 'bare-number' && code !== 'no-unit') continue;
      report({
        message: 'bare',
        span: size.span,
        values: { problem: message, fix: fix ?? 'add the unit' },
        subject,
      });
    }
  },
  examples: [],
});
