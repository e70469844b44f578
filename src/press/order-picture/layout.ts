import type { Layers } from './layers.ts';
import { type GraphArrow, measures, type SizedBox, stageNames } from './measures.ts';
import type { OrderBox, OrderGraph } from './model.ts';
import { type Places, placeGraph } from './place.ts';

/** A box in its place; x and y are its middle. */
export interface PlacedBox extends SizedBox {
  readonly x: number;
  readonly y: number;
}

/** An arrow with the places it passes, from its tail to its head. */
export interface PlacedArrow {
  readonly from: number;
  readonly to: number;
  readonly kind: 'before' | 'disturbs';
  /** Upright stretches between which the arrow bends: x, and y where it begins and ends. */
  readonly runs: readonly { readonly x: number; readonly top: number; readonly bottom: number }[];
  /** Whether it points up, against the work. */
  readonly up: boolean;
  readonly label: { readonly text: string; readonly x: number; readonly y: number } | null;
}

/** A stage's stretch of the picture, from rule to rule. */
export interface PlacedBand {
  readonly stage: OrderBox['stage'];
  readonly top: number;
  readonly bottom: number;
}

export interface OrderLayout {
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly PlacedBox[];
  readonly arrows: readonly PlacedArrow[];
  readonly bands: readonly PlacedBand[];
}

/** The picture of a graph as places, in points: no broader than `measures` allows. */
export async function layOut(graph: OrderGraph): Promise<OrderLayout> {
  const { boxes: sizes, arrows, layers, places } = await placeGraph(graph);
  const loose = rowsOf(sizes, arrows, layers, measures.layerGap);
  const over = (loose.height - measures.height) / Math.max(1, loose.layers.length);
  const rows =
    over <= 0
      ? loose
      : rowsOf(sizes, arrows, layers, Math.max(measures.leastGap, measures.layerGap - over));
  const boxes = sizes.map((one): PlacedBox => {
    const row = rows.layers[layers.layerOf.get(one.box.number) ?? 0];
    return {
      ...one,
      x: places.xOf.get(one.box.number) ?? 0,
      y: row ? (row.top + row.bottom) / 2 : 0,
    };
  });
  return {
    width: places.width,
    height: rows.height,
    boxes,
    arrows: runsOf(boxes, arrows, layers, places, rows.layers),
    bands: rows.bands,
  };
}

interface Rows {
  readonly layers: readonly { readonly top: number; readonly bottom: number }[];
  readonly bands: readonly PlacedBand[];
  readonly height: number;
}

/** How high each layer lies: its boxes' height, a gap, and more where labels or a stage's name come in. */
function rowsOf(
  sizes: readonly SizedBox[],
  arrows: readonly GraphArrow[],
  layers: Layers,
  layerGap: number,
): Rows {
  const { smallSize } = measures;
  const layer = (number: number): number => layers.layerOf.get(number) ?? 0;
  const labelled = labelledGaps(arrows, layers);
  const rows: { top: number; bottom: number }[] = [];
  const bands: PlacedBand[] = [];
  let y = 0;
  for (const band of layers.bands) {
    const top = y;
    y += layerGap * 0.6;
    for (let index = band.first; index <= band.last; index++) {
      const heights = sizes
        .filter(({ box }) => layer(box.number) === index)
        .map((one) => one.height);
      const height = Math.max(...heights, 0);
      rows[index] = { top: y, bottom: y + height };
      y += height + (labelled.has(index) ? smallSize + 6 : 0);
      y += index < band.last ? layerGap : layerGap * 0.6;
    }
    y = Math.max(y, top + stageNames[band.stage].length * measures.nameHeight + 5);
    bands.push({ stage: band.stage, top, bottom: y });
  }
  return { layers: rows, bands, height: y };
}

/** The layers below which words stand in the gap to the next; in others words stand among the boxes. */
function labelledGaps(arrows: readonly GraphArrow[], layers: Layers): ReadonlySet<number> {
  const layer = (number: number): number => layers.layerOf.get(number) ?? 0;
  const ranks = arrows.flatMap(({ from, to, label }) =>
    label === null ? [] : [layer(from) + layer(to)],
  );
  return new Set(ranks.filter((rank) => rank % 2 === 1).map((rank) => (rank - 1) / 2));
}

