import { principal, writeIn } from '../quantity/index.ts';
import type { Agreement, Statement } from '../quantity/model.ts';
import type { Setting } from '../sheet/model.ts';
import type { Report } from './define.ts';
import type { Pair, Restated } from './statement-pairs.ts';

type Apart = Extract<Agreement, { verdict: 'disagrees' | 'within-tolerance' }>;
type Message = 'converted' | 'plain' | 'limits' | 'sense' | 'condition';

/** What `sizes-disagree` reports of a pair that is apart: at the doubtful size, a warning inside the limits. */
export function disagreement(setting: Setting, pair: Pair, found: Apart): Report<Message> {
  const { trusted, doubtful, limits } = pair;
  const inside = found.verdict === 'within-tolerance';
  const values = {
    first: trusted.statement.text,
    second: limits ? doubtful.statement.text : toldFully(doubtful),
    side: limits?.side === 'low' ? 'lower' : 'upper',
    firstIn: limits?.first ?? found.first,
    secondIn: limits?.second ?? '',
    key: doubtful.stated.key,
    otherKey: trusted.stated.key,
    difference: found.difference,
    inside: inside ? ', still inside the limits' : '',
    fix: remedy(pair, found),
  };
  const message: Message =
    doubtful.statement.condition !== null
      ? 'condition'
      : limits
        ? 'limits'
        : found.difference.startsWith('the other')
          ? 'sense'
          : isToldAlike(trusted.statement, doubtful.statement)
            ? 'plain'
            : 'converted';
  return {
    message,
    span: doubtful.stated.size.span,
    values,
    compared: [values.firstIn, limits?.second ?? found.second],
    related: [
      {
        span: trusted.stated.size.span,
        label: `the ${trusted.stated.key === 'also' ? 'other statement' : trusted.stated.key}`,
      },
    ],
    subject: setting.id,
    severity: inside ? 'warning' : 'error',
  };
}

/** A gauge's name says no figure to a reader without the table: the figure is put beside it. */
function toldFully({ statement }: Restated): string {
  const amount = principal(statement);
  if (!amount?.gauge || statement.form !== 'exact') return statement.text;
  const figure = writeIn(
    amount.base,
    statement.dimension,
    amount.unit,
    amount.unit === 'in' ? 4 : 2,
  );
  return amount.style === 'gauge' && !statement.text.includes(figure.replace(/0* .*$/, ''))
    ? `${statement.text}, ${figure}`
    : statement.text;
}

/** Whether the first is told in decimals of the second's own unit, so that nothing need be worked. */
function isToldAlike(first: Statement, second: Statement): boolean {
  const [one, two] = [principal(first), principal(second)];
  if (!one || !two) return true;
  return one.unit === two.unit && (one.style === two.style || one.places !== null);
}

function remedy({ trusted, doubtful, others }: Pair, found: Apart): string {
  const { key } = trusted.stated;
  const { text } = trusted.statement;
  const other = key === 'value' ? `the value, ${text}` : `\`${key}\`, ${text}`;
  const agreed = others > 1 ? `the other ${others} statements agree with one another` : null;
  if (found.misprint) {
    const { suggestion, because } = found.misprint;
    return `${suggestion}, if ${because}; ${agreed ?? `otherwise correct ${other}`}`;
  }
  const which = `look in the source which is right: \`${doubtful.stated.key}\`, or ${other}`;
  return agreed ? `correct \`${doubtful.stated.key}\`; ${agreed}` : which;
}
