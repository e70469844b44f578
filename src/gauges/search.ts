import { SYSTEMS } from '../quantity/index.ts';
import type { Gauge, GaugeSystem, Rational } from '../quantity/model.ts';
import { ON_THE_BENCH } from './systems.ts';
import { type Row, rows } from './tables.ts';

/** The gauges on either side of a size; `below` and `above` null beyond the ends of the tables. */
export interface Neighbors {
  readonly below: Gauge | null;
  /** Every gauge of exactly the size. */
  readonly exact: readonly Gauge[];
  readonly above: Gauge | null;
}

const merged = new Map<string, readonly Row[]>();

/** All rows of the systems, ascending; rows of one size in the order of the systems. */
function ladder(systems: readonly GaugeSystem[]): readonly Row[] {
  const key = systems.join(' ');
  let known = merged.get(key);
  if (!known) {
    const all = [...new Set(systems)].flatMap((system) => rows(system));
    // The sort is stable, so the order of the systems is kept within a size.
    known = all.sort((a, b) => a.nanometers - b.nanometers);
    merged.set(key, known);
  }
  return known;
}

/** The index of the first row that is at least (or, if `past`, more than) the size. */
function firstAt(all: readonly Row[], mm: Rational, past: boolean): number {
  const size = mm.s * mm.n * 1_000_000n;
  let low = 0;
  let high = all.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const here = BigInt(all[middle]?.nanometers ?? 0) * mm.d;
    if (here < size || (past && here === size)) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The first row of the size that the row before `index` has: the preferred of its names. */
function firstOfSizeBefore(all: readonly Row[], index: number): Row | null {
  const last = all[index - 1];
  if (!last) return null;
  let first = last;
  for (let i = index - 1; i >= 0; i--) {
    const row = all[i];
    if (row?.nanometers !== last.nanometers) break;
    first = row;
  }
  return first;
}

/**
 * The nearest gauge strictly below a size, all of exactly the size, and the nearest strictly
 * above. Looks through drills and ordinary wire and leaf feelers unless other systems are given;
 * where several names share a size, the first of the systems gives its own.
 */
export function nearest(mm: Rational, systems: readonly GaugeSystem[] = ON_THE_BENCH): Neighbors {
  const all = ladder(systems);
  const from = firstAt(all, mm, false);
  const to = firstAt(all, mm, true);
  return {
    below: firstOfSizeBefore(all, from)?.gauge() ?? null,
    exact: all.slice(from, to).map((row) => row.gauge()),
    above: all[to]?.gauge() ?? null,
  };
}

/** Every gauge within the limits, both inclusive, ascending; empty where the limits are inverted. */
export function inside(
  lowMm: Rational,
  highMm: Rational,
  systems: readonly GaugeSystem[] = ON_THE_BENCH,
): readonly Gauge[] {
  const all = ladder(systems);
  const end = firstAt(all, highMm, true);
  return all.slice(Math.min(firstAt(all, lowMm, false), end), end).map((row) => row.gauge());
}

/** Every gauge of exactly the size in every system; of feelers, those of the ordinary sets. */
export function namesOf(mm: Rational): readonly Gauge[] {
  return nearest(mm, SYSTEMS).exact;
}
