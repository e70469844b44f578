import { convertLimits } from './convert.ts';
import type { Amount, Dimension, Statement } from './model.ts';
import { inUnit } from './units.ts';
import { principal, usualPlaces, writeCount, writeIn } from './write.ts';

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
  const other = units
    .map((unit) => inOtherUnit(statement, written, unit))
    .filter((text) => text !== null);
  return { ...NONE, other };
}

function lengthIn(statement: Statement, unit: 'in' | 'mm'): string | null {
  const written = writtenAmount(statement);
  if (!written || (written.unit === unit && isDecimalText(written))) return null;
  return inOtherUnit(statement, written, unit);
}

/** Whether the decimal figure stands in the text: it does not in `9/64 drill` or `No. 20 AWG`. */
function isDecimalText(amount: Amount): boolean {
  if (amount.style === 'decimal' || amount.style === 'integer') return true;
  const system = amount.gauge?.system;
  const sized =
    system === 'wire' || system === 'leaf' || system === 'pin' || system === 'metric-drill';
  return sized && !amount.text.includes('/');
}

function writtenAmount(statement: Statement): Amount | null {
  return principal(statement) ?? statement.low?.amount ?? statement.high?.amount ?? null;
}

function inOtherUnit(statement: Statement, written: Amount, unit: string): string | null {
  const value = principal(statement);
  const places = usualPlaces(unit, inUnit(written.base, statement.dimension, unit));
  const banded = statement.form === 'range' || statement.form === 'tolerance';
  const band = banded ? bandIn(statement, unit, places) : null;
  if (!value) return band;
  // A limit that stands alone is rounded inward as one of a pair is.
  const inward = statement.form === 'min' ? 'up' : statement.form === 'max' ? 'down' : 'nearest';
  const main = writeIn(value.base, statement.dimension, unit, places, inward);
  const suffix = statement.form === 'min' || statement.form === 'max' ? ` ${statement.form}` : '';
  return band ? `${main} (${band})` : `${main}${suffix}`;
}

function bandIn(statement: Statement, unit: string, places: number): string | null {
  // A narrow band may have no pair at the usual places: one more figure is honest, a wider band is not.
  for (let more = 0; more < 3; more++) {
    const converted = convertLimits(statement, unit, {
      places: places + more,
      rounding: 'inward',
    });
    if (converted.ok && !converted.zeroWidth) return converted.text;
  }
  return null;
}
