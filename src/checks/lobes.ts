import type { Kind } from '../kinds/model.ts';
import { rational } from '../quantity/index.ts';
import type { Rational } from '../quantity/model.ts';
import type { Sheet } from '../sheet/model.ts';
import type { Placed } from '../text/span.ts';

/**
 * Degrees of the cam from one of its lobes to the next: 360° over their number. Fails with a
 * RangeError for a number of lobes below one.
 */
export function lobeSpacing(lobes: number): Rational {
  if (lobes < 1) throw new RangeError(`a cam with ${lobes} lobes opens nothing`);
  return rational(360, lobes);
}

/** Percent that one degree of dwell is of the way from lobe to lobe: dwell in percent = dwell / (360/n). */
export function percentPerDegree(lobes: number): Rational {
  return rational(100).div(lobeSpacing(lobes));
}

/**
 * Seconds that the contacts stay closed for one spark of a four-stroke engine: dwell / (3 rpm),
 * dwell in degrees of the cam, which turns once while the crank turns twice, and rpm of the crank.
 * 60° at 5000 rpm is 4.0 ms. Fails with a RangeError at rest.
 */
export function closedSeconds(dwellDeg: Rational, crankRpm: Rational): Rational {
  if (crankRpm.n === 0n) throw new RangeError('at rest the contacts stay as they are');
  return dwellDeg.div(crankRpm.mul(3));
}

/** How many lobes the unit's features say, and the feature; null where none or two of them do. */
export function lobesOf(
  sheet: Sheet,
  kind: Kind,
): { readonly count: number; readonly feature: Placed<string> } | null {
  const found = sheet.unit.features.flatMap((feature) => {
    const name = kind.featureNamed(feature.value)?.name ?? feature.value;
    const count = kind.relations.lobes.get(name);
    return count === undefined ? [] : [{ count, feature }];
  });
  const [first] = found;
  return first && found.every(({ count }) => count === first.count) ? first : null;
}
