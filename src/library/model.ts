import type { ExportData } from '../generated/export-data.ts';

/** A place in a text: lines and columns from 1, in UTF-16 units; the end is exclusive. */
export interface Place {
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** One finding, as `gaugeleaf check --format json` writes it. */
export interface FoundThing extends Place {
  /** The finding's name, as `gaugeleaf explain` takes it. */
  readonly name: string;
  readonly severity: 'error' | 'warning' | 'note';
  readonly file: string;
  readonly message: string;
  /** An instruction; absent where nothing is known to do. */
  readonly fix?: string;
  readonly compared?: readonly [string, string];
  readonly related?: readonly (Place & { readonly label: string; readonly file?: string })[];
  /** What `--fix` would write; absent where no cure is certain. */
  readonly edits?: readonly (Place & { readonly text: string })[];
  /** The editor's reason, where the sheet accepts it. */
  readonly accepted?: string;
}

/** One size of one setting, as `gaugeleaf export --format json` writes it. */
export type SettingRow = ExportData['settings'][number];

/** What is known around a sheet; each is optional. */
export interface Around {
  /** How findings name the text; `sheet.md` without it. */
  readonly file?: string;
  /** Texts of a club's own kinds of unit, beside those that are built in. */
  readonly kinds?: readonly string[];
  /** What a bare `SWG` means. */
  readonly wireGauge?: 'imperial' | 'us-steel';
  /** Where the work is done, such as `1350 ft`. */
  readonly altitude?: string;
}

/** A sheet that was read and checked. */
export interface Examination {
  /** By place; accepted ones are among them. */
  readonly findings: readonly FoundThing[];
  /** What could be read, also where there are errors. */
  readonly settings: readonly SettingRow[];
}

/** An exact length in both units, as decimals where they end, else as `n/d`. */
export interface Length {
  readonly inch: string;
  readonly mm: string;
}

/** A size that was read, as `gaugeleaf size --json` writes it. */
export interface KnownSize {
  readonly input: string;
  readonly error?: never;
  /** The nominal, or the one limit that is stated; null for a range and for what is no length. */
  readonly inch: string | null;
  readonly mm: string | null;
  /** `length`, `turns`, `angle` ... */
  readonly dimension: string;
  /** `exact`, `tolerance`, `range` ... */
  readonly form: string;
  readonly low?: Length;
  readonly high?: Length;
  /** Every gauge of exactly the size. */
  readonly names: readonly string[];
  readonly neighbors: {
    readonly below: (Length & { readonly name: string }) | null;
    readonly above: (Length & { readonly name: string }) | null;
  };
  /** For what is no length: the same in the other units of its family. */
  readonly also?: readonly string[];
}

/** A text that is no size, and why. */
export interface UnknownSize {
  readonly input: string;
  readonly error: string;
  readonly fix?: string;
  readonly candidates?: readonly string[];
}

/** What a finding means. */
export interface ToldFinding {
  readonly name: string;
  readonly severity: 'error' | 'warning' | 'note';
  readonly summary: string;
  readonly explain: string;
}
