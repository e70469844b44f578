import type { ImposedSheet } from './order.ts';

/** Where the marks of one side go; lengths in millimeters, from the left and the bottom. */
export interface MarkedSide {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Width of a page; its outer edge lies so far from the fold before it is shifted. */
  readonly pageWidthMm: number;
  /** How far both pages were shifted toward the fold. */
  readonly shiftMm: number;
  readonly sheet: ImposedSheet;
  readonly signatures: number;
  readonly isFront: boolean;
}

/** What is trimmed off head, foot and fore edge of the folded booklet. */
const trimMm = 3;
/** Length of a mark; a desk printer reaches all but the outer 4 mm or so of it. */
const markMm = 9;
/** The bar on the back of a signature: its height, and half of its width. */
const barMm = { high: 8, half: 0.75 };

/**
 * Marks where to fold and where to trim, as PDF drawing operators. The marks for the trim lie on the
 * lines of the cut and move with the pages, so that those of all sheets lie over one another once folded.
 * Signatures get a bar on their back, each lower than the one before: gathered in order they make
 * a stair, and one that is missing or turned shows.
 */
export function foldAndTrimMarks(side: MarkedSide): string {
  const { widthMm, heightMm, pageWidthMm, shiftMm } = side;
  const fold = widthMm / 2;
  const strokes = [
    `[3 3] 0 d ${line(fold, heightMm, fold, heightMm - markMm)} ${line(fold, 0, fold, markMm)} [] 0 d`,
  ];
  const reach = pageWidthMm - shiftMm;
  for (const outward of [-1, 1]) {
    const cut = fold + outward * (reach - trimMm);
    const edge = outward < 0 ? 0 : widthMm;
    const inner = fold + outward * (reach - markMm);
    for (const [y, end, in_] of [
      [trimMm, 0, markMm],
      [heightMm - trimMm, heightMm, heightMm - markMm],
    ] as const) {
      strokes.push(line(edge, y, inner, y), line(cut, end, cut, in_));
    }
  }
  if (side.signatures > 1 && side.isFront && side.sheet.within === 0) {
    const room = heightMm - 2 * (markMm + 3) - barMm.high;
    const step = Math.min(barMm.high, room / Math.max(1, side.signatures - 1));
    const top = heightMm - markMm - 3 - side.sheet.signature * step;
    strokes.push(
      `${points(fold - barMm.half)} ${points(top - barMm.high)} ${points(2 * barMm.half)} ${points(barMm.high)} re f`,
    );
  }
  return `q 0 G 0 g ${points(0.1)} w\n${strokes.join('\n')}\nQ`;
}

function line(fromX: number, fromY: number, toX: number, toY: number): string {
  return `${points(fromX)} ${points(fromY)} m ${points(toX)} ${points(toY)} l S`;
}

function points(mm: number): string {
  return ((mm * 72) / 25.4).toFixed(4);
}
