import type { Rational } from '../quantity/model.ts';
import { chordError } from './bore-error.ts';
import { type Clearance, isWithin } from './clearance.ts';
import type { Kit, KitGauge } from './kit.ts';
import { DRILLS } from './systems.ts';

/** Where a gap is. */
export interface GapPlace {
  /** Whether it lies between a plate's edge and the hollow wall of a bore. */
  readonly inBore: boolean;
  /** How wide that bore is; null where it is not known. */
  readonly boreMm: Rational | null;
}

/** A gap between faces that a leaf lies flat on. */
export const BETWEEN_FACES: GapPlace = { inBore: false, boreMm: null };

/**
 * The true gaps that a gauge may stand for when it just passes: its own size, and for a leaf in a
 * bore up to its own size and what it reads too little, for it may bend. Null where it does not go
 * in, or where nobody can say what it reads: a leaf in a bore of unknown width.
 */
export function standsFor(
  { gauge, widthMm }: KitGauge,
  place: GapPlace,
): { readonly low: Rational; readonly high: Rational } | null {
  if (widthMm === null || !place.inBore) return { low: gauge.mm, high: gauge.mm };
  const error = place.boreMm === null ? null : chordError(place.boreMm, widthMm);
  return error === null ? null : { low: gauge.mm, high: gauge.mm.add(error.high) };
}

/**
 * The gauges of a kit that can prove a gap: whatever they stand for lies within its limits.
 * Nearest to the nominal first; of those as near, leaves before wires and drills between
 * faces and round ones before leaves in a bore, then those marked in the paper's unit.
 */
export function fittingGauges(
  clearance: Clearance,
  kit: Kit,
  place: GapPlace,
): readonly KitGauge[] {
  const { nominalMm, unit } = clearance;
  const fits = kit.gauges.filter((each) => {
    // The size goes first: most of a kit is far from the limits.
    if (!isWithin(each.gauge.mm, clearance)) return false;
    const stands = standsFor(each, place);
    return stands !== null && isWithin(stands.high, clearance);
  });
  const ranked = fits.map((each) => ({
    each,
    off: each.gauge.mm.sub(nominalMm).abs(),
    rank: rankOf(each, place),
    foreign: each.gauge.unit === unit ? 0 : 1,
  }));
  ranked.sort((a, b) => a.off.compare(b.off) || a.rank - b.rank || a.foreign - b.foreign);
  return ranked.map(({ each }) => each);
}

/** The gauges of a kit next outside of the limits, of those that a place allows; null past the ends. */
export function gaugesBeside(
  clearance: Clearance,
  kit: Kit,
  place: GapPlace,
): { readonly below: KitGauge | null; readonly above: KitGauge | null } {
  const low = clearance.lowMm ?? clearance.nominalMm;
  const high = clearance.highMm ?? clearance.nominalMm;
  let below: KitGauge | null = null;
  let above: KitGauge | null = null;
  for (const each of kit.gauges) {
    if (place.inBore && each.widthMm !== null) continue;
    const { mm } = each.gauge;
    if (isWithin(mm, clearance)) continue;
    if (mm.compare(low) <= 0) below = preferred(below, each, place, -1);
    else if (mm.compare(high) >= 0) above = preferred(above, each, place, 1);
  }
  return { below, above };
}

/** The smaller (`toward` 1) or larger (-1) of two; the better name, where they are of one size. */
function preferred(
  one: KitGauge | null,
  other: KitGauge,
  place: GapPlace,
  toward: 1 | -1,
): KitGauge {
  if (one === null) return other;
  const side = other.gauge.mm.compare(one.gauge.mm) * toward;
  if (side !== 0) return side < 0 ? other : one;
  return rankOf(other, place) < rankOf(one, place) ? other : one;
}

function rankOf({ gauge, widthMm }: KitGauge, { inBore }: GapPlace): number {
  const isLeaf = widthMm !== null;
  if (isLeaf) return inBore ? 3 : 0;
  if (DRILLS.includes(gauge.system)) return 2;
  return 1;
}
