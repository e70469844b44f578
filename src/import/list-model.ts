/** What a cell of a list holds. `unworked` is a formula whose result the file does not carry. */
export type CellType = 'text' | 'number' | 'date' | 'boolean' | 'error' | 'unworked';

/** One filled cell of a list, as it shows itself and as it is stored. */
export interface Cell {
  /** 1-based, as the spreadsheet counts. */
  readonly row: number;
  /** 1-based: 1 is column A. */
  readonly column: number;
  /** As the spreadsheet shows it, white space at the ends taken off; a date as YYYY-MM-DD. */
  readonly text: string;
  /** As stored: the number behind a shown fraction, the day behind a shown month. */
  readonly raw: string;
  readonly type: CellType;
  /** Whether a formula made it. */
  readonly formula: boolean;
}

/** A block of merged cells; all four ends inclusive and 1-based. Only its first cell holds anything. */
export interface MergedArea {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** A row that holds something. */
export interface TableRow {
  readonly row: number;
  /** Hidden by hand or by a filter. */
  readonly hidden: boolean;
  readonly cells: ReadonlyMap<number, Cell>;
}

/** One sheet of a list. */
export interface Table {
  /** The tab's name; empty for a CSV file. */
  readonly name: string;
  /** Whether the tab itself is hidden. */
  readonly hidden: boolean;
  /** Rows that hold something, from the top. */
  readonly rows: readonly TableRow[];
  readonly merged: readonly MergedArea[];
  readonly hiddenColumns: ReadonlySet<number>;
}

/** A list as it was read. */
export interface List {
  readonly format: 'csv' | 'xlsx' | 'ods';
  readonly tables: readonly Table[];
  /** What the reader of the list had to settle: an encoding, a delimiter. One sentence each. */
  readonly settled: readonly string[];
}

/** A list, or why there is none to be had, in plain words. */
export type ListRead =
  | { readonly ok: true; readonly list: List }
  | { readonly ok: false; readonly message: string; readonly fix: string | null };

/** Thrown inside the readers of lists, and caught by `readList`: it never leaves the room. */
export class ListFault extends Error {
  readonly fix: string | null;

  constructor(message: string, fix: string | null = null) {
    super(message);
    this.fix = fix;
  }
}

/** Bounds on what is taken from a list; a club's longest has a hundredth of them. */
export const listBounds = {
  /** Bytes of the file. */
  file: 16 * 1024 * 1024,
  /** Bytes of one part of a spreadsheet, unpacked, and of all that are unpacked. */
  part: 48 * 1024 * 1024,
  parts: 96 * 1024 * 1024,
  /** Parts that a spreadsheet's file may name. */
  entries: 4000,
  /** Elements of XML within one another. */
  depth: 64,
  /** Last row and column that are read. */
  row: 50_000,
  column: 512,
  /** Filled cells of all tables. */
  cells: 100_000,
  /** Signs `<` in all parts that are read: each is some microseconds of a parser of XML, whatever it begins. */
  tags: 600_000,
  tables: 64,
  merged: 5000,
  /** UTF-16 units of one cell. */
  cell: 32_767,
} as const;
