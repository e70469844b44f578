import { type KeyWords, sheetWords } from '../generated/sheet-words.ts';
import type { CompletionKind } from './model.ts';

/** What may be offered, before it is put in its place. */
export interface Offer {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly detail?: string | null;
  readonly explain?: string | null;
  /** The text to write; the label, if absent. */
  readonly text?: string;
  /** Where in the text something is to be written yet. */
  readonly blank?: readonly [number, number];
}

/** What the schema says of the place that a path leads to; null where it says nothing. */
export function wordsAt(path: readonly string[], root: KeyWords = sheetWords): KeyWords | null {
  let here: KeyWords | null = root;
  for (const step of path) {
    if (here === null) return null;
    if (step === '-') {
      // A single one may stand where a list may.
      here = here.items ?? here;
    } else here = (Object.hasOwn(here.keys, step) ? here.keys[step] : here.any) ?? null;
  }
  return here;
}

/** What the schema says of an entry of the front matter, its path with indexes in lists; null for nothing. */
export function keyWords(path: readonly (string | number)[]): KeyWords | null {
  return wordsAt(path.map((step) => (typeof step === 'number' ? '-' : step)));
}
