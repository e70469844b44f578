import type { Interval, Known } from './model.ts';

/** A known quantity's interval. Fails with a RangeError where the quantity is not known. */
export function knownSize(known: Known, name: string): Interval {
  const found = known.get(name);
  if (!found) throw new RangeError(`the formula was given no ${name}`);
  return found;
}

/** The part of a known quantity's interval that lies between two ends, which it must reach. */
export function knownPart(
  known: Known,
  name: string,
  least: number,
  most = Number.POSITIVE_INFINITY,
): Interval {
  const { lo, hi } = knownSize(known, name);
  return { lo: Math.max(lo, least), hi: Math.min(hi, most) };
}
