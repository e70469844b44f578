import type { Gauge, GaugeSystem, Rational } from '../quantity/model.ts';
import { inside, nearest } from './search.ts';
import { gaugeUncertainty } from './trusted.ts';

/** A pair that proves a gap within its limits, or the reason why no pair does. */
export type GoNoGo =
  | { readonly go: Gauge; readonly noGo: Gauge; readonly reason: null }
  | { readonly go: null; readonly noGo: null; readonly reason: string };

/**
 * The pair that proves a gap inside its limits: the go gauge passes, so the gap is at least its
 * size; the no-go gauge does not, so the gap is less than its size. Each must lie within its limit by
 * as much as it is uncertain, or a bench record of the two proves nothing (JCGM 106:2012, guarded
 * acceptance), and the pair that refuses the fewest good gaps is the smallest and the largest that do.
 * Both null, with a reason for the reader, where the limits hold no such two sizes.
 */
export function goNoGo(
  lowMm: Rational,
  highMm: Rational,
  systems?: readonly GaugeSystem[],
): GoNoGo {
  if (lowMm.compare(highMm) > 0) return none('the lower limit is above the upper one');
  const within = inside(lowMm, highMm, systems);
  if (within.length === 0) return none(nothingWithin(lowMm, systems));
  return pairOf(within, lowMm, highMm);
}

/** The pair out of gauges, ascending by size, that all lie within the limits. */
export function pairOf(within: readonly Gauge[], lowMm: Rational, highMm: Rational): GoNoGo {
  const [first] = within;
  if (!first) return none('no gauge lies within the limits');
  const last = within[within.length - 1] ?? first;
  if (last.mm.equals(first.mm)) {
    return none(
      `only ${first.label} lies within the limits, and a go and a no-go gauge need two sizes`,
    );
  }
  const go = within.find((gauge) => gauge.mm.sub(gaugeUncertainty(gauge)).compare(lowMm) >= 0);
  const largest = within.findLast(
    (gauge) => gauge.mm.add(gaugeUncertainty(gauge)).compare(highMm) <= 0,
  );
  if (!go || !largest || go.mm.compare(largest.mm) >= 0) {
    return none('no two gauges lie within the limits by as much as they are uncertain');
  }
  const noGo = within.find(
    (gauge) =>
      gauge.mm.equals(largest.mm) && gauge.mm.add(gaugeUncertainty(gauge)).compare(highMm) <= 0,
  );
  return { go, noGo: noGo ?? largest, reason: null };
}

/** Gauges to be made for limits that no pair at hand proves, in mm. */
export interface GaugesToMake {
  readonly goMm: Rational;
  readonly noGoMm: Rational;
  /** How closely each must be known (k = 2), for a record of the two to prove the gap. */
  readonly withinMm: Rational;
}

/**
 * The pair that would have to be made: a twentieth of the band inside each limit, and known to that
 * twentieth, half of what the 10 % rule of `gaugeMakersPair` leaves to the gauges. Null without a band.
 */
export function gaugesToMake(lowMm: Rational, highMm: Rational): GaugesToMake | null {
  if (lowMm.compare(highMm) >= 0) return null;
  const withinMm = highMm.sub(lowMm).div(20);
  return { goMm: lowMm.add(withinMm), noGoMm: highMm.sub(withinMm), withinMm };
}

function nothingWithin(mm: Rational, systems: readonly GaugeSystem[] | undefined): string {
  const { below, above } = nearest(mm, systems);
  const sides = [below && `${below.label} is below them`, above && `${above.label} above`];
  const said = sides.filter((side) => side !== null).join(', ');
  return `no gauge lies within the limits${said === '' ? '' : `: ${said}`}`;
}

function none(reason: string): GoNoGo {
  return { go: null, noGo: null, reason };
}
