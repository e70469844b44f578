import {
  exactPlaces,
  formatDecimal,
  placesToShow,
  type RoundingMode,
  roundTo,
  spaced,
  toBase,
  unitById,
  unitWord,
  usualPlaces,
  writeCount,
} from '../quantity/index.ts';
import type { Rational } from '../quantity/model.ts';

/**
 * A number of a unit for people: exactly where six places do, else rounded once as `mode` says, with
 * at least `places` decimal places. Turns and flats are written as mixed numbers.
 */
export function figure(
  number: Rational,
  unit: string,
  places = 0,
  mode: RoundingMode = 'nearest',
): string {
  const { counted, dimension } = unitById(unit);
  if (counted && (number.s >= 0n || dimension === 'notches') && number.d <= 64n) {
    const base = toBase(number, unitById(unit));
    if (dimension === 'turns') return writeCount(base, unit === 'flat' ? 'flat' : 'turn');
    return writeCount(base, 'notch');
  }
  const exact = exactPlaces(number);
  // Two places more than usual: of figures a gauge apart the difference is what matters.
  const least = Math.max(places, usualPlaces(unit, number) + 2);
  const shown =
    exact !== null && exact <= 6 ? Math.max(exact, places) : placesToShow(number, least);
  return formatDecimal(number, shown, mode) + spaced(unitWord(unit, number));
}

/** `0.1875 in to 0.21875 in`, `18.5 inHg or more`: rounded inward where they must be; null for none. */
export function limitsText(
  { low, high }: { readonly low: Rational | null; readonly high: Rational | null },
  unit: string,
): string | null {
  const least = low === null ? null : figure(low, unit, 0, 'up');
  const most = high === null ? null : figure(high, unit, 0, 'down');
  if (least !== null && most !== null) return least === most ? least : `${least} to ${most}`;
  if (least !== null) return `${least} or more`;
  return most === null ? null : `${most} or less`;
}

/**
 * An uncertainty for people, in full where six places do, else rounded up to three figures that count:
 * one that is told too small would seem to prove what it does not.
 */
export function uncertaintyFigure(value: Rational, unit: string): string {
  const exact = exactPlaces(value);
  if (value.n === 0n || (exact !== null && exact <= 6)) return figure(value, unit);
  const places = Math.max(0, 2 - Math.floor(Math.log10(value.valueOf())));
  return figure(roundTo(value, places, 'up'), unit);
}
