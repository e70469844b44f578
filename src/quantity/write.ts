import type { Amount, Dimension, Rational, Statement } from './model.ts';
import { exactPlaces, exactText, formatDecimal, type RoundingMode } from './rational.ts';
import { inUnit } from './units.ts';

/** A statement as its source wrote it: always exactly that. */
export function writeStatement(statement: Statement): string {
  return statement.text;
}

/** The amount that a statement turns on: its nominal, or the one limit it states. Null for a range. */
export function principal(statement: Statement): Amount | null {
  if (statement.nominal) return statement.nominal;
  if (statement.form === 'min') return (statement.low ?? statement.high)?.amount ?? null;
  if (statement.form === 'max') return (statement.high ?? statement.low)?.amount ?? null;
  return null;
}

/** A number in words for a count: `1 turn`, `1-1/4 turns`, `2 flats`. */
export function unitWord(unit: string, number: Rational): string {
  const singular = number.abs().compare(1) <= 0 && number.n !== 0n;
  if (unit === 'turn' || unit === 'flat') return singular ? unit : `${unit}s`;
  if (unit === 'notch') return singular ? unit : 'notches';
  if (unit === 'deg') return '°';
  if (unit === 'degC' || unit === 'degF') return unit === 'degC' ? '°C' : '°F';
  if (unit === 'percent') return '%';
  if (unit === 'minute') return 'min';
  const perStrokes = /^(.+)\/(\d+) strokes$/.exec(unit);
  if (perStrokes)
    return perStrokes[2] === '1'
      ? `${perStrokes[1]} per stroke`
      : `${perStrokes[1]} per ${perStrokes[2]} strokes`;
  const perVolume = /^(s|minute|h)\/(.+)$/.exec(unit);
  if (perVolume) return `${perVolume[1]} per ${perVolume[2]}`;
  return unit.replace(/\/minute$/, '/min');
}

/** `0.136 in`, `4°`, `1.5 turns`: a base value in a unit at so many decimal places. */
export function writeIn(
  base: Rational,
  dimension: Dimension,
  unit: string,
  places: number,
  mode: RoundingMode = 'nearest',
): string {
  const number = inUnit(base, dimension, unit);
  return joined(formatDecimal(number, places, mode), unit, number);
}

/** A number's text with the word of its unit, which may be singular for `value`: `4°`, `1.5 turns`. */
export function joined(number: string, unit: string, value: Rational): string {
  const word = unitWord(unit, value);
  return word === '°' || word === '%' ? `${number}${word}` : `${number} ${word}`;
}

/**
 * A count of turns, flats or notches as a mixed number where it has a small denominator. No notch
 * is the index, and notches below it are lean.
 */
export function writeCount(base: Rational, unit: 'turn' | 'flat' | 'notch'): string {
  const dimension = unit === 'notch' ? 'notches' : 'turns';
  const number = inUnit(base, dimension, unit);
  const word = unitWord(unit, number);
  if (unit === 'notch' && number.n === 0n) return 'index';
  if (unit === 'notch' && number.s < 0n) return `${writeCount(base.neg(), unit)} lean`;
  if (number.d === 1n) return `${exactText(number)} ${word}`;
  if (number.d > 64n) return `${formatDecimal(number, 2)} ${word}`;
  const whole = number.n / number.d;
  const rest = `${number.n % number.d}/${number.d}`;
  const sign = number.s < 0n ? '-' : '';
  return `${sign}${whole === 0n ? rest : `${whole}-${rest}`} ${word}`;
}

/**
 * The places a size is usually told in: 4 of an inch, 2 of a millimeter, 3 below a millimeter, 1 of
 * a pressure or torque, 2 of a force or an hourly flow.
 */
export function usualPlaces(unit: string, number: Rational): number {
  if (unit === 'in') return 4;
  if (unit === 'mm') return number.abs().compare(1) < 0 ? 3 : 2;
  if (/^(?:kPa|N·m|ft-lb|psi|inHg)$/.test(unit)) return 1;
  if (/^(?:N|lbf|(?:L|US gal|kg|lb)\/h)$/.test(unit)) return 2;
  return Math.min(exactPlaces(number) ?? 3, 3);
}

/** Decimal places that show a difference with at least two figures, at most six. */
export function placesToShow(difference: Rational, atLeast: number): number {
  for (let places = atLeast; places < 6; places++) {
    const shown = formatDecimal(difference.abs(), places).replace(/[.0]/g, '');
    if (shown.length >= 1) return places;
  }
  return 6;
}
