import { confusable } from '../gauges/index.ts';
import { principal, type RankedMisprint, writeIn } from '../quantity/index.ts';
import type { Agreement, Statement } from '../quantity/model.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import type { CheckContext, Cure, Report } from './define.ts';
import { slipsOf, toldAs } from './likely-misprint.ts';
import { readOf } from './stated-sizes.ts';
import type { Pair, Restated } from './statement-pairs.ts';

type Apart = Extract<Agreement, { verdict: 'disagrees' | 'within-tolerance' }>;
type Message = 'converted' | 'plain' | 'limits' | 'sense' | 'condition';

/** What `sizes-disagree` reports of a pair that is apart: at the doubtful size, a warning inside the limits. */
export function disagreement(
  setting: Setting,
  pair: Pair,
  found: Apart,
  sheet: Sheet,
  context: CheckContext,
): Report<Message> {
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
    difference: found.difference ?? '',
    inside: inside ? ', still inside the limits' : '',
    fix: remedy(setting, pair, sheet, context),
  };
  const message: Message =
    doubtful.statement.condition !== null
      ? 'condition'
      : limits
        ? 'limits'
        : found.by === 'way'
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
    suspects: [
      doubtful.stated.size.span,
      ...(pair.others.length > 1 ? [] : [trusted.stated.size.span]),
    ],
    suggest: () => rewritings(setting, pair, sheet, context),
    subject: setting.id,
    severity: inside || areTwins(trusted, doubtful) ? 'warning' : 'error',
  };
}

/**
 * Whether a fraction stands for a gauge that it is a near twin of, `drill K` for 9/32 in: papers print
 * both for one bore, and the editor may know that one drill or the other was meant.
 */
function areTwins(one: Restated, other: Restated): boolean {
  const [first, second] = [principal(one.statement), principal(other.statement)];
  const gauge = first?.gauge ?? second?.gauge;
  const bare = first?.gauge ? second : first;
  if (!gauge || !bare || (bare.style !== 'fraction' && bare.style !== 'mixed')) return false;
  return confusable(gauge).some(
    (twin) => twin.kind === 'near-twin' && twin.gauge.mm.equals(bare.base),
  );
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

/** What would mend the pair: the likelier slip first, and the other statement's behind it. */
function remedy(setting: Setting, pair: Pair, sheet: Sheet, context: CheckContext): string {
  const { trusted, doubtful, others } = pair;
  const [of, than] = [called(doubtful), called(trusted)];
  const [own, further] = slipsOf(
    doubtful.stated.size,
    setting,
    others.map(statementIn),
    sheet,
    context,
  );
  if (others.length > 1) {
    const agreed = `the other ${others.length} statements agree with one another`;
    const second = further && !further.isUnlikely ? `, or ${ifSo(further)}` : '';
    const told = toldAs(trusted.statement, doubtful.statement, context.gauges);
    const write = told ? `write ${told}` : `correct ${of}`;
    return `${own ? ifSo(own) + second : write}; ${agreed}`;
  }
  const [theirOwn] = slipsOf(trusted.stated.size, setting, [doubtful.statement], sheet, context);
  const full = `${than}, ${trusted.statement.text}`;
  const its = theirOwn?.isUnlikely && own?.isUnlikely === false ? undefined : theirOwn;
  if (own?.isUnlikely && its?.isUnlikely === false)
    return `${ifSo(its, than)}; otherwise correct ${of}`;
  if (own && its) {
    const [first, second] =
      its.rank < own.rank
        ? [`${ifSo(its, than)}`, `${ifSo(own, of)}`]
        : [`${ifSo(own, of)}`, `${ifSo(its, than)}`];
    return `${first}; or ${second}`;
  }
  const mine = toldAs(trusted.statement, doubtful.statement, context.gauges);
  if (own) return `${ifSo(own)}; otherwise correct ${full}`;
  if (its)
    return `${ifSo(its, than)}; otherwise ${mine ? `write ${mine} for ${of}` : `correct ${of}`}`;
  const theirs = toldAs(doubtful.statement, trusted.statement, context.gauges);
  return mine && theirs
    ? `look in the source which is right: write ${mine} for ${of}, or ${theirs} for ${than}`
    : `look in the source which is right: ${of}, or ${full}`;
}

/** Either size as its own slip or the other one would have it, the likelier first; or the doubtful one goes. */
function rewritings(
  setting: Setting,
  { trusted, doubtful, others }: Pair,
  sheet: Sheet,
  context: CheckContext,
): readonly Cure[] {
  const [mine, theirs] = [doubtful.stated.size, trusted.stated.size];
  const own = slipsOf(mine, setting, others.map(statementIn), sheet, context)
    .slice(0, 2)
    .map(({ suggestion, rank, isUnlikely }) => ({ suggestion, rank, isUnlikely, at: mine.span }));
  const its =
    others.length > 1
      ? []
      : slipsOf(theirs, setting, [doubtful.statement], sheet, context)
          .slice(0, 1)
          .map(({ suggestion, rank, isUnlikely }) => ({
            suggestion,
            rank,
            isUnlikely,
            at: theirs.span,
          }));
  const slips = [...own, ...its]
    .filter(({ isUnlikely }) => !isUnlikely)
    .sort((one, two) => one.rank - two.rank);
  const told = toldAs(trusted.statement, doubtful.statement, context.gauges);
  return [
    ...slips.map(({ suggestion, at }): Cure => ({ write: suggestion, at })),
    ...(told === null ? [] : [{ write: told }]),
    ...(doubtful.stated.role === 'also' ? [{ takeOut: 'entry' } as const] : []),
  ];
}

/** As its text has it, in its own measure. */
function statementIn({ stated, statement }: Restated): Statement {
  return readOf(stated.size) ?? statement;
}

/** `the value`, or the key in its backquotes. */
function called({ stated: { key } }: Restated): string {
  return key === 'value' ? 'the value' : `\`${key}\``;
}

/** `0.136 in, if two digits were swapped`, with what it is for where two figures are offered. */
function ifSo({ suggestion, because }: RankedMisprint, of: string | null = null): string {
  return `${suggestion}${of ? ` for ${of}` : ''}, if ${because}`;
}
