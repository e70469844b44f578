import type { Rational, Statement } from './model.ts';
import { formatDecimal, roundTo } from './rational.ts';
import { inUnit, unitById } from './units.ts';
import { unitWord, writeIn } from './write.ts';

/** How limits are to be converted. */
export interface ConversionOptions {
  /** Decimal places of the result. */
  readonly places: number;
  /**
   * `ordinary` rounds each limit to the nearest; `inward` rounds the lower limit up and the upper
   * down, so that nothing passes that the original refuses (ISO 370:1975 as references describe it,
   * BS 2856).
   */
  readonly rounding: 'ordinary' | 'inward';
}

/** Converted limits in the asked unit, or why there are none, in a restorer's words. */
export type Conversion =
  | {
      readonly ok: true;
      /** The rounded limits in the asked unit; null where the statement has none on that side. */
      readonly low: Rational | null;
      readonly high: Rational | null;
      /** `4.77–5.55 mm`, `1.0 mm max`. */
      readonly text: string;
      /** Whether rounding left a single figure of a band. */
      readonly zeroWidth: boolean;
      /** Whether a limit went outward: only ordinary rounding can do it. */
      readonly widened: boolean;
    }
  | { readonly ok: false; readonly reason: string };

/**
 * Converts a statement's limits (never nominal and tolerance apart) to another unit, each from its
 * exact value in one rounding. Refuses, with the reason, where inward rounding leaves no pair at
 * the asked places, where the statement has no limits, and where the unit measures another thing.
 */
export function convertLimits(
  statement: Statement,
  unit: string,
  options: ConversionOptions,
): Conversion {
  const { low, high, dimension } = statement;
  if (!low && !high) return { ok: false, reason: `${statement.text} states no limits` };
  const target = unitById(unit);
  const ends = [low, high].map((limit) => (limit ? inUnit(limit.base, dimension, unit) : null));
  // A time per volume falls as the flow rises: its lower figure comes from the upper flow.
  const [exactLow, exactHigh] = target.inverse ? [ends[1], ends[0]] : [ends[0], ends[1]];
  const inward = options.rounding === 'inward';
  const { places } = options;
  const roundedLow = exactLow ? roundTo(exactLow, places, inward ? 'up' : 'nearest') : null;
  const roundedHigh = exactHigh ? roundTo(exactHigh, places, inward ? 'down' : 'nearest') : null;
  if (roundedLow && roundedHigh && roundedLow.compare(roundedHigh) > 0) {
    const [down, up] = [formatDecimal(roundedLow, places), formatDecimal(roundedHigh, places)];
    const reason =
      `no figure with ${places} decimal ${places === 1 ? 'place' : 'places'} of ${unitWord(unit, roundedLow)} lies inside ` +
      `${statement.text}: rounded inward the limits cross (${down} above ${up}); take one more place`;
    return { ok: false, reason };
  }
  const widened =
    (roundedLow !== null && exactLow != null && roundedLow.compare(exactLow) < 0) ||
    (roundedHigh !== null && exactHigh != null && roundedHigh.compare(exactHigh) > 0);
  const zeroWidth = roundedLow !== null && roundedHigh !== null && roundedLow.equals(roundedHigh);
  return {
    ok: true,
    low: roundedLow,
    high: roundedHigh,
    text: limitsText(roundedLow, roundedHigh, unit, places),
    zeroWidth,
    widened,
  };
}

function limitsText(
  low: Rational | null,
  high: Rational | null,
  unit: string,
  places: number,
): string {
  if (low && high) {
    const word = unitWord(unit, high);
    const gap = word === '°' || word === '%' ? '' : ' ';
    return `${formatDecimal(low, places)}–${formatDecimal(high, places)}${gap}${word}`;
  }
  const only = low ?? high;
  if (!only) return '';
  const word = unitWord(unit, only);
  return `${formatDecimal(only, places)} ${word} ${low ? 'min' : 'max'}`;
}

