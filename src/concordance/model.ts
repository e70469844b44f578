/** How a statement stands to the figure of the sheet. */
export type Standing = 'figure' | 'agrees' | 'differs' | 'unread';

/** What one source says of one setting. */
export interface Said {
  /** As the source wrote it; null where the sheet only says that the source gives the same figure. */
  readonly written: string | null;
  /** `p. 31`; null where none is named. */
  readonly page: string | null;
  readonly standing: Standing;
  /** `0.0075 in less`: against the figure of the sheet; null where it does not differ by an amount. */
  readonly difference: string | null;
  /** Why the sheet does not follow it; null where nobody says. */
  readonly ruling: string | null;
  readonly note: string | null;
}

/** A column of the table. */
export interface ConcordanceSource {
  /** The sheet's short name for it; null for what no source is named for. */
  readonly name: string | null;
  /** Null where the sheet does not say. */
  readonly title: string | null;
  /** `manual, 1948`, `measured, 3 units`; empty where the sheet says neither. */
  readonly facts: string;
}

/** A row of the table: one setting. */
export interface ConcordanceRow {
  /** The kind's name for it, or the sheet's where the kind knows none. */
  readonly setting: string;
  readonly label: string;
  /** The figure of the sheet, as written. */
  readonly figure: string;
  /** One cell a source, in the order of the columns; a source may state a setting more than once. */
  readonly cells: readonly (readonly Said[])[];
  /** Whether a source differs from the figure. */
  readonly differs: boolean;
}

/** What the sources of one sheet say, setting by source. */
export interface Concordance {
  readonly sheet: string;
  readonly title: string;
  readonly sources: readonly ConcordanceSource[];
  readonly rows: readonly ConcordanceRow[];
}
