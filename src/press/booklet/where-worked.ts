import type { Sheet } from '../../sheet/model.ts';
import type { SheetToPrint } from '../orders/model.ts';
import type { Chapter } from './chapter.ts';

/** A place in a chapter that other parts of the booklet lead to. */
export interface ChapterPlace {
  /** The chapter's number. */
  readonly number: number;
  readonly anchor: string;
}

/**
 * Where each setting of a sheet is made, by the kind's name or the sheet's own: the heading of its
 * operation, the first of several; its row in the table where no operation makes it.
 */
export function whereWorked(
  { sheet }: SheetToPrint,
  chapter: Chapter,
): ReadonlyMap<string, ChapterPlace> {
  const { number } = chapter;
  const places = new Map<string, ChapterPlace>();
  for (const { index, known } of sheet.operations) {
    const anchor = chapter.operations[index]?.anchor;
    if (!known || known.stage === 'any' || anchor === undefined) continue;
    for (const name of known.settings) {
      if (!places.has(name)) places.set(name, { number, anchor });
    }
  }
  const worked = new Map<string, ChapterPlace>();
  for (const { name, anchor } of chapter.settings) {
    const key = idOf(name, sheet);
    if (!worked.has(key)) worked.set(key, places.get(key) ?? { number, anchor });
  }
  return worked;
}

/** The kind's name for a setting of a sheet, or the sheet's own where the kind knows none. */
export function idOf(name: string, sheet: Sheet): string {
  return sheet.settings.get(name)?.id ?? name;
}
