import { realpathSync } from 'node:fs';
import { type CheckContext, examineParsed, type Finding } from '../checks/index.ts';
import type { PartStore } from '../press/index.ts';
import type { Refused } from '../report/index.ts';
import { readSheet } from '../sheet/index.ts';
import type { ReadProblem, Sheet } from '../sheet/model.ts';
import { keptSheet, type ReadAndChecked } from './kept-sheets.ts';
import type { Project } from './project.ts';
import { readText } from './read-text.ts';
import { causeInWords } from './refusal.ts';
import { isBelow } from './safe-path.ts';

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
  const file = project.show(path);
  const refuse = (message: string, fix: string | null): Examined => ({
    ok: false,
    refused: { file, message, fix },
  });
  let real: string;
  try {
    real = realpathSync(path);
  } catch (error) {
    return refuse(`${file} cannot be read: ${causeInWords(error)}`, null);
  }
  if (!isBelow(project.root, real)) {
    return refuse(
      `${file} is a link that leads out of the project; it is not read`,
      'put the file itself there',
    );
  }
  const read = readText(real, file);
  if (!read.ok) return refuse(read.message, read.fix);
  const problem: ReadProblem | null =
    read.fault === null
      ? null
      : {
          kind: 'encoding',
          span: { start: read.fault.start, end: read.fault.end },
          message: read.fault.message,
          fix: read.fault.fix,
        };
  const context = project.context(real);
  const examined =
    // What is based on another sheet changes with it: it is not kept.
    problem === null && !read.text.includes('based-on')
      ? keptSheet(store, read.text, file, context, (around) => examineIn(around, file, read.text))
      : { ...examineIn(context, file, read.text, problem), digest: null };
  return { ok: true, path: real, ...examined };
}

/** Checks a text as if it stood at `path`; `problem` is one found before it was text. */
export function examineText(
  project: Project,
  path: string,
  file: string,
  text: string,
  problem: ReadProblem | null = null,
): { readonly sheet: Sheet; readonly findings: readonly Finding[] } {
  return examineIn(project.context(path), file, text, problem);
}

function examineIn(
  context: CheckContext,
  file: string,
  text: string,
  problem: ReadProblem | null = null,
): ReadAndChecked {
  const read = readSheet(text, file, context);
  const sheet = problem === null ? read : { ...read, problems: [problem, ...read.problems] };
  return { sheet, findings: examineParsed(sheet, context) };
}
