import {
  agreeLimits,
  compareAmounts,
  differenceText,
  exactPlaces,
  findMisprint,
  inUnit,
  principal,
  unitById,
  writeIn,
} from '../quantity/index.ts';
import type { Amount, Dimension, GaugeBook, Rational, Statement } from '../quantity/model.ts';
import { type Figure, reachOf } from './figure.ts';
import { meet } from './interval.ts';
import type { Hold, Interval } from './model.ts';
import { exactly, simplestIn } from './simplest.ts';
import { highestIn, lowestIn } from './worked-text.ts';

/** How a stated size differs from what the others come to, told with both figures. */
export interface Disparity {
  /**
   * `loose`: both could be roundings of one size; `limits`: the nominals agree and the limits do not;
   * `beyond`: past a bound.
   */
  readonly kind: 'apart' | 'loose' | 'limits' | 'beyond';
  readonly worked: string;
  readonly stated: string;
  /** `3° more`: the stated less the worked; for limits the stated one, `27°`. */
  readonly difference: string;
  /** Which limit it is, for `limits`: `lower` or `upper`; empty otherwise. */
  readonly side: string;
  /**
   * The figure that one slip would have been, with the slip; null where none explains it. Looked for
   * when it is asked for: it takes a hundred times as long as all the rest.
   */
  readonly slip: () => string | null;
}

/** What a stated size is held against. */
export interface WorkedSize {
  readonly figure: Figure;
  /** All that the inputs' limits and roundings allow together. */
  readonly reach: Interval | null;
  readonly hold: Hold;
  /** Whether all but one of the inputs is exact: rounding and limits are then followed to the last place. */
  readonly isSingle: boolean;
}

/**
 * Holds a stated size against the worked one; null where they go together. From one inexact figure, a
 * worked size agrees when, rounded once to the stated places, it is the stated one, and limits may be
 * rounded inward. From several, it agrees when the stretches have a number in common.
 */
export function disparity(
  worked: WorkedSize,
  stated: Statement,
  own: Figure,
  gauges: GaugeBook,
): Disparity | null {
  if (worked.hold !== 'equals') return beyond(worked, stated, own);
  const as = amountOf(stated);
  if (!as) return null;
  return worked.isSingle
    ? ofOne(statementOf(worked.figure, stated, as), stated, as, gauges)
    : ofSeveral(worked, stated, own, as, gauges);
}

function ofOne(
  worked: Statement,
  stated: Statement,
  as: Amount,
  gauges: GaugeBook,
): Disparity | null {
  const [one, two] = [principal(worked), principal(stated)];
  if (one && two) {
    const verdict = compareAmounts(one, two);
    if (verdict !== 'same' && verdict !== 'agrees') {
      return {
        kind: verdict === 'apart' ? 'apart' : 'loose',
        worked: beside(one.base, two, stated.dimension),
        stated: stated.text,
        difference: differenceText(one, two, stated),
        side: '',
        slip: () => slipOf(one, two, gauges, stated),
      };
    }
  } else if ((one ?? two) && !(isLimited(worked) && isLimited(stated))) {
    const outside = one ? isOutside(one, stated) : two && isOutside(two, worked);
    if (!outside) return null;
    return {
      kind: 'apart',
      worked: one ? beside(one.base, as, stated.dimension) : band(worked, as),
      stated: stated.text,
      difference: 'outside it',
      side: '',
      slip: () => null,
    };
  }
  const limits = agreeLimits(worked, stated);
  if (limits.verdict !== 'apart' && limits.verdict !== 'widened') return null;
  return {
    kind: 'limits',
    worked: limits.first,
    stated: stated.text,
    difference: limits.second,
    side: limits.side === 'low' ? 'lower' : 'upper',
    slip: () => null,
  };
}

function ofSeveral(
  { figure, reach }: WorkedSize,
  stated: Statement,
  own: Figure,
  as: Amount,
  gauges: GaugeBook,
): Disparity | null {
  const isFigures = figure.nominal && own.nominal && figure.side === own.side;
  const ours = isFigures ? figure.nominal : openTo(figure, reach);
  const theirs = isFigures ? own.nominal : reachOf(own);
  if (!ours || !theirs || meet(ours, theirs)) return null;
  const isMore = theirs.lo > ours.hi;
  const near = isMore ? highestIn(ours) : lowestIn(ours);
  const { dimension } = stated;
  const [low, high] = [ours.lo, ours.hi]
    .filter(Number.isFinite)
    .map((end) => beside(exactly(end), as, dimension));
  const isPoint = low === high || high === undefined;
  const middle = figure.point ? simplestIn(figure.point) : near;
  // Any figure in the stretch would be as good: it is the one that the right figure rounds to.
  const right = { ...amountAs(as, middle, dimension, ours), places: as.places ?? 0 };
  return {
    kind: 'apart',
    worked: isPoint ? `${low}` : `${low} to ${high}`,
    stated: stated.text,
    difference: isPoint
      ? differenceText(amountAs(as, near, dimension, null), as, stated)
      : missText(near, theirs, as, stated, isMore),
    side: '',
    slip: () => (isFigures ? slipOf(right, as, gauges, stated) : null),
  };
}

/** A stated size that goes past a bound: none of it may. */
function beyond(
  { figure, reach, hold }: WorkedSize,
  stated: Statement,
  own: Figure,
): Disparity | null {
  const bound = openTo(figure, reach);
  const as = amountOf(stated);
  if (!bound || !as) return null;
  const { lo, hi } = surely(stated, own);
  const isMore = hold === 'at-most';
  if (isMore ? !(hi > bound.hi) : !(lo < bound.lo)) return null;
  const end = isMore ? highestIn(bound) : lowestIn(bound);
  return {
    kind: 'beyond',
    worked: beside(end, as, stated.dimension),
    stated: stated.text,
    difference: missText(end, { lo: isMore ? hi : lo, hi: isMore ? hi : lo }, as, stated, isMore),
    side: '',
    slip: () => null,
  };
}

