import { cardMargins, type PaperSize } from '../orders/index.ts';

/**
 * The hole that a card hangs by, at the top in the middle. ISO 838: 6 mm across, its middle 12 mm from the
 * edge, from memory; that a card hangs by one hole is no matter of that standard.
 */
export const hangingHole = { diameterMm: 6, edgeMm: 12 };

/** What is left free on either side of the middle, and below the hole, in millimeters. */
const freeMm = 8;
const belowMm = 2.5;

/** Widths and heights that what stands beside the hole keeps to, in millimeters. */
export interface CardHanging {
  /** From the text's left edge to the room of the hole, on fronts and on backs. */
  readonly frontMm: number;
  readonly backMm: number;
  /** The breadth of that room. */
  readonly gapMm: number;
  /** From the text's upper edge to below the hole. */
  readonly depthMm: number;
}

/** What the hole leaves of a card's width. */
export function hanging(paper: PaperSize): CardHanging {
  const { topMm, innerMm, outerMm } = cardMargins(paper);
  const { diameterMm, edgeMm } = hangingHole;
  return {
    frontMm: rounded(paper.widthMm / 2 - freeMm - innerMm),
    backMm: rounded(paper.widthMm / 2 - freeMm - outerMm),
    gapMm: 2 * freeMm,
    depthMm: rounded(edgeMm + diameterMm / 2 + belowMm - topMm),
  };
}

function rounded(mm: number): number {
  return Math.round(mm * 100) / 100;
}
