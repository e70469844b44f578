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
    },
  },
  run(sheet, context, report) {
    for (const setting of sheet.settings.values()) {
      for (const { trusted, doubtful, agreement } of doubtfulPairs(setting, context.gauges)) {
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
          subject: setting.canonical ?? setting.name.value,
        });
      }
    }
  },
  examples: [],
});
