import {
  figuresText,
  inUnit,
  principal,
  printedFigures,
  rational,
  unitById,
} from '../quantity/index.ts';
import type { Rational, Statement } from '../quantity/model.ts';
import idleVacuum from './formulas/idle-vacuum-at-altitude.ts';
import { enclose } from './interval.ts';
import { isUnworkable } from './model.ts';
import { SEA_LEVEL } from './standard-atmosphere.ts';

/** A height above the sea, as it is printed and in mm. */
export interface Altitude {
  readonly text: string;
  readonly mm: Rational;
}

/** One line of a table of readings by altitude. */
export interface AltitudeRow {
  readonly altitude: string;
  /** `17.1 inHg`, `16.9–18.9 inHg`, `17.1 inHg min`; null where there is none. */
  readonly reading: string | null;
  /** Why there is none, in a restorer's words; null where there is one. */
  readonly why: string | null;
}

/** The relation that the table is worked by, as kinds bind it to a setting. */
export const ALTITUDE_RELATION: string = idleVacuum.id;

/** Heights that clubs live at: every thousand feet, or every 250 m and then every 500. */
const USUAL = {
  ft: [0, 1000, 2000, 3000, 4000, 5000, 6000, 7000, 8000],
  m: [0, 250, 500, 750, 1000, 1500, 2000, 2500],
} as const;

/** The heights of an ordinary table, from the sea up. */
export function usualAltitudes(unit: 'ft' | 'm'): readonly Altitude[] {
  return USUAL[unit].map((number) => ({
    text: number === 0 ? 'sea level' : `${number} ${unit}`,
    mm: unitById(unit).factor.mul(number),
  }));
}

/**
 * What a manifold vacuum reads at each altitude if it reads so at `from`, in the unit and form that
 * it is stated in. Null `from` is sea level. Limits are rounded inward, as converted ones are.
 */
export function vacuumByAltitude(
  stated: Statement,
  from: Altitude | null,
  altitudes: readonly Altitude[],
): readonly AltitudeRow[] {
  return altitudes.map((altitude) => row(stated, from, altitude));
}

function row(stated: Statement, from: Altitude | null, altitude: Altitude): AltitudeRow {
  const refused = (why: string): AltitudeRow => ({
    altitude: altitude.text,
    reading: null,
    why,
  });
  const single = principal(stated);
  const amount = single ?? stated.low?.amount ?? stated.high?.amount ?? null;
  if (!amount || unitById(amount.unit).reference === null) {
    return refused(`${stated.text} is no reading of a vacuum gauge`);
  }
  const unit = unitById(amount.unit);
  let refusal: string | null = null;
  const told = (base: Rational | undefined): Rational | null => {
    if (base === undefined) return null;
    const worked = carry(base, from, altitude);
    if (typeof worked !== 'string') return inUnit(worked, 'vacuum', unit.id);
    refusal ??= worked.replaceAll('{reading}', stated.text);
    return null;
  };
  // Of a figure with limits on both sides the limits tell: a vacuum gauge is read no finer.
  const banded = stated.form === 'range' || stated.form === 'tolerance';
  const exact = {
    nominal: banded ? null : told(stated.nominal?.base),
    low: told(stated.low?.base),
    high: told(stated.high?.base),
  };
  if (refusal !== null) return refused(refusal);
  const text = figuresText(printedFigures(exact, placesOf(unit.id)), unit.id);
  return { altitude: altitude.text, reading: `${stated.about ? 'about ' : ''}${text}`, why: null };
}

/** A reading in Pa carried to another altitude, or why it cannot be. */
function carry(base: Rational, from: Altitude | null, to: Altitude): Rational | string {
  const solution = idleVacuum.solutions.find((each) => each.for === 'expected');
  const worked = solution?.solve(
    new Map([
      ['reading', enclose(base)],
      ['altitude', from ? enclose(from.mm) : SEA_LEVEL],
      ['here', enclose(to.mm)],
    ]),
  );
  if (!worked) throw new RangeError('the relation of vacuum and altitude has lost its solution');
  if (isUnworkable(worked)) {
    return worked.unworkable.message
      .replaceAll('{altitude}', from?.text ?? 'sea level')
      .replaceAll('{here}', to.text);
  }
  return rational((worked.lo + worked.hi) / 2);
}

/** Places that a vacuum gauge can be read to: a tenth of an inch, a millimeter of mercury. */
function placesOf(unit: string): number {
  if (unit === 'bar' || unit === 'kgf/cm2') return 2;
  return unit === 'mmHg' || unit === 'mbar' || unit === 'hPa' ? 0 : 1;
}
