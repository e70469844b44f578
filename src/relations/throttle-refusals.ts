import { refuse } from './define-relation.ts';
import type { Interval, Unworkable } from './model.ts';

/** Why a closed angle can't be one; null where it can. Names the quantity `closed-angle`. */
export function closedAngleRefused(closed: Interval): Unworkable | null {
  if (closed.lo < 90) return null;
  return refuse(
    'a plate can not close at {closed-angle}: at 90° it stands along the bore',
    'give the closed angle from the plane square to the bore, or take the written one from 90°',
    'closed-angle',
  );
}

/** Why a plate can't stand at an angle; null where it can. Names `angle` and `closed-angle`. */
export function plateRefused(angle: Interval, closed: Interval): Unworkable | null {
  const refused = closedAngleRefused(closed);
  if (refused) return refused;
  if (angle.hi < closed.lo) {
    return refuse(
      '{angle} is below the {closed-angle} at which the plate closes',
      'correct one of the two, or, if {angle} is counted from the closed plate, add the closed angle to it',
      'angle',
      'closed-angle',
    );
  }
  if (angle.lo > 90) {
    return refuse(
      '{angle} is past 90°, where the plate stands along the bore',
      'give the angle from the plane square to the bore',
      'angle',
    );
  }
  return null;
}

/** Why a plate can't be so thick; null where it can. Names `plate`, `bore` and `closed-angle`. */
export function thicknessRefused(
  plate: Interval,
  closed: Interval,
  bore: Interval,
): Unworkable | null {
  // A plate thicker than D sin ψ₀ jams: its edge comes nearer to the wall when it is opened.
  if (plate.lo === 0 || plate.lo < bore.hi * Math.sin((Math.min(90, closed.hi) * Math.PI) / 180))
    return null;
  return refuse(
    'a plate of {plate} that closes at {closed-angle} would jam in a bore of {bore}',
    'correct the thickness of the plate or its closed angle',
    'plate',
    'closed-angle',
    'bore',
  );
}

/** Why a plate can't leave so wide a gap; null where it can. Names `gap` and `bore`. */
export function gapRefused(gap: Interval, bore: Interval): Unworkable | null {
  if (gap.lo <= bore.hi / 2) return null;
  return refuse(
    '{gap} is more than half of a bore of {bore}, and no plate opens so far',
    'look for a slipped point in the gap or in the bore',
    'gap',
    'bore',
  );
}

/** Why a shaft can't run through a bore; null where it can. The names are of the quantities. */
export function shaftRefused(
  shaft: Interval,
  bore: Interval,
  shaftName = 'shaft',
  boreName = 'bore',
): Unworkable | null {
  if (shaft.lo < bore.hi) return null;
  return refuse(
    `a throttle shaft of {${shaftName}} fills a bore of {${boreName}}: nothing is left open`,
    'correct the shaft or the bore',
    shaftName,
    boreName,
  );
}

/** An area that a bore never has open beside its shaft. The names are of the quantities. */
export function areaRefused(areaName = 'area', boreName = 'bore'): Unworkable {
  return refuse(
    `{${areaName}} is more than a bore of {${boreName}} leaves open beside its shaft at full throttle`,
    'correct the area or the bore, and see that the area is of one barrel',
    areaName,
    boreName,
  );
}
