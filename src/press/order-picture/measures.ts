import type { Stage } from '../../kinds/model.ts';
import { textWidth, wrapText } from '../lettering/index.ts';
import type { OrderBox, OrderGraph } from './model.ts';

/** Measures of a picture, in points. */
export const measures = {
  /** The text width of the half-letter booklet, 114.7 mm, less a margin of a point on either side. */
  width: 323,
  labelSize: 7,
  /** Labels of arrows, names of stages and the legend. */
  smallSize: 6.5,
  lineHeight: 8.4,
  /** Between a box's number and its label. */
  numberGap: 3,
  paddingX: 4,
  paddingY: 3.2,
  /** The widest line of a label; a broader one only where two lines would cut the label off. */
  labelWidths: [58, 74, 92],
  /** The widest name of a setting at an arrow. */
  arrowLabel: 90,
  boxGap: 9,
  arrowGap: 5,
  layerGap: 17,
  /** The least gap, for a picture that would be higher than `height` otherwise. */
  leastGap: 9,
  /** What the half-letter page has room for under a heading, the legend and the caption left off. */
  height: 450,
  /** The column on the left that has the stages' names. */
  names: 34,
  nameHeight: 7.6,
} as const;

/** What each stage is called in the picture, a line each. */
export const stageNames: Readonly<Record<Stage, readonly string[]>> = {
  strip: ['Strip'],
  bench: ['Bench'],
  'before-start': ['Before', 'first start'],
  running: ['Running,', 'hot'],
  road: ['Road'],
  any: [],
};

/** What boxes and arrows may take of the picture's width. */
export const breadth = measures.width - measures.names;

/** A box with its label in lines and its size, before it has a place. */
export interface SizedBox {
  readonly box: OrderBox;
  readonly lines: readonly string[];
  readonly width: number;
  readonly height: number;
}

/** An arrow with the words that stand at it, before it has a way. */
export interface GraphArrow {
  readonly from: number;
  readonly to: number;
  readonly kind: 'before' | 'disturbs';
  /** Null for none. */
  readonly label: string | null;
}

/** A box's size: its label in one line or two, cut off after that. */
export function sized(box: OrderBox): SizedBox {
  const { labelSize, labelWidths, lineHeight, paddingX, paddingY } = measures;
  const tries = labelWidths.map((width) => wrapText(box.label, labelSize, width, 2));
  const lines = tries.find((each) => !each.at(-1)?.endsWith('…')) ?? tries.at(-1) ?? [];
  const text = Math.max(...lines.map((line) => textWidth(line, labelSize)), 12);
  return {
    box,
    lines,
    width: Math.ceil(text + numberBreadth(box.number) + 2 * paddingX),
    height: Math.max(lines.length, 1) * lineHeight + 2 * paddingY,
  };
}

/** The room that a box's number takes, the gap after it included. */
export function numberBreadth(number: number): number {
  return textWidth(String(number), measures.labelSize) + measures.numberGap;
}

/** A setting's name stands at its arrow where the box that the arrow points to has another. */
export function arrowsOf(graph: OrderGraph, labelled: boolean): readonly GraphArrow[] {
  const labels = new Map(graph.boxes.map((box) => [box.number, box.operation.label]));
  return [
    ...graph.before.map((pair): GraphArrow => ({ ...pair, kind: 'before', label: null })),
    ...graph.disturbs.map(({ from, to, settings }): GraphArrow => {
      const names = settings.filter((name) => name !== labels.get(to));
      const [label = null] = wrapText(names.join(', '), measures.smallSize, measures.arrowLabel, 1);
      return { from, to, kind: 'disturbs', label: labelled ? label : null };
    }),
  ];
}

/** The room that words at an arrow take. */
export function labelBreadth(text: string): number {
  return textWidth(text, measures.smallSize) + 4;
}
