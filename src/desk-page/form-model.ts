import type { Span } from '../text/index.ts';

/** Where a value stands in the front matter: keys from the top, and indexes in lists. */
export type FormPath = readonly (string | number)[];

/** One line of the form. */
export interface FormField {
  readonly path: FormPath;
  readonly label: string;
  readonly explain: string | null;
  /**
   * How it is entered: `words` on one line, a `size`, one of `choices`, a whole `number`, a `citation` (a
   * source and where in it), `flags` (any of `choices`, a list), or only `shown`, where the text is to be
   * edited.
   */
  readonly entry: 'words' | 'size' | 'choice' | 'number' | 'citation' | 'flags' | 'shown';
  /** As written; null where nothing is. */
  readonly value: string | null;
  /** Of `flags`: those that are there. */
  readonly values: readonly string[];
  readonly choices: readonly { readonly value: string; readonly label: string }[];
  /** What may be entered, for one who does not know; null for nothing to say. */
  readonly hint: string | null;
  /** What it is offered as where it is not there and nobody asks for it; null where it is always shown. */
  readonly offer: string | null;
  /** Whether the kind or a feature asks for it. */
  readonly asked: boolean;
  /** What it was read as: a size in its other forms; null for nothing to say. */
  readonly readAs: string | null;
  /** Where it stands; null where it does not yet. */
  readonly span: Span | null;
}

/** Fields that belong together: a setting, a source, the unit. */
export interface FormGroup {
  readonly id: string;
  readonly title: string;
  readonly explain: string | null;
  readonly fields: readonly FormField[];
  /** Whether something of it stands on the sheet; a setting that is only asked for does not. */
  readonly there: boolean;
}

/** The front matter as a form. */
export interface FormModel {
  readonly sheet: FormGroup;
  readonly unit: FormGroup;
  readonly sources: readonly FormGroup[];
  /** In working order; those that features ask for and the sheet lacks among them. */
  readonly settings: readonly FormGroup[];
  /** A short name for one more source. */
  readonly nextSource: string;
  /** Settings of the kind that the sheet has not got and nobody asks for. */
  readonly more: readonly { readonly name: string; readonly label: string }[];
}

/** What a person entered: a line of text; null takes the entry away. A list puts a whole list in place. */
export interface FormEdit {
  readonly path: FormPath;
  readonly value: string | readonly string[] | null;
  /** Whether a whole number is meant, and not text that looks like one. */
  readonly number?: boolean;
}
