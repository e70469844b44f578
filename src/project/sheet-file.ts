import { realpathSync } from 'node:fs';
import type { CheckContext } from '../checks/index.ts';
import type { Refused } from '../report/index.ts';
import type { ReadProblem } from '../sheet/model.ts';
import type { Project } from './project.ts';
import { readOwnText } from './read-text.ts';
import { causeInWords } from './refusal.ts';

/** A sheet's text as it stands in its file, with what it is to be read in. */
export interface SheetFile {
  /** The file itself, links resolved. */
  readonly path: string;
  /** As reports show it. */
  readonly file: string;
  readonly text: string;
  /** What is wrong with its bytes; null for nothing. */
  readonly problem: ReadProblem | null;
  readonly context: CheckContext;
}

/** Reads the file of a sheet, or says why it is none. Never throws for what a file may hold. */
export function openSheet(
  project: Project,
  path: string,
): { readonly ok: true; readonly opened: SheetFile } | { readonly ok: false; refused: Refused } {
  const file = project.show(path);
  const refuse = (message: string, fix: string | null) => ({
    ok: false as const,
    refused: { file, message, fix },
  });
  let real: string;
  try {
    real = realpathSync(path);
  } catch (error) {
    return refuse(`${file} cannot be read: ${causeInWords(error)}`, null);
  }
  const read = readOwnText(project.root, real, file);
  if (!read.ok) return refuse(read.message, read.fix);
  const { text, fault } = read;
  const problem: ReadProblem | null =
    fault === null
      ? null
      : {
          kind: 'encoding',
          span: { start: fault.start, end: fault.end },
          message: fault.message,
          fix: fault.fix,
        };
  return {
    ok: true,
    opened: { path: real, file, text, problem, context: project.context(real) },
  };
}
