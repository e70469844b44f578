import {
  agreeLimits,
  compareAmounts,
  differenceText,
  exactPlaces,
  findMisprint,
  inUnit,
  principal,
  writeIn,
} from '../quantity/index.ts';
import type { Amount, Dimension, GaugeBook, Rational, Statement } from '../quantity/model.ts';

/**
 * What a statement comes to when each of its figures is multiplied: exact figures, in base units
 * of the dimension that they then are, as fine as the first was stated.
 */
export function workedFrom(
  from: Statement,
  factor: Rational,
  dimension: Dimension,
  unit: string,
): Statement {
  const times = (amount: Amount): Amount => ({
    ...amount,
    base: amount.base.mul(factor),
    could: { low: amount.could.low.mul(factor), high: amount.could.high.mul(factor) },
    number: inUnit(amount.base.mul(factor), dimension, unit),
    unit,
    places: null,
    style: 'fraction',
    gauge: null,
  });
  const limit = (side: Statement['low']): Statement['low'] =>
    side && { base: side.base.mul(factor), amount: side.amount && times(side.amount) };
  return {
    ...from,
    dimension,
    nominal: from.nominal && times(from.nominal),
    low: limit(from.low),
    high: limit(from.high),
    qualifier: null,
  };
}

/** How a stated size differs from what it should come to, told with both figures. */
export interface Disparity {
  /** `loose`: both could be roundings of one size; `limits`: the nominals agree and the limits do not. */
  readonly kind: 'apart' | 'loose' | 'limits';
  readonly worked: string;
  readonly stated: string;
  /** `3° more`: the stated less the worked; for limits the stated one, `27°`. */
  readonly difference: string;
  /** Which limit it is, for `limits`: `lower` or `upper`; empty otherwise. */
  readonly side: string;
  /** The figure that one slip would have been, with the slip; null where none explains it. */
  readonly slip: string | null;
}

/**
 * Holds a stated size against what another comes to; null where they go together. A worked figure
 * agrees when, rounded once to the stated places, it is the stated one; limits may be rounded inward.
 */
export function disparity(
  worked: Statement,
  stated: Statement,
  gauges: GaugeBook,
): Disparity | null {
  const [one, two] = [principal(worked), principal(stated)];
  if (one && two) {
    const verdict = compareAmounts(one, two);
    if (verdict !== 'same' && verdict !== 'agrees') {
      const misprint = findMisprint(one, two, gauges, stated.text);
      return {
        kind: verdict === 'apart' ? 'apart' : 'loose',
        worked: told(one, worked, two),
        stated: stated.text,
        difference: differenceText(one, two, stated),
        side: '',
        slip: misprint && `${misprint.suggestion}, if ${misprint.because}`,
      };
    }
  } else if ((one ?? two) && !(isLimited(worked) && isLimited(stated))) {
    const outside = one ? isOutside(one, stated) : two && isOutside(two, worked);
    if (!outside) return null;
    return {
      kind: 'apart',
      worked: one ? told(one, worked, two) : band(worked, stated),
      stated: stated.text,
      difference: 'outside it',
      side: '',
      slip: null,
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
    slip: null,
  };
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

function told(amount: Amount, { dimension }: Statement, beside: Amount | null): string {
  const places = Math.max(beside?.places ?? 0, Math.min(exactPlaces(amount.number) ?? 1, 1));
  return writeIn(amount.base, dimension, amount.unit, places);
}

function band(worked: Statement, { nominal }: Statement): string {
  const unit = nominal?.unit ?? '';
  const ends = [worked.low, worked.high].flatMap((end) => (end ? [end.base] : []));
  return ends.map((base) => writeIn(base, worked.dimension, unit, 1)).join(' to ');
}