/** From the least that a stated size surely has in it to the most, its own rounding given away. */
function surely({ low, high }: Statement, { nominal, side }: Figure): Interval {
  const inner = nominal ?? { lo: 0, hi: 0 };
  const least = low ? (low.amount?.could.high ?? low.base).valueOf() : inner.hi;
  const most = high ? (high.amount?.could.low ?? high.base).valueOf() : inner.lo;
  // `14 cm3 max` claims nothing beyond a bound, however high; `14 cm3 min` does.
  return {
    lo: side === 'min' ? Number.POSITIVE_INFINITY : side === 'max' ? most : least,
    hi: side === 'max' ? Number.NEGATIVE_INFINITY : side === 'min' ? least : most,
  };
}

/** All that a worked figure may be, open where it is a lone limit. */
function openTo(figure: Figure, reach: Interval | null): Interval | null {
  const { nominal, limits, side } = figure;
  if (side) return reachOf(figure);
  return reach ?? limits ?? nominal;
}

/** `6.3° more`: how far a stated stretch stands off the nearest that is allowed. */
function missText(
  near: Rational,
  { lo, hi }: Interval,
  as: Amount,
  stated: Statement,
  isMore: boolean,
): string {
  const end = isMore ? lowestIn({ lo, hi }) : highestIn({ lo, hi });
  const one = amountAs(as, near, stated.dimension, null);
  const two = amountAs(as, end, stated.dimension, null);
  // A count of turns would be written as a fraction of many digits.
  const { counted } = unitById(as.unit);
  return counted
    ? `${beside(end.sub(near).abs(), as, stated.dimension)} ${isMore ? 'more' : 'less'}`
    : differenceText(one, { ...two, places: as.places }, stated);
}

/** A worked figure as a statement in the unit of the stated one, its numbers as plain as they can be. */
function statementOf(figure: Figure, stated: Statement, as: Amount): Statement {
  const { point, nominal, limits, side } = figure;
  const { dimension, low, high } = stated;
  const base = point && snapped(point, [as.base]);
  const amount = base && amountAs(as, base, dimension, isWide(nominal, point) ? nominal : null);
  const ends = limits && {
    low: snapped({ lo: limits.lo, hi: limits.lo + grain(limits.lo) }, [low?.base]),
    high: snapped({ lo: limits.hi - grain(limits.hi), hi: limits.hi }, [high?.base]),
  };
  const single = amount && { base: amount.base, amount };
  return {
    ...stated,
    text: '',
    form: side ?? (amount ? (ends ? 'tolerance' : 'exact') : 'range'),
    nominal: side ? null : amount,
    low: side === 'min' ? single : side ? null : ends && { base: ends.low, amount: null },
    high: side === 'max' ? single : side ? null : ends && { base: ends.high, amount: null },
    qualifier: null,
  };
}

/** The stated number where it lies in a stretch no wider than what doubles are off, else the plainest. */
function snapped(stretch: Interval, wanted: readonly (Rational | undefined)[]): Rational {
  const found = wanted.find((base) => {
    const value = base?.valueOf() ?? Number.NaN;
    return value >= stretch.lo && value <= stretch.hi;
  });
  return found ?? simplestIn(stretch);
}

function grain(end: number): number {
  return Math.abs(end) * 1e-12;
}

function isWide(nominal: Interval | null, point: Interval | null): nominal is Interval {
  if (!nominal || !point) return false;
  return nominal.lo < point.lo - grain(point.lo) || nominal.hi > point.hi + grain(point.hi);
}

/** An exact amount in the unit of another; `could` is all that it may be, in base units. */
function amountAs(
  as: Amount,
  base: Rational,
  dimension: Dimension,
  could: Interval | null,
): Amount {
  return {
    ...as,
    base,
    could: could ? { low: lowestIn(could), high: highestIn(could) } : { low: base, high: base },
    number: inUnit(base, dimension, as.unit),
    places: null,
    style: 'fraction',
    gauge: null,
  };
}

function amountOf({ nominal, low, high }: Statement): Amount | null {
  return nominal ?? low?.amount ?? high?.amount ?? null;
}

function slipOf(
  right: Amount,
  wrong: Amount,
  gauges: GaugeBook,
  { text }: Statement,
): string | null {
  const misprint = findMisprint(right, wrong, gauges, text);
  return misprint && `${misprint.suggestion}, if ${misprint.because}`;
}

function isLimited({ low, high }: Statement): boolean {
  return low !== null || high !== null;
}

/** Whether an amount, as fine as it is stated, is clear of a statement's limits. */
function isOutside(amount: Amount, { low, high }: Statement): boolean {
  return (
    (low !== null && amount.could.high.compare(low.base) < 0) ||
    (high !== null && amount.could.low.compare(high.base) > 0)
  );
}

/** A size in the unit of a stated one, at its places and as many more as the unit is usually told to. */
function beside(base: Rational, as: Amount, dimension: Dimension): string {
  const number = inUnit(base, dimension, as.unit);
  const least = as.unit === 'in' ? 4 : as.unit === 'mm' ? 3 : Math.min(exactPlaces(number) ?? 1, 1);
  return writeIn(base, dimension, as.unit, Math.max(as.places ?? 0, least));
}

function band({ low, high, dimension }: Statement, as: Amount): string {
  return [low, high].flatMap((end) => (end ? [beside(end.base, as, dimension)] : [])).join(' to ');
}
