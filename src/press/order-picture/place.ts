import type { LayoutOptions, NodeLabel, RankerFunction } from '@dagrejs/dagre';
import { type Layers, layersOf } from './layers.ts';
import {
  arrowsOf,
  breadth,
  type GraphArrow,
  labelBreadth,
  measures,
  type SizedBox,
  sized,
} from './measures.ts';
import type { OrderGraph } from './model.ts';
import { leastBreadth, type RowItem, squeezed } from './squeeze.ts';

/** What dagre gives back, made plain. */
export interface Places {
  readonly width: number;
  /** The middle of each box, by its number. */
  readonly xOf: Map<number, number>;
  /** Of each arrow its x at every rank that it passes, and at its label if it has one. */
  readonly passes: readonly { readonly at: Map<number, number>; label: number | null }[];
}

/** A graph's boxes and arrows with their layers and places across the picture. */
export interface PlacedGraph {
  readonly boxes: readonly SizedBox[];
  readonly arrows: readonly GraphArrow[];
  readonly layers: Layers;
  readonly places: Places;
}

/**
 * Places a graph by dagre, no broader than the booklet's text: in as few layers as give every row
 * the room for its boxes and arrows, and without the words at arrows where there is no room for
 * them. What dagre spreads further than that is drawn together. The same graph gives the same places.
 */
export async function placeGraph(graph: OrderGraph): Promise<PlacedGraph> {
  const boxes = graph.boxes.map(sized);
  for (const labelled of [true, false]) {
    const arrows = arrowsOf(graph, labelled);
    let best: PlacedGraph | null = null;
    let before = '';
    for (let capacity = 6; capacity > 0; capacity--) {
      const layers = layersOf(graph, capacity);
      if (best && count(layers) > count(best.layers)) break;
      const shares = [...layers.layerOf].join(' ');
      if (shares === before) continue;
      before = shares;
      const placed = { boxes, arrows, layers, places: await place(boxes, arrows, layers) };
      const fits = ranksOf(placed).every((row) => leastBreadth(row) <= breadth);
      if (fits && (!best || placed.places.width < best.places.width)) best = placed;
    }
    if (best) return drawnTogether(readingWay(best));
  }
  const arrows = arrowsOf(graph, false);
  const layers = layersOf(graph, 1);
  const places = await place(boxes, arrows, layers);
  return drawnTogether(readingWay({ boxes, arrows, layers, places }));
}

function count({ bands }: Layers): number {
  return (bands.at(-1)?.last ?? -1) + 1;
}

/** A box, or an arrow where it passes a rank, with the place in `Places` that is its own. */
interface Item extends RowItem {
  /** Index of the arrow; null for a box. */
  readonly arrow: number | null;
  readonly put: (x: number) => void;
}

/** Everything that lies in each rank, from left to right. Layer n is rank 2n; labels lie between. */
function ranksOf({ boxes, arrows, layers, places }: PlacedGraph): readonly (readonly Item[])[] {
  const { boxGap, arrowGap } = measures;
  const ranks: Item[][] = Array.from({ length: 2 * count(layers) }, () => []);
  const layer = (number: number): number => layers.layerOf.get(number) ?? 0;
  for (const { box, width } of boxes) {
    const put = (x: number): void => {
      places.xOf.set(box.number, x);
    };
    const x = places.xOf.get(box.number) ?? 0;
    ranks[2 * layer(box.number)]?.push({ x, width, gap: boxGap, arrow: null, put });
  }
  arrows.forEach(({ from, to, label: text }, arrow) => {
    const pass = places.passes[arrow];
    for (const [rank, x] of pass?.at ?? []) {
      const isLabel = text !== null && rank === layer(from) + layer(to);
      const put = (moved: number): void => {
        pass?.at.set(rank, moved);
        if (isLabel && pass) pass.label = moved;
      };
      const width = isLabel ? labelBreadth(text) : 0;
      ranks[rank]?.push({ x, width, gap: arrowGap, arrow, put });
    }
  });
  for (const row of ranks) row.sort((one, two) => one.x - two.x || order(one) - order(two));
  return ranks;
}

function order({ arrow }: Item): number {
  return arrow ?? -1;
}

