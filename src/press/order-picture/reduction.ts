/** An arrow between two things that go by number. */
export interface Pair {
  readonly from: number;
  readonly to: number;
}

/**
 * The fewest arrows that still say everything `pairs` say: an arrow goes where another way of two
 * or more leads to the same place (transitive reduction of a graph without circles, which has
 * exactly one: Aho, Garey and Ullman 1972, from memory). Pairs of a circle are all kept. In the
 * order of `pairs`, each once.
 */
export function transitiveReduction<P extends Pair>(pairs: readonly P[]): readonly P[] {
  const next = new Map<number, Set<number>>();
  const once = pairs.filter(({ from, to }) => {
    const known = next.get(from) ?? new Set();
    next.set(from, known);
    if (from === to || known.has(to)) return false;
    known.add(to);
    return true;
  });
  const reached = new Map([...next.keys()].map((from) => [from, reach(from, next)]));
  return once.filter(({ from, to }) => {
    if (reached.get(to)?.has(from)) return true;
    for (const over of next.get(from) ?? []) {
      // A way through a thing that leads back is a circle, not a way around.
      if (over !== to && reached.get(over)?.has(to) && !reached.get(over)?.has(from)) return false;
    }
    return true;
  });
}

/** Everything that arrows lead to from `start`, however far; itself only where they lead back. */
function reach(start: number, next: ReadonlyMap<number, ReadonlySet<number>>): ReadonlySet<number> {
  const seen = new Set<number>();
  const left = [...(next.get(start) ?? [])];
  for (let at = left.pop(); at !== undefined; at = left.pop()) {
    if (seen.has(at)) continue;
    seen.add(at);
    left.push(...(next.get(at) ?? []));
  }
  return seen;
}
