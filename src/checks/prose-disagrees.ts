import { agree, principal } from '../quantity/index.ts';
import { defineCheck } from './define.ts';
import { proseNumbers } from './prose-numbers.ts';

/** A number in a step that is another size than the setting the step is about. */
export default defineCheck({
  id: 'prose-disagrees',
  severity: 'warning',
  group: 'prose',
  depth: 6,
  summary: 'A number in the text is another size than the setting it stands beside.',
  explain:
    'The restorer works by the step and the card prints the setting: with two figures one of them is ' +
    'wrong. If the number is no setting at all (a rough first position, a limit of wear), say in the ' +
    'sheet what it is and accept the finding.',
  messages: {
    apart: {
      message: '{text} stands beside the setting `{name}`, which is {value} ({difference})',
      fix: '{fix}',
      suggest: [{ write: ':value[{name}]' }],
    },
    other: {
      message: '{text} stands beside the setting `{name}`, which is {value}',
      fix: 'write `:value[{name}]` if the setting is meant',
      suggest: [{ write: ':value[{name}]' }],
    },
    elsewhere: {
      message:
        '{text} is the setting `{other}` and stands where `{name}` is made, which is {value}',
      fix: 'write `:value[{name}]`, or name what {text} is if `{other}` is meant',
      suggest: [{ write: ':value[{name}]' }],
    },
  },
  run(sheet, context, report) {
    for (const number of proseNumbers(sheet, context)) {
      const { span, statement, standing, setting, against, elsewhere } = number;
      if (standing !== 'near' || !setting || !against) continue;
      const name = setting.name.value;
      if (elsewhere !== null) {
        report({
          message: 'elsewhere',
          span,
          values: {
            text: statement.text,
            other: elsewhere.name.value,
            name,
            value: against.statement.text,
          },
          compared: [against.statement.text, statement.text],
          related: [
            { span: against.size.span, label: 'the setting made here' },
            { span: elsewhere.name.span, label: 'the setting of that size' },
          ],
          suspects: [span, setting.name.span],
          subject: setting.id,
        });
        continue;
      }
      const found = agree(against.statement, statement, { gauges: context.gauges });
      const apart =
        found.verdict === 'disagrees' || found.verdict === 'within-tolerance' ? found : null;
      const difference = principal(statement) === null ? null : (apart?.difference ?? null);
      const values = { text: statement.text, name, value: against.statement.text };
      const meant = `write \`:value[${name}]\` if the setting is meant`;
      const misprint = apart?.misprint;
      report({
        message: difference === null ? 'other' : 'apart',
        span,
        values:
          difference === null
            ? values
            : {
                ...values,
                difference,
                fix: misprint ? `${meant}: ${misprint.suggestion}, if ${misprint.because}` : meant,
              },
        compared: [against.statement.text, statement.text],
        related: [{ span: against.size.span, label: 'the setting' }],
        suspects: [span, setting.name.span],
        subject: setting.id,
      });
    }
  },
  examples: [
    {
      name: 'another size in the step',
      sheet: {
        body: '## Float level\n\n1. Pass a gauge of 0.230 in under the free end: :value[float-level].\n',
      },
      expect: [
        {
          at: '0.230 in',
          message:
            '0.230 in stands beside the setting `float-level`, which is 13/64 in (0.027 in more)',
          fix: 'write `:value[float-level]` if the setting is meant: 0.203 in, if two digits were swapped',
        },
      ],
    },
    {
      name: 'another number of turns',
      sheet: {
        body: '## Initial idle\n\n1. Back the needle out 1-1/2 turns out from its seat, :value[idle-mixture].\n',
      },
      expect: [
        {
          at: '1-1/2 turns out',
          message:
            '1-1/2 turns out stands beside the setting `idle-mixture`, which is 1-1/4 turns out (1/4 turn more)',
          fix: 'write `:value[idle-mixture]` if the setting is meant: 1-1/4 turns, if the denominator is wrong',
        },
      ],
    },
    {
      name: 'turns, with the way said before them',
      sheet: {
        body: '## Initial idle\n\n1. Back the needle out 1-1/2 turns and set :value[idle-mixture].\n',
      },
      expect: [
        {
          at: '1-1/2 turns',
          message:
            '1-1/2 turns stands beside the setting `idle-mixture`, which is 1-1/4 turns out (1/4 turn more)',
          fix: 'write `:value[idle-mixture]` if the setting is meant: 1-1/4 turns, if the denominator is wrong',
        },
      ],
    },
    {
      name: 'a range beside a plain size',
      sheet: {
        body: '## Float level\n\n1. Keep the float within 0.210 to 0.220 in of the cover: :value[float-level].\n',
      },
      expect: [
        {
          at: '0.210 to 0.220 in',
          message: '0.210 to 0.220 in stands beside the setting `float-level`, which is 13/64 in',
          fix: 'write `:value[float-level]` if the setting is meant',
        },
      ],
    },
    {
      name: 'the figure of another setting',
      sheet: {
        body: '## Float level\n\n1. Pass a gauge of 7/16 in under the free end.\n',
      },
      expect: [
        {
          at: '7/16 in',
          message:
            '7/16 in is the setting `pump-stroke` and stands where `float-level` is made, which is 13/64 in',
          fix: 'write `:value[float-level]`, or name what 7/16 in is if `pump-stroke` is meant',
        },
      ],
    },
    {
      name: 'a count in words',
      sheet: {
        body: '## Initial idle\n\n1. Seat the needle lightly and open it two turns.\n',
      },
      expect: [
        {
          at: 'two turns',
          message:
            'two turns stands beside the setting `idle-mixture`, which is 1-1/4 turns out (3/4 turn more)',
          fix: 'write `:value[idle-mixture]` if the setting is meant',
        },
      ],
    },
    {
      name: 'a difference, a thing, another unit and a named setting are no statements of this one',
      sheet: {
        body: '## Float level\n\n1. Slip a piece of 1/4 in hose over the inlet, and set :value[float-level] within 1/64 in.\n2. The later unit takes 7/32 in.\n',
      },
      expect: [],
    },
    {
      name: 'tools, steps and the size itself',
      sheet: {
        body: '## Float level\n\n1. Loosen the cover with a 7/16 in wrench.\n2. Pass the 13/64 drill under the free end: :value[float-level].\n\n## Initial idle\n\n1. Turn it 1/4 turn at a time to :value[idle-mixture].\n',
      },
      expect: [],
    },
  ],
});
