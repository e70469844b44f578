import Fraction from 'fraction.js';
import type { Rational, Statement } from '../quantity/model.ts';

/** A gap that is to be measured. */
export interface Clearance {
  /** Null where nothing bounds it on that side. One of the two at least is there. */
  readonly lowMm: Rational | null;
  readonly highMm: Rational | null;
  /** What the limits lie around: the nominal, else the middle of two limits, else the one limit. */
  readonly nominalMm: Rational;
  /** Whether the limits are stated; otherwise they are what a nominal's own rounding leaves open. */
  readonly stated: boolean;
  /** The paper's unit, for telling differences in. */
  readonly unit: 'in' | 'mm';
}

/**
 * Whether the two ends are themselves outside: stated limits are inclusive, but halfway to the next
 * figure is no reading of a nominal. An exact nominal has one end, itself, and that is inside.
 */
export function isOpen({ lowMm, highMm, stated }: Clearance): boolean {
  return !stated && lowMm !== null && highMm !== null && lowMm.compare(highMm) < 0;
}

/** Whether a size lies within the limits. */
export function isWithin(mm: Rational, clearance: Clearance): boolean {
  const { lowMm, highMm } = clearance;
  const least = isOpen(clearance) ? 1 : 0;
  if (lowMm && mm.compare(lowMm) < least) return false;
  return !(highMm && highMm.compare(mm) < least);
}

/**
 * A steel rule is marked in 64ths of an inch and read to one of them either way: limits as wide as
 * that need no gauge. Common practice, no source.
 */
const RULE_MM = new Fraction(254n, 10n).mul(2).div(64);

/** Where an ordinary index of drills ends, half an inch: above it, one limit is for a rule. */
const LARGEST_MM = new Fraction(127n, 10n);

/** Whether limits are stated that a steel rule can tell: wide ones, or a single one that is large. */
export function isForRule({ lowMm, highMm, nominalMm, stated }: Clearance): boolean {
  if (!stated) return false;
  if (lowMm && highMm) return highMm.sub(lowMm).compare(RULE_MM) >= 0;
  return nominalMm.compare(LARGEST_MM) > 0;
}

/**
 * The gap that a statement asks for; null where it is no length, has no number, or is nothing.
 * A nominal without limits is as wide as its rounding: `0.020 in` is anything that rounds to it.
 */
export function clearanceOf(statement: Statement): Clearance | null {
  const { dimension, nominal, low, high } = statement;
  if (dimension !== 'length') return null;
  const unit = (nominal ?? low?.amount ?? high?.amount)?.unit === 'mm' ? 'mm' : 'in';
  if (low === null && high === null) {
    if (nominal === null || nominal.base.s <= 0n || nominal.base.n === 0n) return null;
    const { low: lowMm, high: highMm } = nominal.could;
    return { lowMm, highMm, nominalMm: nominal.base, stated: false, unit };
  }
  const lowMm = low?.base ?? null;
  const highMm = high?.base ?? null;
  if (lowMm && highMm && lowMm.compare(highMm) > 0) return null;
  if (highMm && (highMm.s <= 0n || highMm.n === 0n)) return null;
  const middle = lowMm && highMm ? lowMm.add(highMm).div(2) : (lowMm ?? highMm);
  const nominalMm = nominal?.base ?? middle;
  return nominalMm === null ? null : { lowMm, highMm, nominalMm, stated: true, unit };
}
