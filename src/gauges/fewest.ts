/** A choice that leaves no need unserved. */
export interface Cover {
  /** Indexes of the chosen gauges, ascending. */
  readonly chosen: readonly number[];
  /** No choice has fewer than this many: proven. Equal to the number chosen where that is the minimum. */
  readonly atLeast: number;
}

/** Needs looked at after which a search gives the best it has, with what is proven of the minimum. */
const MOST_LOOKS = 2_000_000;

/**
 * The fewest gauges that serve every need, where `needs[n]` lists the gauges that can serve need n,
 * best first (a need without any is passed over), and those of `already` are had anyway and not
 * counted. Branch and bound: it branches on the need with the fewest gauges; a branch ends where as
 * many needs as would be too many share no gauge with one another, for each of them asks for one of
 * its own. Needs that have no gauge in common, even by way of others, are settled apart. Among
 * choices as small, it keeps to the one that serves each need with the best of its list. The same
 * needs give the same choice; the work is bounded by `mostLooks` for each group of needs, and
 * `atLeast` says what is proven where that was not enough.
 */
export function fewestGauges(
  needs: readonly (readonly number[])[],
  already: ReadonlySet<number> = new Set(),
  mostLooks: number = MOST_LOOKS,
): Cover {
  const open = needs.filter((list) => list.length > 0 && !list.some((gauge) => already.has(gauge)));
  let atLeast = 0;
  const chosen: number[] = [];
  for (const group of apart(open)) {
    const cover = coverOf(essential(group), mostLooks);
    atLeast += cover.atLeast;
    chosen.push(...improved(cover.chosen, group));
  }
  return { chosen: chosen.sort((a, b) => a - b), atLeast };
}

type Needs = readonly (readonly number[])[];

/** The needs in groups that share no gauge. */
function apart(needs: Needs): readonly Needs[] {
  const leader = new Map<number, number>();
  const find = (gauge: number): number => {
    let at = gauge;
    for (let up = leader.get(at); up !== undefined && up !== at; up = leader.get(at)) at = up;
    leader.set(gauge, at);
    return at;
  };
  for (const list of needs) {
    const first = find(list[0] ?? 0);
    for (const gauge of list) leader.set(find(gauge), first);
  }
  const groups = new Map<number, (readonly number[])[]>();
  for (const list of needs) {
    const key = find(list[0] ?? 0);
    const group = groups.get(key) ?? [];
    group.push(list);
    groups.set(key, group);
  }
  return [...groups.values()];
}

/** Without the needs that are served whenever another one is: those that hold all gauges of another. */
function essential(needs: Needs): Needs {
  const sorted = [...needs].sort((a, b) => a.length - b.length);
  const kept: { readonly list: readonly number[]; readonly set: ReadonlySet<number> }[] = [];
  for (const list of sorted) {
    const set = new Set(list);
    if (kept.some((other) => other.list.every((gauge) => set.has(gauge)))) continue;
    kept.push({ list, set });
  }
  return kept.map(({ list }) => list);
}

function coverOf(needs: Needs, mostLooks: number): Cover {
  const serves = new Map<number, Set<number>>();
  needs.forEach((list, need) => {
    for (const gauge of list) serves.set(gauge, (serves.get(gauge) ?? new Set()).add(need));
  });
  let best = greedy(needs, serves);
  const root = disjoint(needs, new Set(needs.keys()));
  let looks = mostLooks;
  const search = (left: ReadonlySet<number>, chosen: readonly number[]): void => {
    if (best.length === root || looks <= 0) return;
    looks -= 1 + left.size;
    if (left.size === 0) {
      if (chosen.length < best.length) best = chosen;
      return;
    }
    if (chosen.length + disjoint(needs, left) >= best.length) return;
    const list = shortest(needs, left);
    // A gauge that serves the most of what is left goes first; the sort keeps the better of equals.
    const ranked = list
      .map((gauge) => ({ gauge, count: countIn(serves.get(gauge), left) }))
      .sort((a, b) => b.count - a.count);
    for (const { gauge } of ranked) {
      const served = serves.get(gauge);
      search(new Set([...left].filter((need) => !served?.has(need))), [...chosen, gauge]);
    }
  };
  search(new Set(needs.keys()), []);
  return { chosen: best, atLeast: looks > 0 ? best.length : root };
}

/** How many needs that share no gauge are found by taking them as they come, shortest list first. */
function disjoint(needs: Needs, left: ReadonlySet<number>): number {
  const taken = new Set<number>();
  let count = 0;
  // `needs` stand by the length of their lists already.
  for (const need of left) {
    const list = needs[need] ?? [];
    if (list.some((gauge) => taken.has(gauge))) continue;
    for (const gauge of list) taken.add(gauge);
    count += 1;
  }
  return count;
}

function shortest(needs: Needs, left: ReadonlySet<number>): readonly number[] {
  const [first = 0] = left;
  return needs[first] ?? [];
}

function countIn(served: ReadonlySet<number> | undefined, left: ReadonlySet<number>): number {
  let count = 0;
  for (const need of served ?? []) if (left.has(need)) count += 1;
  return count;
}

/** Time and again the gauge that serves the most needs, of those the one that stands best in lists. */
function greedy(needs: Needs, serves: ReadonlyMap<number, ReadonlySet<number>>): readonly number[] {
  const left = new Set(needs.keys());
  const chosen: number[] = [];
  while (left.size > 0) {
    let pick = { gauge: -1, count: 0, rank: 0 };
    for (const [gauge, served] of serves) {
      const count = countIn(served, left);
      if (count === 0 || count < pick.count) continue;
      const rank = rankOf(
        gauge,
        [...served].filter((need) => left.has(need)),
        needs,
      );
      if (count > pick.count || rank < pick.rank) pick = { gauge, count, rank };
    }
    chosen.push(pick.gauge);
    for (const need of serves.get(pick.gauge) ?? []) left.delete(need);
  }
  return chosen;
}

function rankOf(gauge: number, which: readonly number[], needs: Needs): number {
  return which.reduce((sum, need) => sum + (needs[need]?.indexOf(gauge) ?? 0), 0);
}

/** Each chosen gauge given up for the one that serves better what it alone serves. */
function improved(chosen: readonly number[], needs: Needs): readonly number[] {
  const result = [...chosen];
  result.forEach((_, at) => {
    const others = new Set(result.filter((__, i) => i !== at));
    const own = [...needs.keys()].filter((n) => !needs[n]?.some((gauge) => others.has(gauge)));
    const [first = []] = own.map((need) => needs[need] ?? []);
    const able = first.filter((gauge) => own.every((need) => needs[need]?.includes(gauge)));
    const ranked = able.map((gauge) => ({ gauge, rank: rankOf(gauge, own, needs) }));
    ranked.sort((a, b) => a.rank - b.rank);
    result[at] = ranked[0]?.gauge ?? result[at] ?? 0;
  });
  return result;
}
