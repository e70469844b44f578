import type { Agreement } from '../quantity/model.ts';
import type { Setting } from '../sheet/model.ts';
import { defineCheck, type Report } from './define.ts';
import { doubtfulPairs, type Pair } from './statement-pairs.ts';

type Apart = Extract<Agreement, { verdict: 'disagrees' | 'within-tolerance' }>;
type Message = 'converted' | 'plain' | 'sense' | 'condition';

/** One setting stated twice, as two different sizes. */
export default defineCheck({
  id: 'sizes-disagree',
  severity: 'error',
  group: 'sizes',
  summary: 'One setting is stated twice, and the two are different sizes.',
  explain:
    'One of the two is a misprint, and nobody can tell from the card which. Where a single slip ' +
    'explains it (swapped digits, a slipped point, a neighboring drill, inches taken for ' +
    'millimeters), the finding says what the figure should probably have been. With three statements ' +
    'the one that stands alone is named. A difference that is still inside the limits is a warning: ' +
    'accept it where the source itself prints both.',
  messages: {
    converted: {
      message: '{first} is {firstIn}, but `{key}` says {second} ({difference}{inside})',
      fix: '{fix}',
    },
    plain: {
      message: '`{otherKey}` says {first}, but `{key}` says {second} ({difference}{inside})',
      fix: '{fix}',
    },
    sense: {
      message: '`{otherKey}` says {first}, but `{key}` says {second}: {difference}',
      fix: 'look in the source which way it goes',
    },
    condition: {
      message: '`{otherKey}` says {first}, but `{key}` says {second}',
      fix: 'keep the one that the source states',
    },
  },
  run(sheet, context, report) {
    for (const setting of sheet.settings.values()) {
      for (const pair of doubtfulPairs(setting, context.gauges)) {
        const { agreement } = pair;
        if (agreement.verdict !== 'disagrees' && agreement.verdict !== 'within-tolerance') continue;
        report(disagreement(setting, pair, agreement));
      }
    }
  },
  examples: [],
});

function disagreement(setting: Setting, pair: Pair, found: Apart): Report<Message> {
  const { trusted, doubtful } = pair;
  const first = trusted.statement.text;
  const second = doubtful.statement.text;
  const inside = found.verdict === 'within-tolerance';
  const values = {
    first,
    second,
    firstIn: found.first,
    key: doubtful.stated.key,
    otherKey: trusted.stated.key,
    difference: found.difference,
    inside: inside ? ', still inside the limits' : '',
    fix: remedy(pair, found),
  };
  const message: Message =
    doubtful.statement.condition !== null
      ? 'condition'
      : found.difference.startsWith('the other')
        ? 'sense'
        : found.first === first || sameFigure(found.first, first)
          ? 'plain'
          : 'converted';
  return {
    message,
    span: doubtful.stated.size.span,
    values,
    compared: [found.first, found.second],
    related: [
      {
        span: trusted.stated.size.span,
        label: `the ${trusted.stated.key === 'also' ? 'other statement' : trusted.stated.key}`,
      },
    ],
    subject: setting.canonical ?? setting.name.value,
    severity: inside ? 'warning' : 'error',
  };
}

/** `0.2030 in` says no more than `0.203 in`. */
function sameFigure(one: string, other: string): boolean {
  const plain = (text: string): string =>
    text.replace(/^0(?=\.)/, '').replace(/(\.\d*?)0+(?=\D|$)/, '$1');
  return plain(one) === plain(other);
}

function remedy({ trusted, doubtful }: Pair, found: Apart): string {
  const other =
    trusted.stated.key === 'value'
      ? `the value, ${trusted.statement.text}`
      : `\`${trusted.stated.key}\`, ${trusted.statement.text}`;
  if (found.misprint)
    return `${found.misprint.suggestion}, if ${found.misprint.because}; otherwise correct ${other}`;
  return `look in the source which is right: \`${doubtful.stated.key}\`, or ${other}`;
}
