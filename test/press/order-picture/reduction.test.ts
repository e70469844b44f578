import { graphlib } from '@dagrejs/dagre';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Pair, transitiveReduction } from '../../../src/press/order-picture/reduction.ts';
import { runs } from '../../suite/part.ts';

const SIZE = 9;

/** What leads where, by a general-purpose graph library: `from>to` for every pair joined by a way. */
function reachable(pairs: readonly Pair[]): ReadonlySet<string> {
  const graph = new graphlib.Graph();
  for (let node = 0; node < SIZE; node++) graph.setNode(String(node));
  for (const { from, to } of pairs) graph.setEdge(String(from), String(to));
  const found = new Set<string>();
  const all: Record<string, Record<string, { distance: number }>> = graphlib.alg.dijkstraAll(graph);
  for (const [from, ways] of Object.entries(all)) {
    for (const [to, { distance }] of Object.entries(ways)) {
      if (from !== to && Number.isFinite(distance)) found.add(`${from}>${to}`);
    }
  }
  return found;
}

/** Arrows from a lower to a higher number: no circle can come of them. */
const withoutCircles = fc.uniqueArray(
  fc
    .tuple(fc.nat(SIZE - 1), fc.nat(SIZE - 1))
    .filter(([one, two]) => one !== two)
    .map(([one, two]): Pair => ({ from: Math.min(one, two), to: Math.max(one, two) })),
  { selector: ({ from, to }) => `${from}>${to}`, maxLength: 30 },
);

describe('the reduction of arrows', () => {
  test('says the same as before with no arrow to spare, on any graph without circles', () => {
    fc.assert(
      fc.property(withoutCircles, (pairs) => {
        const reduced = transitiveReduction(pairs);
        const all = reachable(pairs);
        expect(reachable(reduced)).toEqual(all);
        for (const pair of reduced) {
          expect(pairs).toContain(pair);
          expect(reachable(reduced.filter((each) => each !== pair)).size).toBeLessThan(all.size);
        }
      }),
      { numRuns: runs(300) },
    );
  });

  test('keeps the order of the arrows and each once', () => {
    const pairs = [
      { from: 2, to: 3 },
      { from: 1, to: 3 },
      { from: 1, to: 2 },
      { from: 2, to: 3 },
    ];
    expect(transitiveReduction(pairs)).toEqual([
      { from: 2, to: 3 },
      { from: 1, to: 2 },
    ]);
  });

  test('keeps all of a circle, and ends', () => {
    const circle = [
      { from: 1, to: 2 },
      { from: 2, to: 3 },
      { from: 3, to: 1 },
    ];
    expect(transitiveReduction(circle)).toEqual(circle);
  });
});
