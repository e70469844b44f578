import type { SheetToPrint } from '../orders/model.ts';
import type { Chapter } from './chapter.ts';
import { whereWorked } from './where-worked.ts';

/** Where a line of the index leads; its page is printed. */
interface IndexPlace {
  /** The chapter's number; null for a part that is none. */
  readonly number: number | null;
  readonly anchor: string;
}

/** A line of the index. */
interface IndexEntry {
  readonly text: string;
  /** One of each chapter at most, in their order. */
  readonly places: readonly IndexPlace[];
}

/** The entries of one letter. */
export interface IndexLetter {
  /** `A`; `0-9` for what begins with a figure. */
  readonly letter: string;
  readonly entries: readonly IndexEntry[];
}

/**
 * The index: units and the vehicles they serve, part numbers, settings where they are made, operations
 * and the booklet's own parts, in the order of the alphabet. Symptoms have an index of their own.
 */
export function bookletIndex(
  sheets: readonly SheetToPrint[],
  chapters: readonly Chapter[],
  parts: readonly { readonly title: string; readonly anchor: string }[],
): readonly IndexLetter[] {
  const entries = new Map<string, { text: string; places: IndexPlace[] }>();
  const add = (text: string, anchor: string, number: number | null): void => {
    const key = text.toLowerCase();
    const entry = entries.get(key) ?? { text, places: [] };
    entries.set(key, entry);
    if (!entry.places.some((place) => place.number === number)) {
      entry.places.push({ number, anchor });
    }
  };
  for (const { title, anchor } of parts) add(title, anchor, null);
  for (const [index, entry] of sheets.entries()) {
    const { sheet } = entry;
    const { kind } = sheet;
    const chapter = chapters[index];
    if (!chapter) continue;
    const { number } = chapter;
    add(chapter.face.title, chapter.anchor, number);
    for (const fits of chapter.face.fits) add(fits, chapter.anchor, number);
    for (const part of sheet.unit.partNumbers) add(part.value, chapter.anchor, number);
    const labels = new Map(chapter.settings.map((row) => [row.anchor, row.label]));
    const made = new Set<string>();
    for (const [name, { anchor }] of whereWorked(entry, chapter)) {
      add(labels.get(anchor) ?? kind?.settings.get(name)?.label ?? name, anchor, number);
      made.add(anchor);
    }
    for (const { index: at, known } of sheet.operations) {
      const anchor = chapter.operations[at]?.anchor;
      // What makes one setting stands under that setting's name already.
      if (!known || known.stage === 'any' || anchor === undefined || made.has(anchor)) continue;
      add(known.label, anchor, number);
    }
  }
  const letters = new Map<string, IndexEntry[]>();
  for (const [key, entry] of [...entries].sort(([first], [second]) => compare(first, second))) {
    const letter = /^\d/.test(key) ? '0\u20139' : key.charAt(0).toUpperCase();
    const list = letters.get(letter) ?? [];
    letters.set(letter, list);
    list.push(entry);
  }
  return [...letters].map(([letter, list]) => ({ letter, entries: list }));
}

/** By code point, and so the same on every machine; names with accents come after those without. */
function compare(first: string, second: string): number {
  return first < second ? -1 : first > second ? 1 : 0;
}
