/** What kind of slip a cell of a list shows. */
export type SlipCode =
  | 'date'
  | 'no-unit'
  | 'unit-doubtful'
  | 'changed-places'
  | 'unusual'
  | 'dimension'
  | 'unreadable'
  | 'footnote-mark'
  | 'footnote'
  | 'cell-error'
  | 'shown-otherwise'
  | 'merged'
  | 'nameless'
  | 'duplicate'
  | 'differs'
  | 'feature'
  | 'setting-unknown';

/** One thing that could not be taken from a list as it stands. */
export interface Slip {
  readonly code: SlipCode;
  /** The cell or block of cells: `D17`, `A12:A14`. */
  readonly at: string;
  /** Of the first cell, 1-based: slips are told in the list's order. */
  readonly row: number;
  readonly column: number;
  /** As the cell shows it. */
  readonly shown: string;
  /** One sentence without a stop at its end. */
  readonly message: string;
  /** What it could have been, or what to do; in falling likelihood. */
  readonly could: readonly string[];
  /** What became of it: `left blank`, `row 63 is no sheet`. */
  readonly outcome: string;
}

/** Slips in the order of the list: by row, then by column. */
export function inListOrder(slips: readonly Slip[]): readonly Slip[] {
  return [...slips].sort((a, b) => a.row - b.row || a.column - b.column);
}
