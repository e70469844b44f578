/** One side of a sheet: the pages that stand left and right of the fold, from 1; null for a blank. */
export type Side = readonly [left: number | null, right: number | null];

/** A sheet of paper with two pages to a side, folded once. */
export interface ImposedSheet {
  /** The signature that it belongs to, from 0. */
  readonly signature: number;
  /** How many sheets lie around it in its signature: 0 is the outermost. */
  readonly within: number;
  /** Toward the outside when folded. */
  readonly front: Side;
  /** What is printed behind the front when the sheet is turned over its short edge. */
  readonly back: Side;
}

/** How the pages of a booklet are laid on sheets. */
export interface ImpositionPlan {
  /** In the order that they are printed: signature by signature, the outermost sheet first. */
  readonly sheets: readonly ImposedSheet[];
  /** Sheets of each signature; one entry where the whole is folded at once. */
  readonly signatures: readonly number[];
  /** Blank pages, all at the end. */
  readonly blanks: number;
}

/** Sheets that a long-arm stapler takes and that still lie shut when folded; common practice, no source. */
export const mostSheetsInOneFold = 20;

/** Sheets of a signature where nobody said how many: 32 pages; common practice, no source. */
const usualSignature = 8;

/**
 * Lays pages on sheets for saddle stitch: of a fold of N pages, the sum of a side is N + 1. More
 * sheets than a stapler takes become signatures that are folded one by one and bound side by side;
 * `sheetsInSignature` says the most that one may have (null chooses). Signatures differ by one sheet at most,
 * so that none is too thin to sew. Blanks go behind the last page: what faces what while reading
 * never changes.
 */
export function planImposition(pages: number, sheetsInSignature: number | null): ImpositionPlan {
  const sheetCount = Math.max(1, Math.ceil(pages / 4));
  const all = sheetCount * 4;
  const most =
    sheetsInSignature ?? (sheetCount > mostSheetsInOneFold ? usualSignature : sheetCount);
  const signatures = evenly(sheetCount, Math.ceil(sheetCount / most));
  const sheets: ImposedSheet[] = [];
  let start = 0;
  for (const [signature, count] of signatures.entries()) {
    const end = start + count * 4 - 1;
    const page = (at: number) => (at < pages ? at + 1 : null);
    for (let within = 0; within < count; within++) {
      const first = start + within * 2;
      const last = end - within * 2;
      sheets.push({
        signature,
        within,
        front: [page(last), page(first)],
        back: [page(first + 1), page(last - 1)],
      });
    }
    start = end + 1;
  }
  return { sheets, signatures, blanks: all - pages };
}

/** Parts a number in whole parts that differ by one at most, the greater ones first. */
function evenly(whole: number, parts: number): number[] {
  const least = Math.floor(whole / parts);
  return Array.from({ length: parts }, (_, at) => least + (at < whole % parts ? 1 : 0));
}
