import type { Sheet } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';
import { defineCheck } from './define.ts';
import { proseNumbers } from './prose-numbers.ts';

/** A setting's number typed into the prose, where `:value[...]` would print it. */
export default defineCheck({
  id: 'number-typed',
  severity: 'note',
  group: 'prose',
  depth: 6,
  summary: "A setting's number is typed in the text, where `:value[...]` would print it.",
  explain:
    'A number written twice is changed once: the next editor mends the front matter and the step ' +
    'keeps the old figure. Where no mark prints the setting at all it is a warning. `--fix` replaces a ' +
    'number that is typed just as the front matter has it.',
  messages: {
    same: {
      message: '{text} is the setting `{name}`, typed a second time',
      fix: 'write `:value[{name}]`',
      suggest: [{ write: ':value[{name}]' }],
    },
    other: {
      message: '{text} is the setting `{name}`, {value}, written another way',
      fix: 'write `:value[{name}]`, which prints it as the source has it',
      suggest: [{ write: ':value[{name}]' }],
    },
  },
  run(sheet, context, report) {
    for (const number of proseNumbers(sheet, context)) {
      const { span, statement, standing, setting, against, verbatim, meant } = number;
      if (standing !== 'typed' || !setting || !against) continue;
      const name = setting.name.value;
      const value = setting.value && against.size === setting.value;
      const certain = verbatim && value;
      const isPrinted = sheet.values.some((use) => use.setting === setting);
      const mendable = certain && meant && canHoldMark(span, sheet);
      report({
        message: certain ? 'same' : 'other',
        span,
        values: certain
          ? { text: statement.text, name }
          : { text: statement.text, name, value: setting.value?.text ?? against.statement.text },
        compared: [against.statement.text, statement.text],
        related: [{ span: against.size.span, label: 'the setting' }],
        suspects: [span, setting.name.span],
        ...(isPrinted ? {} : { severity: 'warning' as const }),
        subject: setting.id,
        ...(mendable ? { edits: [{ span, text: `:value[${name}]` }] } : {}),
      });
    }
  },
  examples: [
    {
      name: 'typed just as the front matter has it',
      sheet: { body: '## Float level\n\n1. Pass the gauge under the free end: 13/64 in.\n' },
      expect: [
        {
          at: '13/64 in',
          severity: 'warning',
          message: '13/64 in is the setting `float-level`, typed a second time',
          fix: 'write `:value[float-level]`',
          fixed: '1. Pass the gauge under the free end: :value[float-level].',
        },
      ],
    },
    {
      name: 'written another way',
      sheet: { body: '## Float level\n\n1. Pass the gauge under the free end, 5.16 mm.\n' },
      expect: [
        {
          at: '5.16 mm',
          severity: 'warning',
          message: '5.16 mm is the setting `float-level`, 13/64 in, written another way',
          fix: 'write `:value[float-level]`, which prints it as the source has it',
        },
      ],
    },
    {
      name: 'called by its name',
      sheet: {
        body: '## Float level\n\n1. Pass the gauge under the free end: :value[float-level].\n',
      },
      expect: [],
    },
  ],
});

/** Whether a mark put there would be read as one, and nothing that stands there be named by it. */
function canHoldMark({ start, end }: Span, { text, operations, prose }: Sheet): boolean {
  const [before, after] = [text.charAt(start - 1), text.charAt(end)];
  if (/[\p{L}\p{N}:[\\]/u.test(before) || /[[{\]]/.test(after)) return false;
  // A heading names its operation, and a reference has no other place in the text.
  const isHeading = operations.some(
    ({ heading }) => heading.span.start <= start && end <= heading.span.end,
  );
  return !isHeading && prose.some(({ span }) => span.start <= start && end <= span.end);
}