/** The picture turned left for right where more of it would then run with the numbers, as one reads. */
function readingWay(placed: PlacedGraph): PlacedGraph {
  const { boxes, layers, places } = placed;
  let against = 0;
  for (const { box: one } of boxes) {
    for (const { box: two } of boxes) {
      if (one.number >= two.number) continue;
      if (layers.layerOf.get(one.number) !== layers.layerOf.get(two.number)) continue;
      const [left = 0, right = 0] = [places.xOf.get(one.number), places.xOf.get(two.number)];
      against += left > right ? 1 : -1;
    }
  }
  if (against <= 0) return placed;
  const turn = (x: number): number => places.width - x;
  return {
    ...placed,
    places: {
      width: places.width,
      xOf: new Map([...places.xOf].map(([number, x]) => [number, turn(x)])),
      passes: places.passes.map(({ at, label }) => ({
        at: new Map([...at].map(([rank, x]) => [rank, turn(x)])),
        label: label === null ? null : turn(label),
      })),
    },
  };
}

/** How often arrows are straightened: after so many, a further one moves nothing that is seen. */
const SWEEPS = 12;

/** The places as they are if they fit; else scaled, every row put right, and long arrows straightened. */
function drawnTogether(placed: PlacedGraph): PlacedGraph {
  const { places } = placed;
  if (places.width <= breadth) return placed;
  const scale = breadth / places.width;
  const ranks = ranksOf(placed);
  const put = (row: readonly Item[], wanted: (item: Item) => number): void => {
    const items = row.map((item) => ({ ...item, x: wanted(item) }));
    squeezed(items, breadth).forEach((x, index) => {
      row[index]?.put(x);
    });
  };
  for (const row of ranks) put(row, ({ x }) => x * scale);
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    const turn = sweep % 2 === 0 ? [...ranks.keys()] : [...ranks.keys()].reverse();
    for (const rank of turn) {
      put(ranks[rank] ?? [], ({ x, arrow }) => {
        const at = arrow === null ? null : places.passes[arrow]?.at;
        if (!at) return x * scale;
        const near = [at.get(rank - 1), at.get(rank + 1)].filter((each) => each !== undefined);
        const own = at.get(rank) ?? x * scale;
        return near.length === 0 ? own : near.reduce((sum, each) => sum + each, 0) / near.length;
      });
    }
  }
  return { ...placed, places: { ...places, width: breadth } };
}

/** What a ranker of dagre's is given. */
interface RankedGraph {
  nodes(): string[];
  node(name: string): NodeLabel;
}

async function place(
  boxes: readonly SizedBox[],
  arrows: readonly GraphArrow[],
  layers: Layers,
): Promise<Places> {
  const { Graph, layout } = await import('@dagrejs/dagre');
  const layer = (number: number): number => layers.layerOf.get(number) ?? 0;
  // dagre ranks boxes by its own measure and knows no bands: the layers are given in its place. It
  // keeps a rank between each two layers for labels.
  const ranker: RankerFunction = (ranked: RankedGraph) => {
    for (const name of ranked.nodes()) {
      const node = ranked.node(name);
      node.rank = /^\d+$/.test(name) ? 2 * layer(Number(name)) : -1;
    }
  };
  const { arrowGap, boxGap, layerGap, smallSize } = measures;
  const graph = new Graph({ multigraph: true, compound: false });
  graph.setGraph({
    rankdir: 'TB',
    nodesep: boxGap,
    edgesep: arrowGap,
    ranksep: layerGap,
    ranker,
  } as unknown as LayoutOptions);
  for (const { box, width, height } of boxes) graph.setNode(String(box.number), { width, height });
  arrows.forEach(({ from, to, kind, label }, index) => {
    // All lead down: which end has the head is a matter of drawing.
    const [top, bottom] = layer(from) < layer(to) ? [from, to] : [to, from];
    const size =
      label === null
        ? { width: 0, height: 0 }
        : { width: labelBreadth(label), height: smallSize, labelpos: 'c' };
    graph.setEdge(
      String(top),
      String(bottom),
      { ...size, weight: kind === 'before' ? 2 : 1 },
      `${index}`,
    );
  });
  layout(graph, {});
  const xOf = new Map(boxes.map(({ box }) => [box.number, graph.node(String(box.number)).x ?? 0]));
  const passes: { at: Map<number, number>; label: number | null }[] = arrows.map(() => ({
    at: new Map(),
    label: null,
  }));
  for (const edge of graph.edges()) {
    const pass = passes[Number(edge.name)];
    const found = graph.edge(edge);
    if (!pass) continue;
    // Between the ends on the boxes there is one point to a rank.
    const points = (found.points ?? []).slice(1, -1);
    const rank = 2 * layer(Number(edge.v));
    points.forEach((point: { x: number }, index: number) => {
      pass.at.set(rank + index + 1, point.x);
    });
    if (found.x !== undefined) pass.label = found.x;
  }
  return { width: graph.graph().width ?? 0, xOf, passes };
}
