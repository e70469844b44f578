import { divide, multiply, subtract } from './interval.ts';
import type { Interval } from './model.ts';
import { PI, square } from './squares.ts';
import { GRAVITY } from './standard-gravity.ts';

const THOUSAND: Interval = { lo: 1000, hi: 1000 };
/** Square millimeters in a square meter, times the 4 under π. */
const FOUR_MILLION: Interval = { lo: 4e6, hi: 4e6 };

/**
 * What a float under the fuel as a whole presses its needle shut with, in N, of mL, g, kg/m³, mm
 * and mm: the weight of the fuel it displaces less its own, by the arms from the hinge. Nothing for a
 * float that sinks; the needle's arm is more than zero.
 */
export function closingForce(
  volume: Interval,
  weight: Interval,
  density: Interval,
  floatArm: Interval,
  needleArm: Interval,
): Interval {
  const spare = subtract(divide(multiply(density, volume), THOUSAND), weight);
  const lifted = { lo: Math.max(0, spare.lo), hi: Math.max(0, spare.hi) };
  const newtons = divide(multiply(lifted, GRAVITY), THOUSAND);
  const force = divide(multiply(newtons, floatArm), needleArm);
  return { lo: lifted.lo === 0 ? 0 : Math.max(0, force.lo), hi: lifted.hi === 0 ? 0 : force.hi };
}

/** Area of a bore in m², of its diameter in mm. */
export function seatArea(bore: Interval): Interval {
  return divide(multiply(PI, square(bore)), FOUR_MILLION);
}
