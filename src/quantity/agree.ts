import { fullText } from './amount-text.ts';
import { incomparable } from './comparable.ts';
import { type AmountVerdict, compareAmounts } from './compare.ts';
import { agreeLimits, isInwardRounding } from './convert.ts';
import { differenceText, rewritten, sizeBeside } from './difference.ts';
import { findMisprint } from './misprint.ts';
import type { Agreement, Amount, GaugeBook, Statement } from './model.ts';
import { exactPlaces } from './rational.ts';
import { inUnit } from './units.ts';
import { principal, writeIn } from './write.ts';

const VERDICT_RANK: Readonly<Record<AmountVerdict, number>> = {
  same: 0,
  agrees: 1,
  'chopped-second': 2,
  'chopped-first': 2,
  loose: 3,
  apart: 4,
};

/** What comparing needs besides the two statements. */
export interface AgreeOptions {
  /**
   * Needed to look for the misprint behind a disagreement. Null where only the verdict is wanted:
   * looking costs a hundred times what comparing does.
   */
  readonly gauges: GaugeBook | null;
}

/**
 * Do two statements of one setting agree? Nominals (or the one limit, or both ends of a range) are
 * compared; limits of a toleranced statement are compared by `agreeLimits`. The first's limits, or
 * the second's, decide whether a disagreement is still within tolerance.
 */
export function agree(first: Statement, second: Statement, options: AgreeOptions): Agreement {
  const obstacle = incomparable(first, second);
  if (obstacle) return { verdict: 'incomparable', reason: obstacle };
  if (first.condition !== null || second.condition !== null) {
    if (first.condition === second.condition) return { verdict: 'same' };
    return plainDisagreement(first, second, 'condition', null);
  }
  if (first.sense && second.sense && first.sense !== second.sense) {
    return plainDisagreement(first, second, 'way', 'the other way');
  }
  if (first.form !== second.form && isOneSided(first) && isOneSided(second)) {
    return plainDisagreement(first, second, 'way', 'the other limit');
  }
  if (first.datum && second.datum && first.datum !== second.datum && isCounted(first)) {
    const difference = `counted from ${datumName(second)}, not from ${datumName(first)}`;
    return plainDisagreement(first, second, 'datum', difference);
  }
  if (isOneSided(first) !== isOneSided(second) && (isBand(first) || isBand(second))) {
    return limitAgainstBand(first, second, options);
  }
  const limits = bandAgainstTolerance(first, second);
  if (limits) return limits;
  const one = principal(first);
  const two = principal(second);
  if (isOneSided(first) && isOneSided(second)) {
    if (isInwardRounding(first, second, first.low ? 'low' : 'high')) return { verdict: 'agrees' };
  }
  if (one && two) return agreeAmounts(first, second, one, two, options);
  if (!one && !two) return agreeRanges(first, second, options);
  return one
    ? pointInRange(second, first, one, true)
    : pointInRange(first, second, two as Amount, false);
}

/** `13/64 ± 1/64 in` beside `4.77–5.55 mm`: only the limits can be held against one another. */
function bandAgainstTolerance(first: Statement, second: Statement): Agreement | null {
  const forms = `${first.form} ${second.form}`;
  if (forms !== 'tolerance range' && forms !== 'range tolerance') return null;
  const limits = agreeLimits(first, second);
  if (limits.verdict !== 'apart') return { verdict: 'agrees' };
  const side = limits.side === 'low' ? 'lower' : 'upper';
  return {
    verdict: 'disagrees',
    first: `${limits.first} as its ${side} limit`,
    second: second.text,
    by: 'size',
    difference: `${limits.second} there`,
    misprint: null,
  };
}

function isCounted({ dimension }: Statement): boolean {
  return dimension === 'turns' || dimension === 'notches';
}

function datumName({ datum }: Statement): string {
  return datum === 'seated'
    ? 'the seat'
    : datum === 'contact' || datum === 'flush'
      ? datum
      : `the ${datum}`;
}

function isBand(statement: Statement): boolean {
  return statement.form === 'range' || statement.form === 'tolerance';
}

/** `0.018 in min` beside `0.018–0.022 in`: the one limit is held against the same end of the band. */
function limitAgainstBand(first: Statement, second: Statement, options: AgreeOptions): Agreement {
  const limited = isOneSided(first) ? first : second;
  const side = limited.low ? 'low' : 'high';
  const [one, two] = [limitAmount(first, side), limitAmount(second, side)];
  if (!one || !two) {
    const reason = `${first.text} and ${second.text} share no limit`;
    return { verdict: 'incomparable', reason };
  }
  const verdict = compareAmounts(one, two);
  if (verdict === 'same' || verdict === 'agrees') return { verdict: 'agrees' };
  return agreeAmounts(
    { ...first, form: side === 'low' ? 'min' : 'max' },
    { ...second, form: side === 'low' ? 'min' : 'max' },
    one,
    two,
    options,
  );
}

