import { likeness } from './substance.ts';

/** What became of the items of a list, by their places in the old and the new one. */
export interface Pairing {
  /** Items that are the same, or go on in another wording; in the new order. */
  readonly pairs: readonly {
    readonly before: number;
    readonly after: number;
    readonly moved: boolean;
  }[];
  readonly dropped: readonly number[];
  readonly added: readonly number[];
}

/** Below this share of common words a text is another text and not a rewording. */
const ALIKE = 0.5;

/**
 * Pairs two lists: equal texts first, then, unless only `equal` ones are wanted, what is left by
 * likeness, best first. `moved` are the fewest pairs whose removal leaves the others in their old
 * order.
 */
export function pairUp(
  before: readonly string[],
  after: readonly string[],
  by: 'likeness' | 'equal' = 'likeness',
): Pairing {
  const partner = new Map<number, number>();
  const taken = new Set<number>();
  const join = (old: number, fresh: number) => {
    partner.set(fresh, old);
    taken.add(old);
  };
  const waiting = new Map<string, number[]>();
  for (const [i, text] of before.entries()) {
    const places = waiting.get(text);
    if (places) places.push(i);
    else waiting.set(text, [i]);
  }
  for (const [i, text] of after.entries()) {
    const old = waiting.get(text)?.shift();
    if (old !== undefined) join(old, i);
  }
  const rest = by === 'equal' ? [] : alike(before, after, taken, partner);
  for (const { old, fresh } of rest) {
    if (!taken.has(old) && !partner.has(fresh)) join(old, fresh);
  }
  const pairs = [...partner]
    .map(([fresh, old]) => ({ before: old, after: fresh }))
    .sort((a, b) => a.after - b.after);
  const steady = longestRising(pairs.map((pair) => pair.before));
  return {
    pairs: pairs.map((pair, i) => ({ ...pair, moved: !steady.has(i) })),
    dropped: before.map((_, i) => i).filter((i) => !taken.has(i)),
    added: after.map((_, i) => i).filter((i) => !partner.has(i)),
  };
}

function alike(
  before: readonly string[],
  after: readonly string[],
  taken: ReadonlySet<number>,
  partner: ReadonlyMap<number, number>,
): { readonly old: number; readonly fresh: number }[] {
  const found: { old: number; fresh: number; share: number }[] = [];
  for (const [old, text] of before.entries()) {
    if (taken.has(old)) continue;
    for (const [fresh, other] of after.entries()) {
      if (partner.has(fresh)) continue;
      const share = likeness(text, other);
      if (share >= ALIKE) found.push({ old, fresh, share });
    }
  }
  return found.sort(
    (a, b) =>
      b.share - a.share ||
      Math.abs(a.old - a.fresh) - Math.abs(b.old - b.fresh) ||
      a.old - b.old ||
      a.fresh - b.fresh,
  );
}

/** The places of a longest rising run of a list, by patience sorting. */
export function longestRising(values: readonly number[]): ReadonlySet<number> {
  const tails: number[] = [];
  const previous: (number | null)[] = [];
  for (const [i, value] of values.entries()) {
    let low = 0;
    let high = tails.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((values[tails[middle] as number] as number) < value) low = middle + 1;
      else high = middle;
    }
    previous[i] = low > 0 ? (tails[low - 1] as number) : null;
    tails[low] = i;
  }
  const run = new Set<number>();
  for (let at: number | null = tails.at(-1) ?? null; at !== null; at = previous[at] ?? null) {
    run.add(at);
  }
  return run;
}
