import type { Placed, Span } from '../text/index.ts';

/** A reading as the record has it, before it is made sense of. */
export type WrittenReading =
  | { readonly form: 'size'; readonly text: Placed<string> }
  /** `as found`: nothing was changed. */
  | { readonly form: 'as-found'; readonly span: Span }
  | {
      readonly form: 'go-no-go';
      readonly span: Span;
      readonly go: WrittenGauge | null;
      readonly noGo: WrittenGauge | null;
    };

/** A go or no-go gauge: one of the record's own by its size, or the sheet's by whether it went in. */
export type WrittenGauge =
  | { readonly wentIn: boolean; readonly span: Span }
  | { readonly text: Placed<string> };

/** The readings of one setting, or of one place of it. */
export interface RecordEntry {
  /** As the record names it. */
  readonly setting: Placed<string>;
  readonly place: Placed<string> | null;
  /** What the sheet asked for when the record was begun. */
  readonly wanted: Placed<string> | null;
  readonly found: WrittenReading | null;
  readonly left: WrittenReading | null;
  /** The gauge or instrument in words. */
  readonly gauge: Placed<string> | null;
  readonly uncertainty: Placed<string> | null;
}

/** A bench record as it was written; what is blank is null. */
export interface BenchRecord {
  readonly sheet: Placed<string>;
  readonly revision: Placed<number> | null;
  readonly serial: Placed<string> | null;
  readonly by: Placed<string> | null;
  readonly date: Placed<string> | null;
  readonly place: Placed<string> | null;
  readonly altitude: Placed<string> | null;
  readonly barometer: Placed<string> | null;
  readonly temperature: Placed<string> | null;
  /** In the order of the file; a setting with places gives one entry a place. */
  readonly entries: readonly RecordEntry[];
}

/** Something in a record that is wrong or doubtful, with its place. */
export interface RecordFault {
  readonly kind: 'invalid' | 'outdated' | 'incomplete';
  readonly span: Span;
  readonly message: string;
  readonly fix: string | null;
  readonly related?: readonly { readonly span: Span; readonly label: string }[];
}
