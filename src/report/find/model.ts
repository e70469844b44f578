import type { Rational, Statement } from '../../quantity/model.ts';

/** A figure that is looked for, with how far off one may be and still be found. */
export interface SoughtSize {
  readonly statement: Statement;
  /** Base values of its dimension, both ends inclusive; null for no end. */
  readonly low: Rational | null;
  readonly high: Rational | null;
  /** The unit that a figure has to be in: a number without one is compared in each. Null for any. */
  readonly unit: string | null;
}

/** What is looked for: figures by their size, or words, or both where a text may be either. */
export interface Query {
  readonly text: string;
  readonly sizes: readonly SoughtSize[];
  readonly words: readonly string[];
}

/** What was found, as plain data. */
export interface Found {
  /** The sheet's id, else its file. */
  readonly sheet: string;
  readonly title: string;
  /** Where it stands; of a sheet that is based on another this may be the base's file. */
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly sort: 'size' | 'setting' | 'source' | 'unit' | 'text';
  /** The setting it belongs to, by the kind's name; null for none. */
  readonly setting: string | null;
  /** What it is, for people: `Float level, also`. */
  readonly label: string;
  /** As it is written there; of running text the words around. */
  readonly written: string;
  /** How far a figure is off what was looked for: `0.001 in more`; null where it is no other, or no figure. */
  readonly off: string | null;
}
