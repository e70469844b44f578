import type { Stage } from '../../kinds/model.ts';
import { stageRank } from '../../order/index.ts';
import type { OrderGraph } from './model.ts';

/** A stage of the work as a stretch of layers, `first` to `last` inclusive, counted from 0. */
export interface Band {
  readonly stage: Stage;
  readonly first: number;
  readonly last: number;
}

/** The layer of every box, by its number, and the bands in working order. */
export interface Layers {
  readonly layerOf: ReadonlyMap<number, number>;
  readonly bands: readonly Band[];
}

/**
 * Shares the boxes out to layers, at most `capacity` to one. Boxes of an earlier stage lie above
 * those of a later one; within a stage a box lies below every box that an arrow joins it to and
 * that the sheet has earlier. So an arrow that points up tells of work out of order.
 */
export function layersOf(graph: OrderGraph, capacity: number): Layers {
  const above = new Map<number, number[]>();
  for (const { from, to } of [...graph.before, ...graph.disturbs]) {
    const [first, second] = from < to ? [from, to] : [to, from];
    above.set(second, [...(above.get(second) ?? []), first]);
  }
  const depth = depths(graph, above);
  const layerOf = new Map<number, number>();
  const bands: Band[] = [];
  const stages = [...new Set(graph.boxes.map(({ stage }) => stage))].sort(
    (one, two) => stageRank(one) - stageRank(two),
  );
  let layer = 0;
  for (const stage of stages) {
    const first = layer;
    let left = graph.boxes.filter((box) => box.stage === stage).map(({ number }) => number);
    while (left.length > 0) {
      const here = new Set(left);
      const ready = left.filter((each) => !(above.get(each) ?? []).some((one) => here.has(one)));
      // What most of the work still waits for goes first, so that the picture is no taller than it must.
      const taken = new Set(
        ready
          .sort((one, two) => (depth.get(two) ?? 0) - (depth.get(one) ?? 0) || one - two)
          .slice(0, Math.max(1, capacity)),
      );
      for (const each of taken) layerOf.set(each, layer);
      left = left.filter((each) => !taken.has(each));
      layer++;
    }
    bands.push({ stage, first, last: layer - 1 });
  }
  return { layerOf, bands };
}

/** How many boxes lie below each on the longest way down within its stage. */
function depths(
  graph: OrderGraph,
  above: ReadonlyMap<number, readonly number[]>,
): ReadonlyMap<number, number> {
  const stage = new Map(graph.boxes.map((box) => [box.number, box.stage]));
  const depth = new Map<number, number>();
  // From the last box to the first: arrows to look at run from an earlier box to a later one.
  for (const { number } of [...graph.boxes].sort((one, two) => two.number - one.number)) {
    const own = depth.get(number) ?? 0;
    for (const one of above.get(number) ?? []) {
      if (stage.get(one) === stage.get(number))
        depth.set(one, Math.max(depth.get(one) ?? 0, own + 1));
    }
  }
  return depth;
}
