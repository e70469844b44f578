import type { Kind } from '../kinds/model.ts';
import { heightText, type ReadOptions, rational, readStatement } from '../quantity/index.ts';
import type { Rational, Statement } from '../quantity/model.ts';
import type { Setting } from '../sheet/model.ts';
import idleVacuum from './formulas/idle-vacuum-at-altitude.ts';
import { HIGHEST_MM, LOWEST_MM, pressureAt } from './standard-atmosphere.ts';

/** Where readings were taken: by the height of the place, or by what the barometer stood at there. */
export interface ReadingPlace {
  /** As written: `1200 ft`, `28.6 inHg`. */
  readonly text: string;
  readonly barometerPa: number;
}

/** What is amiss with an altitude or a barometer that a record states. */
export interface PlaceProblem {
  readonly message: string;
  readonly fix: string;
}

/** The place of an altitude as written: `1200 ft`, `365 m`. */
export function placeAtAltitude(text: string, options: ReadOptions): ReadingPlace | PlaceProblem {
  const base = baseOf(heightText(text), 'length', options);
  const fix = 'write it with its unit, such as 1200 ft or 365 m';
  if (base === null) return { message: `${text} is no altitude`, fix };
  const mm = base.valueOf();
  if (mm < LOWEST_MM || mm > HIGHEST_MM) {
    return {
      message: `${text} lies outside of the air that the formula knows, 5000 m below the sea to 11000 m above it`,
      fix,
    };
  }
  return { text, barometerPa: pressureAt(mm) };
}

/** Below the lowest that is lived at and above the highest ever measured, in Pa. */
const LEAST_PA = 30_000;
const MOST_PA = 110_000;

/** The place of a barometer as written, which is always absolute: `28.6 inHg`, `968 mbar`, `96.8 kPa`. */
export function placeAtBarometer(text: string, options: ReadOptions): ReadingPlace | PlaceProblem {
  const plain = text.replace(/\s*\b(?:abs|absolute|vacuum|vac)\b\.?\s*$/i, '').trim();
  const base = baseOf(plain, 'pressure', options) ?? baseOf(plain, 'vacuum', options);
  const fix =
    'write what the barometer stood at in the shop with its unit, such as 28.6 inHg or 968 mbar';
  if (base === null) return { message: `${text} is no barometer`, fix };
  const pa = base.valueOf();
  if (pa < LEAST_PA || pa > MOST_PA) {
    return { message: `no barometer stands at ${text}`, fix };
  }
  return { text, barometerPa: pa };
}

/** How far weather moves the barometer from the standard one of a height, at most, in parts of it. */
const WEATHER = 0.06;

/** Whether a barometer cannot be that of the altitude beside it: weather reports tell it for the sea. */
export function isReduced(barometer: ReadingPlace, altitude: ReadingPlace): boolean {
  const apart = Math.abs(barometer.barometerPa / altitude.barometerPa - 1);
  return apart > WEATHER;
}

/** How the figures of a setting are carried to where a record was taken. */
export interface CarriedBy {
  /** A base value of the sheet's at the place of the record; null where no vacuum is left there. */
  carry(base: Rational): Rational | null;
  /** `sea level`, as nothing is said, or the sheet's own altitude. */
  readonly from: string;
  readonly to: string;
  readonly formula: string;
  readonly relation: string;
}

/**
 * How a manifold vacuum of a sheet is carried to a place; null for a setting whose kind does not bind it
 * to the formula, which is no depression of a manifold.
 */
export function vacuumCarried(
  setting: Setting,
  statement: Statement,
  kind: Kind | null,
  to: ReadingPlace,
  options: ReadOptions,
): CarriedBy | null {
  const binding = kind?.relations.bindings.find(({ relation, quantities }) => {
    const reading = quantities.get('reading');
    return (
      relation === idleVacuum.id && reading?.is === 'setting' && reading.setting === setting.id
    );
  });
  if (!binding || statement.dimension !== 'vacuum') return null;
  const said = binding.quantities.get('altitude');
  const key = said?.is === 'setting' ? said.key : null;
  const written = key === null ? null : (setting.said.get(key)?.value ?? null);
  const own = written === null ? null : placeAtAltitude(written, options);
  const from =
    own && 'barometerPa' in own ? own : { text: 'sea level', barometerPa: pressureAt(0) };
  const falls = from.barometerPa - to.barometerPa;
  return {
    carry: (base) => {
      const carried = base.sub(rational(Math.round(falls * 1000), 1000));
      return carried.s > 0n && carried.n !== 0n ? carried : null;
    },
    from: from.text,
    to: to.text,
    formula: idleVacuum.formula,
    relation: idleVacuum.id,
  };
}

function baseOf(
  text: string,
  dimension: 'length' | 'pressure' | 'vacuum',
  options: ReadOptions,
): Rational | null {
  const read = readStatement(text, { ...options, expect: [dimension] });
  if (!read.ok || read.statement.dimension !== dimension) return null;
  return read.statement.form === 'exact' ? (read.statement.nominal?.base ?? null) : null;
}
