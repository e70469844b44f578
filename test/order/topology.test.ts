import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { alg, Graph } from '@dagrejs/graphlib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { buildKind } from '../../src/kinds/build.ts';
import { builtOn } from '../../src/kinds/builds-on.ts';
import type { KindData } from '../../src/kinds/data.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { freePairs, orderedOperations, ownRules, stageRank } from '../../src/order/index.ts';
import type { Sheet } from '../../src/sheet/model.ts';
import type { Placed } from '../../src/text/span.ts';
import { runs } from '../suite/part.ts';

/*
 * Facts of the order that are facts of graphs, held against @dagrejs/graphlib, which knows nothing
 * of carburetors.
 */

function rawKind(name: string): KindData {
  const path = join(import.meta.dirname, '..', '..', 'src', 'kinds', `${name}.yaml`);
  return builtOn(parse(readFileSync(path, 'utf8'))) as KindData;
}

/** An edge from each operation to each that has to come before it, as the data writes them. */
function graphOf(data: KindData): Graph {
  const graph = new Graph();
  for (const [name, { after = {}, usual = {} }] of Object.entries(data.operations)) {
    graph.setNode(name);
    for (const earlier of Object.keys({ ...after, ...usual.after })) graph.setEdge(name, earlier);
  }
  return graph;
}

function reachable(graph: Graph, from: string): readonly string[] {
  return alg.preorder(graph, [from]).filter((name) => name !== from);
}

/** Kinds of up to nine operations whose rules lead from later ones to earlier ones. */
const someData: fc.Arbitrary<KindData> = fc
  .integer({ min: 1, max: 9 })
  .chain((count) =>
    fc.tuple(
      ...Array.from({ length: count }, (_, i) =>
        fc.tuple(
          fc.subarray(Array.from({ length: i }, (__, other) => `o${other}`)),
          fc.constantFrom('strip', 'bench', 'running'),
        ),
      ),
    ),
  )
  .chain((rules) =>
    fc
      .shuffledSubarray(
        rules.map((_, i) => i),
        { minLength: rules.length },
      )
      .map((order) => ({ rules, order })),
  )
  .map(({ rules, order }) => ({
    'gaugeleaf-kind': 1,
    kind: 'small',
    title: 'Small',
    settings: {},
    // Listed in any order: the data need not be in working order.
    operations: Object.fromEntries(
      order.map((i) => [
        `o${i}`,
        {
          label: `o${i}`,
          explain: '',
          stage: rules[i]?.[1] ?? 'bench',
          after: Object.fromEntries((rules[i]?.[0] ?? []).map((each) => [each, 'so it is'])),
        },
      ]),
    ),
  }));

test.each([...builtInKinds().keys()])(
  'the rules of %s have no circle, and reach as far as they say',
  (name) => {
    const graph = graphOf(rawKind(name));
    expect(alg.isAcyclic(graph)).toBe(true);
    for (const { name: operation, before } of builtInKinds().get(name)?.operations.values() ?? []) {
      expect([operation, [...before.keys()].sort()]).toEqual([
        operation,
        [...reachable(graph, operation)].sort(),
      ]);
    }
  },
);

test('an order of operations is a topological order, by stages where the rules let it', () => {
  fc.assert(
    fc.property(someData, (data) => {
      const kind = buildKind(data);
      const graph = graphOf(data);
      const ordered = orderedOperations([...kind.operations.values()]).map(({ name }) => name);
      expect([...ordered].sort()).toEqual([...graph.nodes()].sort());
      for (const { v, w } of graph.edges()) {
        expect(ordered.indexOf(w)).toBeLessThan(ordered.indexOf(v));
      }
      const rank = (name: string): number => stageRank(kind.operations.get(name)?.stage ?? 'any');
      for (const [i, name] of ordered.entries()) {
        const next = ordered[i + 1];
        if (next === undefined || rank(name) <= rank(next)) continue;
        // A later stage goes first only where something of the earlier one waits for it.
        expect(ordered.slice(i + 1).some((late) => reachable(graph, late).includes(name))).toBe(
          true,
        );
      }
    }),
    { numRuns: runs(300), seed: 21 },
  );
});

test('free pairs are those of a stage of which neither reaches the other', () => {
  fc.assert(
    fc.property(someData, (data) => {
      const kind = buildKind(data);
      const graph = graphOf(data);
      const all = [...kind.operations.values()];
      const free = freePairs(all).map((pair) => [...pair].sort().join(' '));
      const expected = all.flatMap((one, i) =>
        all
          .slice(i + 1)
          .filter(
            (two) =>
              one.stage === two.stage &&
              !reachable(graph, one.name).includes(two.name) &&
              !reachable(graph, two.name).includes(one.name),
          )
          .map((two) => [one.name, two.name].sort().join(' ')),
      );
      expect([...free].sort()).toEqual([...expected].sort());
    }),
    { numRuns: runs(300), seed: 22 },
  );
});

test('rules that a sheet adds reach as far as the graph does, and a circle is one of the graph', () => {
  const placed = (value: string): Placed<string> => ({
    value,
    span: { start: 0, end: 0 },
    source: value,
  });
  fc.assert(
    fc.property(
      someData,
      fc.array(fc.tuple(fc.nat(8), fc.nat(8)), { minLength: 1, maxLength: 4 }),
      (data, pairs) => {
        const kind = buildKind(data);
        const names = [...kind.operations.keys()];
        const graph = graphOf(data);
        const named = pairs.map(
          ([late, early]) =>
            [names[late % names.length] ?? '', names[early % names.length] ?? ''] as const,
        );
        const work = named.map(([late, early]) => ({
          operation: placed(late),
          label: null,
          aliases: [],
          stage: null,
          hazards: null,
          settings: [],
          conditions: [],
          starts: null,
          home: [],
          after: [placed(early)],
          needs: [],
          leaves: [],
          disturbs: [],
          without: { after: [], needs: [], disturbs: [] },
          because: null,
          span: { start: 0, end: 0 },
        }));
        const { kind: own, faults } = ownRules({ work } as unknown as Sheet, kind);
        let circles = 0;
        for (const [late, early] of named) {
          graph.setEdge(late, early);
          if (alg.isAcyclic(graph)) continue;
          graph.removeEdge(late, early);
          circles++;
        }
        expect(faults.map((fault) => fault.kind)).toEqual(
          Array.from({ length: circles }, () => 'circle'),
        );
        for (const { name, before } of own.operations.values()) {
          expect([name, [...before.keys()].sort()]).toEqual([
            name,
            [...reachable(graph, name)].sort(),
          ]);
        }
      },
    ),
    { numRuns: runs(300), seed: 23 },
  );
});
