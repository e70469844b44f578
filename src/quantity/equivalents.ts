import { saysItsSize } from './gauge-systems.ts';
import { type PrintedFigures, printedFigures } from './inward.ts';
import type { Amount, Dimension, Rational, Statement } from './model.ts';
import { exactPlaces, formatDecimal } from './rational.ts';
import { inUnit, unitById } from './units.ts';
import { joined, principal, usualPlaces, writeCount } from './write.ts';

/** A statement in other units, for printing beside what the source wrote. */
export interface Equivalents {
  /** Decimal inches, limits inward; null where the dimension is no length or it is so written. */
  readonly inch: string | null;
  readonly mm: string | null;
  /** Further units: flats as turns, inHg and psi as kPa, ft-lb as N·m, a timed flow as L/h. */
  readonly other: readonly string[];
}

const NONE: Equivalents = { inch: null, mm: null, other: [] };

/** Units that a dimension is shown in beside length, each for readers of the other paper. */
const ALSO_IN: Partial<Record<Dimension, readonly string[]>> = {
  vacuum: ['inHg', 'kPa'],
  pressure: ['psi', 'kPa'],
  torque: ['ft-lb', 'N·m'],
  // A timed flow is set beside the hourly one, which needs no reckoning to compare.
  flow: ['L/h', 'US gal/h'],
  'mass-flow': ['kg/h', 'lb/h'],
  force: ['N', 'lbf'],
  'spring-rate': ['N/mm'],
};

/**
 * What a size comes to in inches, millimeters and other usual units, worked exactly and rounded
 * once; limits are rounded inward so that nothing the source refused is let through. A unit that
 * the source wrote decimals in already is left out.
 */
export function equivalents(statement: Statement): Equivalents {
  if (statement.dimension === 'length') {
    return { inch: lengthIn(statement, 'in'), mm: lengthIn(statement, 'mm'), other: [] };
  }
  if (statement.dimension === 'turns') {
    const value = principal(statement);
    if (!value) return NONE;
    const other = value.unit === 'flat' ? 'turn' : 'flat';
    const number = inUnit(value.base, 'turns', other);
    return other === 'flat' && number.d !== 1n
      ? NONE
      : { ...NONE, other: [writeCount(value.base, other)] };
  }
  const written = writtenAmount(statement);
  if (!written) return NONE;
  const units = (ALSO_IN[statement.dimension] ?? []).filter((unit) => unit !== written.unit);
  return { ...NONE, other: units.map((unit) => inOtherUnit(statement, written, unit)) };
}

function lengthIn(statement: Statement, unit: 'in' | 'mm'): string | null {
  const written = writtenAmount(statement);
  if (!written || (written.unit === unit && isDecimalText(written))) return null;
  return inOtherUnit(statement, written, unit);
}

/** A length in one unit as a column of figures prints it: no unit, and null for what there is not. */
export interface LengthFigures {
  readonly nominal: string | null;
  readonly low: string | null;
  readonly high: string | null;
}

/**
 * A length in inches or millimeters. Where the source wrote decimals in that unit the same places
 * stand, and more only where its limits need them; elsewhere it is worked as `equivalents` does.
 */
export function lengthFigures(statement: Statement, unit: 'in' | 'mm'): LengthFigures | null {
  const written = writtenAmount(statement);
  if (statement.dimension !== 'length' || written === null) return null;
  const { nominal, low, high, places } = figuresIn(
    statement,
    unit,
    written.unit === unit && isDecimalText(written)
      ? writtenPlaces(statement, written, unit)
      : usualPlaces(unit, inUnit(written.base, 'length', unit)),
  );
  const one = (number: Rational | null) => number && formatDecimal(number, places);
  return { nominal: one(nominal), low: one(low), high: one(high) };
}

function writtenPlaces({ low, high }: Statement, written: Amount, unit: 'in' | 'mm'): number {
  const stated = [low, high].flatMap((limit) =>
    limit ? [exactPlaces(inUnit(limit.base, 'length', unit)) ?? 0] : [],
  );
  const own = written.places ?? exactPlaces(inUnit(written.base, 'length', unit)) ?? 0;
  return Math.max(own, ...stated);
}

/** Whether the decimal figure stands in the text: it does not in `9/64 drill` or `No. 20 AWG`. */
function isDecimalText(amount: Amount): boolean {
  if (amount.style === 'decimal' || amount.style === 'integer') return true;
  return amount.gauge !== null && saysItsSize(amount.gauge.system) && !amount.text.includes('/');
}

function writtenAmount(statement: Statement): Amount | null {
  return principal(statement) ?? statement.low?.amount ?? statement.high?.amount ?? null;
}

function inOtherUnit(statement: Statement, written: Amount, unit: string): string {
  const places = usualPlaces(unit, inUnit(written.base, statement.dimension, unit));
  return figuresText(figuresIn(statement, unit, places), unit);
}

/** A statement's size and limits as they are printed in a unit, to so many places at least. */
export function figuresIn(statement: Statement, unit: string, places: number): PrintedFigures {
  const { dimension, nominal } = statement;
  const told = (base: Rational | undefined) =>
    base === undefined ? null : inUnit(base, dimension, unit);
  const [low, high] = [told(statement.low?.base), told(statement.high?.base)];
  // A time per volume falls as the flow rises: its lower figure comes from the upper flow.
  const ends = unitById(unit).inverse ? { low: high, high: low } : { low, high };
  return printedFigures({ nominal: told(nominal?.base), ...ends }, places);
}

/** `0.2031 in (0.1875–0.2187 in)`, `0.508 mm min`, `5.16 mm`. */
export function figuresText(figures: PrintedFigures, unit: string): string {
  const { nominal, low, high, places } = figures;
  const one = (number: Rational) => joined(formatDecimal(number, places), unit, number);
  const band =
    low && high
      ? joined(`${formatDecimal(low, places)}–${formatDecimal(high, places)}`, unit, high)
      : low
        ? `${one(low)} min`
        : high && `${one(high)} max`;
  if (nominal === null) return band ?? '';
  return band ? `${one(nominal)} (${band})` : one(nominal);
}
