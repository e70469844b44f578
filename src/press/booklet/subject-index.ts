import type { SheetToPrint } from '../orders/model.ts';
import type { Chapter } from './chapter.ts';
import type { Fault } from './fault-finding.ts';
import { whereWorked } from './where-worked.ts';

/** A line of the index; every anchor prints its page. */
interface IndexEntry {
  readonly text: string;
  readonly anchors: readonly string[];
}

/** The entries of one letter. */
export interface IndexLetter {
  /** `A`; `0-9` for what begins with a figure. */
  readonly letter: string;
  readonly entries: readonly IndexEntry[];
}

/**
 * The index: units and the vehicles they serve, part numbers, settings where they are made,
 * operations, symptoms and the booklet's own parts, in the order of the alphabet.
 */
export function bookletIndex(
  sheets: readonly SheetToPrint[],
  chapters: readonly Chapter[],
  faults: readonly Fault[],
  parts: readonly { readonly title: string; readonly anchor: string }[],
): readonly IndexLetter[] {
  const entries = new Map<string, { text: string; anchors: string[] }>();
  const add = (text: string, anchor: string): void => {
    const key = text.toLowerCase();
    const entry = entries.get(key) ?? { text, anchors: [] };
    entries.set(key, entry);
    if (!entry.anchors.includes(anchor)) entry.anchors.push(anchor);
  };
  for (const { title, anchor } of parts) add(title, anchor);
  for (const [index, entry] of sheets.entries()) {
    const { sheet } = entry;
    const { kind } = sheet;
    const chapter = chapters[index];
    if (!chapter) continue;
    add(chapter.face.title, chapter.anchor);
    for (const fits of chapter.face.fits) add(fits, chapter.anchor);
    for (const part of sheet.unit.partNumbers) add(part.value, chapter.anchor);
    const labels = new Map(chapter.settings.map((row) => [row.anchor, row.label]));
    const made = new Set<string>();
    for (const [name, { anchor }] of whereWorked(entry, chapter)) {
      add(labels.get(anchor) ?? kind?.settings.get(name)?.label ?? name, anchor);
      made.add(anchor);
    }
    for (const { index: at, known } of sheet.operations) {
      const anchor = chapter.operations[at]?.anchor;
      // What makes one setting stands under that setting's name already.
      if (!known || known.stage === 'any' || anchor === undefined || made.has(anchor)) continue;
      add(known.label, anchor);
    }
  }
  for (const { title, anchor } of faults) add(`${title} (symptom)`, anchor);
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
