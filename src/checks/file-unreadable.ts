import { defineCheck } from './define.ts';

/** What is not text, or is beyond the reader's bounds, refused in plain words. */
export default defineCheck({
  id: 'file-unreadable',
  severity: 'error',
  group: 'reading',
  summary: 'The file is not text that a sheet can be read from, or is beyond what a sheet may be.',
  explain:
    'A file in another encoding prints wrong letters and wrong fractions without anybody noticing, ' +
    'and one of a hundred thousand lines or nested past any sense is no sheet. What lies ' +
    'beyond a bound is not read. It cannot be accepted: save the file as UTF-8 text, or make it smaller.',
  unread: true,
  messages: {
    mendable: { message: '{problem}', fix: '{cure}' },
  },
  run(sheet, _context, report) {
    for (const { kind, span, message, fix, related = [] } of sheet.problems) {
      if (kind !== 'encoding' && kind !== 'limits') continue;
      report({
        message: 'mendable',
        span,
        values: { problem: message, cure: fix ?? 'save the file as plain UTF-8 text' },
        related,
      });
    }
  },
  examples: [
    {
      name: 'a character lost in another encoding',
      sheet: { body: '## Float level\n\n1. Set it to 13/64 in \uFFFD 1/64 in.\n' },
      expect: [
        {
          at: '\uFFFD',
          message: 'here stands a character that could not be read',
          fix: 'save the file as UTF-8 and put the character right',
        },
      ],
    },
    {
      name: 'the plus-and-minus sign, saved as UTF-8',
      sheet: { body: '## Float level\n\n1. Set it to 13/64 in \u00B1 1/64 in.\n' },
      expect: [],
    },
  ],
});
