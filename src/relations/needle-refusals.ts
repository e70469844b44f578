import { fullLift } from './conical-needle.ts';
import { refuse } from './define-relation.ts';
import type { Interval, Unworkable } from './model.ts';

/**
 * Why a needle can't meter at a lift (null: at any); null where it can. Names `needle-angle`, `lift`
 * and `orifice`.
 */
export function needleRefused(
  lift: Interval | null,
  orifice: Interval,
  needle: Interval,
): Unworkable | null {
  if (needle.lo >= 180) {
    return refuse(
      'a needle of {needle-angle} is no cone',
      'give the full angle between the two sides of the needle, less than 180°',
      'needle-angle',
    );
  }
  if (lift && lift.lo > fullLift(orifice, needle).hi) {
    return refuse(
      'lifted by {lift}, a needle of {needle-angle} leaves an orifice of {orifice} wholly open and meters nothing',
      'correct the lift, the orifice or the angle of the needle',
      'lift',
      'orifice',
      'needle-angle',
    );
  }
  return null;
}