/** A limit as an amount; one that a tolerance implies is worked out exactly. Null where there is none. */
function limitAmount(statement: Statement, side: 'low' | 'high'): Amount | null {
  const limit = statement[side];
  if (!limit || limit.amount || !statement.nominal) return limit?.amount ?? null;
  const { nominal, dimension } = statement;
  const { base } = limit;
  const number = inUnit(base, dimension, nominal.unit);
  const places = exactPlaces(number);
  const text = writeIn(base, dimension, nominal.unit, Math.min(places ?? 6, 6));
  return {
    ...nominal,
    text,
    number,
    base,
    places: null,
    gauge: null,
    could: { low: base, high: base },
  };
}

function isOneSided(statement: Statement): boolean {
  return statement.form === 'min' || statement.form === 'max';
}

function plainDisagreement(
  first: Statement,
  second: Statement,
  by: 'way' | 'datum' | 'condition',
  difference: string | null,
): Agreement {
  return {
    verdict: 'disagrees',
    first: first.text,
    second: second.text,
    by,
    difference,
    misprint: null,
  };
}

function agreeAmounts(
  first: Statement,
  second: Statement,
  one: Amount,
  two: Amount,
  options: AgreeOptions,
): Agreement {
  const verdict = compareAmounts(one, two);
  if (verdict === 'same' || verdict === 'agrees') return { verdict };
  if (verdict === 'loose') return { verdict, expected: rewritten(one, two, second) };
  if (verdict === 'chopped-second')
    return { verdict: 'chopped', expected: rewritten(one, two, second), which: 'second' };
  if (verdict === 'chopped-first')
    return { verdict: 'chopped', expected: rewritten(two, one, first), which: 'first' };
  const inside = liesInside(first, two) || liesInside(second, one);
  return {
    verdict: inside ? 'within-tolerance' : 'disagrees',
    first: sizeBeside(one, two, second),
    second: second.dimension === 'notches' ? second.text : fullText(two, second.text),
    by: 'size',
    difference: differenceText(one, two, second),
    misprint: options.gauges && findMisprint(one, two, options.gauges, second.text),
  };
}

/** Whether an amount lies inside the limits of a toleranced statement, each end included. */
export function liesInside(statement: Statement, value: Amount): boolean {
  if (statement.form !== 'tolerance' && statement.form !== 'range') return false;
  const { low, high } = statement;
  return (
    low !== null &&
    high !== null &&
    value.base.compare(low.base) >= 0 &&
    value.base.compare(high.base) <= 0
  );
}

function agreeRanges(first: Statement, second: Statement, options: AgreeOptions): Agreement {
  const sides = (['low', 'high'] as const).map((side) => {
    const one = first[side]?.amount;
    const two = second[side]?.amount;
    if (!one || !two) return null;
    // A limit rounded inward is no nearest rounding and right all the same.
    const verdict = isInwardRounding(first, second, side) ? 'agrees' : compareAmounts(one, two);
    return { one, two, verdict };
  });
  let worst: { one: Amount; two: Amount; verdict: AmountVerdict } | null = null;
  for (const side of sides) {
    if (side && (!worst || VERDICT_RANK[side.verdict] > VERDICT_RANK[worst.verdict])) worst = side;
  }
  if (!worst)
    return { verdict: 'incomparable', reason: `${first.text} and ${second.text} share no limit` };
  const { one, two, verdict } = worst;
  if (verdict === 'same' || verdict === 'agrees') return { verdict };
  // Limits chopped or rounded are the business of `agreeLimits`, which knows inward from outward.
  if (verdict !== 'apart') return { verdict: 'agrees' };
  const found = agreeAmounts(
    { ...first, form: 'exact' },
    { ...second, form: 'exact' },
    one,
    two,
    options,
  );
  return found;
}

/** A single figure beside a range: it agrees where it is the middle, and is in tolerance inside. */
function pointInRange(
  range: Statement,
  point: Statement,
  value: Amount,
  pointFirst: boolean,
): Agreement {
  const { low, high } = range;
  if (!low || !high)
    return { verdict: 'incomparable', reason: `${range.text} is open on one side` };
  const middle = low.base.add(high.base).div(2);
  const near =
    value.places === null
      ? middle.equals(value.base)
      : middle.compare(value.could.low) >= 0 && middle.compare(value.could.high) <= 0;
  if (near) return { verdict: 'agrees' };
  const inside = value.base.compare(low.base) >= 0 && value.base.compare(high.base) <= 0;
  const edge = value.base.compare(low.base) < 0 ? low : high;
  const edgeAmount: Amount = edge.amount ?? {
    ...value,
    base: edge.base,
    could: { low: edge.base, high: edge.base },
  };
  const difference = inside
    ? 'inside the range, off its middle'
    : differenceText(edgeAmount, value, point);
  const written = fullText(value, point.text);
  const [first, second] = pointFirst ? [written, range.text] : [range.text, written];
  return {
    verdict: inside ? 'within-tolerance' : 'disagrees',
    first,
    second,
    by: 'size',
    difference,
    misprint: null,
  };
}
