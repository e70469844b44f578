import { type CheckContext, examineParsed, type Finding } from '../checks/index.ts';
import type { PartStore } from '../press/index.ts';
import type { Refused } from '../report/index.ts';
import { readSheet } from '../sheet/index.ts';
import type { ReadProblem, Sheet } from '../sheet/model.ts';
import { keptSheet, type ReadAndChecked } from './kept-sheets.ts';
import type { Project } from './project.ts';
import { openSheet, type SheetFile } from './sheet-file.ts';

/** A sheet with its findings, or why the file is no sheet at all. */
export type Examined =
  | {
      readonly ok: true;
      readonly sheet: Sheet;
      readonly findings: readonly Finding[];
      /** The file itself, links resolved. */
      readonly path: string;
      /** Changes with anything in the sheet or its findings; null or absent where nothing is kept. */
      readonly digest?: string | null;
    }
  | { readonly ok: false; readonly refused: Refused };

/**
 * Reads and checks one sheet of a project, or takes what is kept of it from before. Never throws for
 * what a file may hold.
 */
export function examineFile(
  project: Project,
  path: string,
  store: PartStore | null = null,
): Examined {
  const read = openSheet(project, path);
  if (!read.ok) return read;
  const { opened } = read;
  const make = (context: CheckContext) => examineOpened({ ...opened, context });
  return { ok: true, path: opened.path, ...keptSheet(store, project, opened, make) };
}

/** Checks a text as if it stood at `path`; `problem` is one found before it was text. */
export function examineText(
  project: Project,
  path: string,
  file: string,
  text: string,
  problem: ReadProblem | null = null,
): ReadAndChecked {
  return examineOpened({ path, file, text, problem, context: project.context(path) });
}

/** Checks what was read of a sheet's file. */
export function examineOpened({ file, text, problem, context }: SheetFile): ReadAndChecked {
  const read = readSheet(text, file, context);
  const sheet = problem === null ? read : { ...read, problems: [problem, ...read.problems] };
  return { sheet, findings: examineParsed(sheet, context) };
}