/** Where a statement's limits and another's stand to one another, in the order of harm. */
export type LimitsAgreement =
  | { readonly verdict: 'none' | 'same' | 'inside' }
  | {
      /** `widened` by rounding outward in the last place; `apart` by more than that. */
      readonly verdict: 'widened' | 'apart';
      readonly side: 'low' | 'high';
      /** The first's limit in the second's unit, and the second's as written or worked. */
      readonly first: string;
      readonly second: string;
    };

/**
 * Holds the second statement's limits against the first's. Inward rounding by less than one unit
 * in the last place of the second is `inside`; outward by as much is `widened`.
 */
export function agreeLimits(first: Statement, second: Statement): LimitsAgreement {
  if (!first.low && !first.high) return { verdict: 'none' };
  if (!second.low && !second.high) return { verdict: 'none' };
  let verdict: 'same' | 'inside' = 'same';
  let worse: LimitsAgreement | null = null;
  for (const side of ['low', 'high'] as const) {
    const found = oneSide(first, second, side);
    if (found === 'same') continue;
    if (found === 'inside') verdict = 'inside';
    else if (!worse || (worse.verdict === 'widened' && found.verdict === 'apart')) worse = found;
  }
  return worse ?? { verdict };
}

/** Whether the second's limit on that side is the first's, rounded to its own places inward. */
export function isInwardRounding(
  first: Statement,
  second: Statement,
  side: 'low' | 'high',
): boolean {
  return oneSide(first, second, side) === 'inside';
}

function oneSide(
  first: Statement,
  second: Statement,
  side: 'low' | 'high',
): 'same' | 'inside' | Exclude<LimitsAgreement, { verdict: 'none' | 'same' | 'inside' }> {
  const one = first[side];
  const two = second[side];
  if (!one && !two) return 'same';
  const unit = unitOf(second);
  const places = placesOf(second);
  const least = Math.max(places === 6 ? 0 : places, unit === 'in' ? 4 : unit === 'mm' ? 3 : 0);
  const write = (base: Rational) => writeIn(base, second.dimension, unit, least);
  if (!one || !two) {
    const missing = side === 'low' ? 'no lower limit' : 'no upper limit';
    return {
      verdict: 'apart',
      side,
      first: one ? write(one.base) : missing,
      second: two ? write(two.base) : missing,
    };
  }
  const gap = two.base.sub(one.base);
  if (gap.n === 0n) return 'same';
  const inward = side === 'low' ? gap.s > 0n : gap.s < 0n;
  const grain = unitById(unit)
    .factor.div(10 ** places)
    .abs();
  // The first may be the rounded one: `0.188–0.218 in` beside the exact fraction stated second.
  const otherGrain = unitById(unitOf(first))
    .factor.div(10 ** placesOf(first))
    .abs();
  // A first rounded to the nearest lies out by half its grain; only one rounded inward by more.
  const reach = inward ? otherGrain.div(2) : otherGrain;
  const near = gap.abs().compare(grain) < 0 || (isDecimal(first) && gap.abs().compare(reach) <= 0);
  if (inward && near) return 'inside';
  return {
    verdict: near ? 'widened' : 'apart',
    side,
    ...unlike(one.base, two.base, (base, more) =>
      writeIn(base, second.dimension, unit, least + more),
    ),
  };
}

/** Two limits told to as many places as it takes to see that they differ. */
function unlike(
  one: Rational,
  two: Rational,
  write: (base: Rational, more: number) => string,
): { readonly first: string; readonly second: string } {
  let more = 0;
  while (more < 6 && write(one, more) === write(two, more)) more++;
  return { first: write(one, more), second: write(two, more) };
}

function limitAmount(statement: Statement) {
  return statement.low?.amount ?? statement.high?.amount ?? statement.nominal;
}

function unitOf(statement: Statement): string {
  return limitAmount(statement)?.unit ?? 'mm';
}

function isDecimal(statement: Statement): boolean {
  return (limitAmount(statement)?.places ?? null) !== null;
}

/** Decimal places that a statement's limits are told in; 6 for exact ones, finer than any figure. */
function placesOf(statement: Statement): number {
  return limitAmount(statement)?.places ?? 6;
}
