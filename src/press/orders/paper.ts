import type { Paper } from './model.ts';

/** A paper size, upright, with the margins that each kind of print keeps; all in millimeters. */
export interface PaperSize {
  readonly name: Paper;
  readonly label: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** What CSS calls it: width and height with exact units. */
  readonly css: string;
  /** Whether it is of the small pair: type and margins follow. */
  readonly small: boolean;
}

/** ISO 216 for A4 and A5; ANSI/ASME Y14.1 A-size for letter; half letter is its half. */
export const papers: Readonly<Record<Paper, PaperSize>> = {
  letter: {
    name: 'letter',
    label: 'Letter',
    widthMm: 215.9,
    heightMm: 279.4,
    css: '8.5in 11in',
    small: false,
  },
  a4: { name: 'a4', label: 'A4', widthMm: 210, heightMm: 297, css: '210mm 297mm', small: false },
  'half-letter': {
    name: 'half-letter',
    label: 'half letter',
    widthMm: 139.7,
    heightMm: 215.9,
    css: '5.5in 8.5in',
    small: true,
  },
  a5: { name: 'a5', label: 'A5', widthMm: 148, heightMm: 210, css: '148mm 210mm', small: true },
};

/** Margins of a print, in millimeters; on the back of a leaf inner and outer change places. */
export interface Margins {
  readonly topMm: number;
  readonly bottomMm: number;
  /** Toward the fold. */
  readonly innerMm: number;
  readonly outerMm: number;
}

/**
 * The card's margins: inside, room for a binder's holes, whose edges lie 15 to 16.3 mm in; elsewhere as
 * narrow as desk printers reach, and wide enough to be trimmed for a laminating pouch. The foot is 12 mm
 * high, for a thumb or a clip, with a line of the issue in it.
 */
export function cardMargins(paper: PaperSize): Margins {
  return paper.small
    ? { topMm: 7, bottomMm: 12, innerMm: 17, outerMm: 7 }
    : { topMm: 8, bottomMm: 12, innerMm: 18, outerMm: 8 };
}

/** The booklet's margins: room for the fold inside, for running heads above, numbers below. */
export function bookletMargins(paper: PaperSize): Margins {
  return paper.small
    ? { topMm: 11, bottomMm: 9.5, innerMm: 14, outerMm: 9 }
    : { topMm: 20, bottomMm: 17, innerMm: 22, outerMm: 16 };
}

/**
 * How far the bars of what changed may reach into the margins, in millimeters: pages are printed with
 * both bars, and the one at the fold is cut away when the page has its place.
 */
export const barsMm = 5;

/** The width between the margins. */
export function contentWidthMm(paper: PaperSize, margins: Margins): number {
  return paper.widthMm - margins.innerMm - margins.outerMm;
}