/** Each arrow as upright stretches: at its boxes' edges, and wherever it passes between other boxes. */
function runsOf(
  boxes: readonly PlacedBox[],
  arrows: readonly GraphArrow[],
  layers: Layers,
  places: Places,
  rows: Rows['layers'],
): readonly PlacedArrow[] {
  const byNumber = new Map(boxes.map((one) => [one.box.number, one]));
  const layer = (number: number): number => layers.layerOf.get(number) ?? 0;
  const ends = portsOf(boxes, arrows, layers, places);
  const labelled = labelledGaps(arrows, layers);
  return arrows.map((arrow, index): PlacedArrow => {
    const { from, to, kind } = arrow;
    const up = layer(from) > layer(to);
    const [upper, lower] = up ? [to, from] : [from, to];
    const top = byNumber.get(upper);
    const bottom = byNumber.get(lower);
    const pass = places.passes[index];
    const runs: { x: number; top: number; bottom: number }[] = [];
    if (top) {
      const edge = top.y + top.height / 2;
      runs.push({ x: ends.get(`${index} ${upper}`) ?? top.x, top: edge, bottom: edge });
    }
    const label = labelPlace(arrow, pass?.label ?? null, layer(upper), layer(lower), rows);
    for (let at = layer(upper); at < layer(lower); at++) {
      const row = rows[at];
      const x = pass?.at.get(2 * at);
      if (at > layer(upper) && row && x !== undefined)
        runs.push({ x, top: row.top - 2, bottom: row.bottom + 2 });
      const next = rows[at + 1];
      const beside = labelled.has(at) ? pass?.at.get(2 * at + 1) : undefined;
      // Past the words in a gap, its own or others', every arrow goes where it was given room.
      if (row && next && beside !== undefined) {
        const y = (row.bottom + next.top) / 2;
        runs.push({ x: beside, top: y - 4, bottom: y + 4 });
      }
    }
    if (bottom) {
      const edge = bottom.y - bottom.height / 2;
      runs.push({ x: ends.get(`${index} ${lower}`) ?? bottom.x, top: edge, bottom: edge });
    }
    const text = arrow.label;
    return {
      from,
      to,
      kind,
      runs,
      up,
      label: label && text !== null ? { text, x: label.x, y: label.y } : null,
    };
  });
}

function labelPlace(
  arrow: GraphArrow,
  x: number | null,
  upper: number,
  lower: number,
  rows: Rows['layers'],
): { readonly x: number; readonly y: number } | null {
  if (arrow.label === null || x === null) return null;
  const rank = upper + lower;
  const here = rows[Math.floor(rank / 2)];
  const next = rows[Math.floor(rank / 2) + 1];
  if (!here) return null;
  const y = rank % 2 === 0 || !next ? (here.top + here.bottom) / 2 : (here.bottom + next.top) / 2;
  return { x, y };
}

/** Where arrows meet the edge of a box: side by side around its middle, in the order they come from. */
function portsOf(
  boxes: readonly PlacedBox[],
  arrows: readonly GraphArrow[],
  layers: Layers,
  places: Places,
): ReadonlyMap<string, number> {
  const layer = (number: number): number => layers.layerOf.get(number) ?? 0;
  const labelled = labelledGaps(arrows, layers);
  const ports = new Map<string, number>();
  for (const one of boxes) {
    const { number } = one.box;
    for (const side of ['top', 'bottom'] as const) {
      const meeting = arrows.flatMap(({ from, to }, index) => {
        if (from !== number && to !== number) return [];
        const other = from === number ? to : from;
        const below = layer(other) > layer(number);
        if (below !== (side === 'bottom')) return [];
        const step = labelled.has(layer(number) - (below ? 0 : 1)) ? 1 : 2;
        const passing = places.passes[index]?.at.get(2 * layer(number) + (below ? step : -step));
        return [{ index, x: passing ?? places.xOf.get(other) ?? one.x }];
      });
      meeting.sort((a, b) => a.x - b.x || a.index - b.index);
      const step = Math.min(11, (one.width - 10) / Math.max(1, meeting.length - 1));
      meeting.forEach(({ index }, place) => {
        ports.set(`${index} ${number}`, one.x + (place - (meeting.length - 1) / 2) * step);
      });
    }
  }
  return ports;
}
