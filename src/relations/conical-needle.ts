import { bracket } from './bracket.ts';
import { fromNothing, hull, monotone } from './interval.ts';
import type { Interval } from './model.ts';

const RADIANS = Math.PI / 180;

/**
 * Half of the cone's angle, and the slant by which the cone has left the edge when the passage
 * between them is as large as the orifice: u (d₀ - u cos θ/2) = d₀²/4.
 */
function halfAngle(degrees: number): number {
  return (Math.min(180, degrees) / 2) * RADIANS;
}

/** Lift in mm past which the orifice and no longer the needle meters. */
function fullLiftMm(orifice: number, degrees: number): number {
  const half = halfAngle(degrees);
  return orifice / (2 * Math.sin(half) * (1 + Math.SQRT2 * Math.sin(half / 2)));
}

/** Area of the cone's shell between the needle and the sharp edge of its seat, at most the orifice. */
function areaMm2(lift: number, orifice: number, degrees: number): number {
  if (lift >= fullLiftMm(orifice, degrees)) return (Math.PI / 4) * orifice * orifice;
  const half = halfAngle(degrees);
  const slant = lift * Math.sin(half);
  return Math.PI * slant * (orifice - slant * Math.cos(half));
}

/** Lift at which the passage beside the needle has grown to the whole orifice. */
export function fullLift(orifice: Interval, needle: Interval): Interval {
  return monotone([orifice, needle], [1, -1], fullLiftMm);
}

/** Area that the needle leaves open at `lift`, never more than the orifice. */
export function needleArea(lift: Interval, orifice: Interval, needle: Interval): Interval {
  const area = monotone([lift, orifice, needle], [1, 1, 1], areaMm2);
  return fromNothing(area);
}

/** Lift that leaves `area` open, or null where that is more than the orifice. */
export function liftForArea(area: Interval, orifice: Interval, needle: Interval): Interval | null {
  const most = fullLift(orifice, needle).hi;
  const full = needleArea({ lo: most, hi: most }, orifice, needle);
  if (area.lo > full.hi) return null;
  return bracket(area, 0, most, (lift) => needleArea({ lo: lift, hi: lift }, orifice, needle));
}

/** Angles at which a stretch of them is tried. */
const TRIES = 512;

/**
 * Area that `step` more of lift adds. It falls with the lift and rises with step and orifice, but
 * with the angle it may do either: angles are tried one beside the other, and what could happen
 * between two tries is added.
 */
export function areaAdded(
  lift: Interval,
  step: Interval,
  orifice: Interval,
  needle: Interval,
): Interval {
  const at = (degrees: number) =>
    monotone(
      [lift, step, orifice],
      [-1, 1, 1],
      (h, more, d0) => areaMm2(h + more, d0, degrees) - areaMm2(h, d0, degrees),
      orifice.hi * orifice.hi,
    );
  let added = hull(at(needle.lo), at(needle.hi));
  const width = needle.hi - needle.lo;
  for (let i = 1; width > 0 && i < TRIES; i++) {
    added = hull(added, at(needle.lo + (width * i) / TRIES));
  }
  const between = (halfAngle(width) / TRIES / 2) * steepest(lift, step, orifice, needle);
  return { lo: Math.max(0, added.lo - between), hi: added.hi + between };
}

/**
 * The most that the added area changes in a radian of half of the angle, in mm². An area changes by
 * less than 2π d₀ h, since its slant is never over half of the orifice; for the same reason the
 * difference of two that the needle meters changes by less than 3π d₀ times the step.
 */
function steepest(lift: Interval, step: Interval, orifice: Interval, needle: Interval): number {
  const full = fullLift(orifice, needle);
  const farthest = lift.hi + step.hi;
  const roundings = 1.001;
  if (farthest < full.lo) return roundings * 3 * Math.PI * orifice.hi * step.hi;
  const both = Math.min(lift.hi, full.hi) + Math.min(farthest, full.hi);
  return roundings * 2 * Math.PI * orifice.hi * both;
}
