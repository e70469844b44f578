import { defineCheck } from './define.ts';
import { doubtfulPairs } from './statement-pairs.ts';

/** A decimal whose last digits were dropped instead of rounded. */
export default defineCheck({
  id: 'size-chopped',
  severity: 'note',
  group: 'sizes',
  summary: 'A decimal was cut off instead of rounded.',
  explain:
    'Period papers often drop the digits they have no room for: .140 for 9/64, which is .140625 and ' +
    'rounds to .141. It is worth saying and does not stop the press. Print it so where the source does.',
  messages: {
    chopped: {
      message: '{chopped} is {exact} with its digits dropped; rounded it is {expected}',
      fix: 'write {expected}, or leave it where the source prints it so',
      suggest: [{ write: '{expected}' }],
    },
  },
  run(sheet, _context, report) {
    for (const setting of sheet.figures) {
      for (const { trusted, doubtful, agreement } of doubtfulPairs(setting)) {
        if (agreement.verdict !== 'chopped') continue;
        const [chopped, exact] =
          agreement.which === 'second' ? [doubtful, trusted] : [trusted, doubtful];
        report({
          message: 'chopped',
          span: chopped.stated.size.span,
          values: {
            chopped: chopped.statement.text,
            exact: exact.statement.text,
            expected: agreement.expected,
          },
          compared: [exact.statement.text, chopped.statement.text],
          related: [{ span: exact.stated.size.span, label: 'the size it restates' }],
          subject: setting.id,
        });
      }
    }
  },
  examples: [
    {
      name: 'the last digit dropped',
      sheet: { settings: 'float-drop: { value: 9/64 in, also: [.140 in], from: m48 p. 31 }' },
      expect: [
        {
          at: '.140 in',
          message: '.140 in is 9/64 in with its digits dropped; rounded it is .141 in',
          fix: 'write .141 in, or leave it where the source prints it so',
        },
      ],
    },
    {
      name: 'the value chopped, the fraction exact',
      sheet: { settings: 'float-drop: { value: .140 in, also: [9/64 in], from: m48 p. 31 }' },
      expect: [
        {
          at: '.140 in',
          message: '.140 in is 9/64 in with its digits dropped; rounded it is .141 in',
          fix: 'write .141 in, or leave it where the source prints it so',
        },
      ],
    },
    {
      name: 'rounded, either way at a tie',
      sheet: {
        settings:
          'float-drop: { value: 9/64 in, also: [.141 in], from: m48 p. 31 }\nunloader: { value: 1/8 in, also: [.12 in, .13 in], from: m48 p. 33 }',
      },
      expect: [],
    },
  ],
});
