import { agree, principal } from '../quantity/index.ts';
import { defineCheck } from './define.ts';
import { proseNumbers } from './prose-numbers.ts';

/** A number in a step that is another size than the setting the step is about. */
export default defineCheck({
  id: 'prose-disagrees',
  severity: 'warning',
  group: 'prose',
  summary: 'A number in the text is another size than the setting it stands beside.',
  explain:
    'The restorer works by the step and the card prints the setting: with two figures one of them is ' +
    'wrong. If the number is no setting at all (a rough first position, a limit of wear), say in the ' +
    'sheet what it is and accept the finding.',
  messages: {
    apart: {
      message: '{text} stands beside the setting `{name}`, which is {value} ({difference})',
      fix: '{fix}',
    },
    other: {
      message: '{text} stands beside the setting `{name}`, which is {value}',
      fix: 'write `:value[{name}]` if the setting is meant',
    },
  },
  run(sheet, context, report) {
    for (const { span, statement, standing, setting, against } of proseNumbers(sheet, context)) {
      if (standing !== 'near' || !setting || !against) continue;
      const name = setting.name.value;
      const found = agree(against.statement, statement, { gauges: context.gauges });
      const apart =
        found.verdict === 'disagrees' || found.verdict === 'within-tolerance' ? found : null;
      const figures = principal(statement) !== null && apart !== null && apart.difference !== '';
      const values = { text: statement.text, name, value: against.statement.text };
      const meant = `write \`:value[${name}]\` if the setting is meant`;
      const misprint = apart?.misprint;
      report({
        message: figures ? 'apart' : 'other',
        span,
        values: figures
          ? {
              ...values,
              difference: apart.difference,
              fix: misprint ? `${meant}: ${misprint.suggestion}, if ${misprint.because}` : meant,
            }
          : values,
        compared: [against.statement.text, statement.text],
        related: [{ span: against.size.span, label: 'the setting' }],
        subject: setting.canonical ?? name,
      });
    }
  },
  examples: [],
});
