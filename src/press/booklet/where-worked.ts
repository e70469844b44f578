import { tasksOf } from '../../sheet/index.ts';
import type { Sheet } from '../../sheet/model.ts';
import type { SheetToPrint } from '../orders/model.ts';
import type { Chapter } from './chapter.ts';

/** A place in a chapter that other parts of the booklet lead to. */
export interface ChapterPlace {
  /** The chapter's number. */
  readonly number: number;
  readonly anchor: string;
}

/** Where a setting is made. */
export interface WorkedPlace extends ChapterPlace {
  /** The number that the setting goes by: `5`, `5a`. */
  readonly task: string;
}

/**
 * Where each setting of a sheet is made, by the kind's name or the sheet's own: the heading of its
 * task; its row in the table where no task makes it.
 */
export function whereWorked(
  { sheet }: SheetToPrint,
  chapter: Chapter,
): ReadonlyMap<string, WorkedPlace> {
  const made = tasksOf(sheet);
  const rows = new Map(chapter.settings.map(({ name, anchor }) => [name, anchor]));
  const heads = new Map(
    made.tasks.map(({ number, operation }) => [
      number,
      chapter.operations[operation.index]?.anchor,
    ]),
  );
  const worked = new Map<string, WorkedPlace>();
  for (const { number: task, task: of, setting } of made.settings) {
    const name = setting.name.value;
    const anchor = (of === null ? null : heads.get(of)) ?? rows.get(name);
    const key = idOf(name, sheet);
    if (anchor !== undefined && !worked.has(key)) {
      worked.set(key, { number: chapter.number, anchor, task });
    }
  }
  return worked;
}

/** The kind's name for a setting of a sheet, or the sheet's own where the kind knows none. */
export function idOf(name: string, sheet: Sheet): string {
  return sheet.settings.get(name)?.id ?? name;
}
