import type { Amount, Rational } from './model.ts';
import { roundTo } from './rational.ts';
import { inUnit, unitById } from './units.ts';

/** How two amounts stand to one another, limits apart. */
export type AmountVerdict =
  | 'same'
  | 'agrees'
  | 'chopped-first'
  | 'chopped-second'
  | 'loose'
  | 'apart';

/**
 * Compares two amounts of one dimension. `agrees` when either, converted exactly and rounded once
 * to the other's stated places (ties to either side, ASTM E29), is the other as written; `chopped`
 * when dropping the digits gives it; `loose` when both could be roundings of one size all the same.
 */
export function compareAmounts(first: Amount, second: Amount): AmountVerdict {
  if (first.base.equals(second.base)) return 'same';
  if (isRounding(first, second) || isRounding(second, first)) return 'agrees';
  if (isChopped(first, second)) return 'chopped-second';
  if (isChopped(second, first)) return 'chopped-first';
  // Touching is not enough: .203 and .204 in share the tie between them, and are two sizes.
  const overlap =
    first.could.low.compare(second.could.high) < 0 &&
    second.could.low.compare(first.could.high) < 0;
  return overlap ? 'loose' : 'apart';
}

/** Whether the second, as written, is the first rounded to the second's stated places. */
function isRounding(first: Amount, second: Amount): boolean {
  if (second.places === null) return false;
  return first.base.compare(second.could.low) >= 0 && first.base.compare(second.could.high) <= 0;
}

function isChopped(first: Amount, second: Amount): boolean {
  if (second.places === null) return false;
  const exact = exactIn(first, second);
  return exact !== null && roundTo(exact, second.places, 'chop').equals(second.number);
}

/** The first's exact size in the second's unit; null between units of different zeros. */
function exactIn(first: Amount, second: Amount): Rational | null {
  const unit = unitById(second.unit);
  return unit.inverse && first.base.n === 0n
    ? null
    : inUnit(first.base, unit.dimension, second.unit);
}
