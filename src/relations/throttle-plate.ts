import { bracket } from './bracket.ts';
import { fromNothing, monotone } from './interval.ts';
import type { Interval } from './model.ts';

const RADIANS = Math.PI / 180;

/**
 * A thin plate in a round bore, closed at an angle from the plane square to the bore. Seen along the
 * bore it is an ellipse that covers the share k = cos ψ / cos ψ₀ of the bore across its shaft. The
 * geometry is that of J. B. Heywood, *Internal Combustion Engine Fundamentals*, chapter 7; the form
 * used here was derived anew and checked against numerical integration. Degrees, mm and mm².
 */
function cosine(degrees: number): number {
  return degrees > 45 ? Math.sin((90 - degrees) * RADIANS) : Math.cos(degrees * RADIANS);
}

/** (D/2)(1 - k), in the form that loses no places where the plate has hardly moved. */
function gapMm(angle: number, closed: number, bore: number): number {
  if (angle <= closed) return 0;
  const halfSum = Math.sin(((angle + closed) / 2) * RADIANS);
  const halfDifference = Math.sin(((angle - closed) / 2) * RADIANS);
  return Math.min(bore / 2, (bore * halfSum * halfDifference) / cosine(closed));
}

/** The angle whose cosine is cos ψ₀ (1 - 2g/D), by its half for the same reason. */
function angleDeg(gap: number, closed: number, bore: number): number {
  const half = Math.sin((closed / 2) * RADIANS);
  const sine = Math.sqrt(half * half + Math.min(0.5, gap / bore) * cosine(closed));
  return Math.min(90, (2 * Math.asin(Math.min(1, sine))) / RADIANS);
}

/** π/4 D² times the share of the bore that neither the plate nor its shaft, as long as it, covers. */
function areaMm2(gap: number, bore: number, shaft: number): number {
  const a = Math.min(1, shaft / bore);
  const open = Math.min(1, (2 * gap) / bore);
  const k = 1 - open;
  const hidden = a * Math.sqrt((1 - a) * (1 + a)) + Math.asin(a);
  let share = 1 - (2 / Math.PI) * hidden;
  if (k > a) {
    const t = a / k;
    share = open + (2 / Math.PI) * (a * Math.sqrt((1 - t) * (1 + t)) + k * Math.asin(t) - hidden);
  }
  return Math.max(0, (Math.PI / 4) * bore * bore * share);
}

/** Gap between plate and bore at `angle`, cut to what lies between closed and 90°. */
export function gapAt(angle: Interval, closed: Interval, bore: Interval): Interval {
  const turned = { lo: Math.max(angle.lo, closed.lo), hi: Math.min(angle.hi, 90) };
  const shut = { lo: closed.lo, hi: Math.min(closed.hi, turned.hi) };
  const gap = monotone([turned, shut, bore], [1, -1, 1], gapMm);
  return fromNothing(gap);
}

/** Angle at which the plate leaves `gap`; never below the closed angle nor above 90°. */
export function angleAt(gap: Interval, closed: Interval, bore: Interval): Interval {
  const shut = { lo: closed.lo, hi: Math.min(closed.hi, 90) };
  const angle = monotone([gap, shut, bore], [1, 1, -1], angleDeg);
  // The square of an angle that is next to nothing is nothing, and no plate stands below closed.
  return { lo: Math.max(closed.lo, angle.lo), hi: Math.max(closed.lo, Math.min(90, angle.hi)) };
}

/**
 * What a plate's thickness takes off the gap: (t/2) sin(ψ - ψ₀) / cos ψ₀. Its edge is ground to lie along
 * the bore at ψ₀; turned, the corner of one face comes nearer to the wall by that. Derived anew by
 * turning that corner about the shaft. Degrees and mm.
 */
function takenByPlate(angle: number, closed: number, plate: number): number {
  if (plate === 0 || angle <= closed) return 0;
  return ((plate / 2) * Math.sin((angle - closed) * RADIANS)) / cosine(closed);
}

/** Gap beside a plate of a thickness; 0 as its thickness it is `gapAt`. */
export function gapBesidePlate(
  angle: Interval,
  closed: Interval,
  bore: Interval,
  plate: Interval,
): Interval {
  if (plate.hi === 0) return gapAt(angle, closed, bore);
  const turned = { lo: Math.max(angle.lo, closed.lo), hi: Math.min(angle.hi, 90) };
  const shut = { lo: closed.lo, hi: Math.min(closed.hi, turned.hi) };
  const gap = monotone(
    [turned, shut, bore, plate],
    [1, -1, 1, -1],
    (a, c, d, t) => gapMm(a, c, d) - takenByPlate(a, c, t),
  );
  return { lo: Math.max(0, gap.lo), hi: Math.max(0, gap.hi) };
}

/** Angle at which a plate of a thickness leaves `gap`; 0 as its thickness it is `angleAt`. */
export function angleOfPlate(
  gap: Interval,
  closed: Interval,
  bore: Interval,
  plate: Interval,
): Interval {
  const thin = angleAt(gap, closed, bore);
  if (plate.hi === 0) return thin;
  const shut = { lo: closed.lo, hi: Math.min(closed.hi, 90) };
  const angle = monotone([gap, shut, bore, plate], [1, 1, -1, 1], (g, c, d, t) =>
    angleOfThick(g, c, d, t),
  );
  return {
    lo: Math.max(thin.lo, Math.min(90, angle.lo)),
    hi: Math.max(thin.hi, Math.min(90, angle.hi)),
  };
}

/**
 * (D - 2g) cos ψ₀ = (D - t sin ψ₀) cos ψ + t cos ψ₀ sin ψ, turned for ψ: the two on the right are one
 * cosine, that much behind.
 */
function angleOfThick(gap: number, closed: number, bore: number, plate: number): number {
  const along = bore - plate * Math.sin(closed * RADIANS);
  const across = plate * cosine(closed);
  const reach = Math.hypot(along, across);
  // As thick as its bore and closed along it: such a plate stands at one angle only.
  if (reach === 0) return 90;
  const share = ((bore - 2 * gap) * cosine(closed)) / reach;
  const behind = Math.atan2(across, along);
  return (behind + Math.acos(Math.max(-1, Math.min(1, share)))) / RADIANS;
}

/** Open area of one barrel at `gap`, with a shaft that may be none. */
export function areaAt(gap: Interval, bore: Interval, shaft: Interval): Interval {
  const area = monotone([gap, bore, shaft], [1, 1, -1], areaMm2, bore.hi * bore.hi);
  return fromNothing(area);
}

/** Open area of one barrel with the plate parallel to the bore. */
export function fullArea(bore: Interval, shaft: Interval): Interval {
  return areaAt({ lo: bore.lo / 2, hi: bore.hi / 2 }, bore, shaft);
}

/**
 * Gap at which one barrel is open by `area`, or null where it never is. Once the shaft hides the
 * plate every wider gap has the same area, so for that area the stretch ends at half the bore.
 */
export function gapForArea(area: Interval, bore: Interval, shaft: Interval): Interval | null {
  if (area.lo > fullArea(bore, shaft).hi) return null;
  return bracket(area, 0, bore.hi / 2, (gap) => areaAt({ lo: gap, hi: gap }, bore, shaft));
}
