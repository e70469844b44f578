import { isFlat } from '../quantity/index.ts';
import type { Rational } from '../quantity/model.ts';
import { type Clearance, isOpen } from './clearance.ts';
import type { KitGauge } from './kit.ts';

/** Leaves laid together. */
export interface LeafStack {
  /** Thickest first; two at least, each once. */
  readonly leaves: readonly KitGauge[];
  readonly mm: Rational;
  /** Whether the sum lies within the limits; otherwise it is the nearest to the nominal. */
  readonly fits: boolean;
}

/** More leaves than this hold oil and air between them and measure nothing. Common practice, no source. */
export const MOST_LEAVES = 4;

/** Sums that a search looks at before it stops; an ordinary set of leaves has under 20,000. */
const MOST_SUMS = 200_000;

/**
 * The fewest leaves whose thicknesses add up to a size within the limits, of those the nearest to
 * the nominal, of those the one whose thinnest leaf is thickest. Where none does, the nearest sum of
 * two to four leaves. Inch and metric leaves are not mixed: nobody adds them up right at the bench.
 * The search is exact and complete; null where there are fewer than two leaves, or so many that it
 * would not end (a set has some thirty).
 */
export function leafStack(clearance: Clearance, leaves: readonly KitGauge[]): LeafStack | null {
  const { nominalMm } = clearance;
  const groups = (['in', 'mm'] as const)
    .map((unit) => leaves.filter(({ gauge }) => isFlat(gauge.system) && gauge.unit === unit))
    .filter((group) => group.length >= 2);
  const search = { left: MOST_SUMS };
  for (let count = 2; count <= MOST_LEAVES; count++) {
    const found = groups.map((group) => closest(group, count, clearance, search));
    if (search.left <= 0) return null;
    const best = nearest(found, nominalMm);
    if (best) return { ...best, fits: true };
  }
  const anything = { ...clearance, lowMm: null, highMm: null };
  const found: (Sum | null)[] = [];
  for (let count = 2; count <= MOST_LEAVES; count++) {
    for (const group of groups) found.push(closest(group, count, anything, search));
  }
  if (search.left <= 0) return null;
  const best = nearest(found, nominalMm);
  return best === null ? null : { ...best, fits: false };
}

interface Sum {
  readonly leaves: readonly KitGauge[];
  readonly mm: Rational;
}

/** The nearest to the nominal; the earlier of two as near, and so the one of fewer leaves. */
function nearest(sums: readonly (Sum | null)[], nominal: Rational): Sum | null {
  let best: Sum | null = null;
  for (const sum of sums) {
    if (sum === null) continue;
    if (best === null || off(sum, nominal).compare(off(best, nominal)) < 0) best = sum;
  }
  return best;
}

function off(sum: Sum, nominal: Rational): Rational {
  return sum.mm.sub(nominal).abs();
}

/**
 * The sum of exactly `count` leaves that is nearest to the nominal within the limits. All sizes are
 * brought to whole numbers of one small unit, so that sums are exact. Leaves are chosen thickest
 * first; a branch is left where the thickest that are left cannot reach the window any more, or the
 * thinnest overshoot it. The window shrinks to the nearest sum that has been found.
 */
function closest(
  leaves: readonly KitGauge[],
  count: number,
  clearance: Clearance,
  search: { left: number },
): Sum | null {
  const sorted = [...leaves].sort((a, b) => b.gauge.mm.compare(a.gauge.mm));
  const { lowMm: low, highMm: high, nominalMm: nominal } = clearance;
  const all = [nominal, ...(low ? [low] : []), ...(high ? [high] : [])];
  const scale = [...sorted.map(({ gauge }) => gauge.mm), ...all].reduce(
    (m, x) => common(m, x.d),
    1n,
  );
  const whole = (x: Rational): bigint => (x.s * x.n * scale) / x.d;
  const sizes = sorted.map(({ gauge }) => whole(gauge.mm));
  const target = whole(nominal);
  // The ends of what rounds to a nominal are another figure's already.
  const inset = isOpen(clearance) ? 1n : 0n;
  let floor = low ? whole(low) + inset : null;
  let ceiling = high ? whole(high) - inset : null;
  // sums[n] is what the n thinnest leaves make together.
  const sums = [0n];
  for (let n = 1; n < count; n++) sums.push((sums[n - 1] ?? 0n) + (sizes[sizes.length - n] ?? 0n));
  let best: readonly number[] | null = null;
  let bestOff: bigint | null = null;

  const take = (chosen: readonly number[], sum: bigint): void => {
    const distance = sum > target ? sum - target : target - sum;
    const isNearer = bestOff === null || distance < bestOff;
    const isSturdier = !isNearer && (chosen.at(-1) ?? 0) < (best?.at(-1) ?? 0);
    if (!isNearer && !(distance === bestOff && isSturdier)) return;
    best = chosen;
    bestOff = distance;
    if (floor === null || floor < target - distance) floor = target - distance;
    if (ceiling === null || ceiling > target + distance) ceiling = target + distance;
  };
  const choose = (from: number, chosen: readonly number[], sum: bigint): void => {
    const rest = count - chosen.length - 1;
    for (let i = from; i < sizes.length - rest; i++) {
      search.left -= 1;
      if (search.left <= 0) return;
      const with_ = sum + (sizes[i] ?? 0n);
      let most = with_;
      for (let k = 1; k <= rest; k++) most += sizes[i + k] ?? 0n;
      if (floor !== null && most < floor) return;
      if (ceiling !== null && with_ + (sums[rest] ?? 0n) > ceiling) continue;
      if (rest === 0) take([...chosen, i], with_);
      else choose(i + 1, [...chosen, i], with_);
    }
  };
  choose(0, [], 0n);
  if (best === null) return null;
  const picked = (best as readonly number[]).flatMap((index) => sorted[index] ?? []);
  const mm = picked.map(({ gauge }) => gauge.mm).reduce((sum, size) => sum.add(size));
  return { leaves: picked, mm };
}

/** The least number that both divide. */
function common(a: bigint, b: bigint): bigint {
  let [x, y] = [a, b];
  while (y !== 0n) [x, y] = [y, x % y];
  return (a / x) * b;
}
