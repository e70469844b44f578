import { realpathSync } from 'node:fs';
import { nearestName, type Span } from '../text/index.ts';
import { fileId } from './file-id.ts';
import type { Project } from './project.ts';
import { readOwnText } from './read-text.ts';
import { causeInWords, Refusal } from './refusal.ts';

/** The text of a file that belongs to a sheet: a bench record, a second reading. */
export interface TextOfSheet {
  /** Absolute, links resolved. */
  readonly path: string;
  /** As reports show it. */
  readonly file: string;
  readonly text: string;
  /** What keeps the text from being read as what it is; null where nothing does. */
  readonly fault: { readonly span: Span; readonly message: string; readonly fix: string } | null;
}

/**
 * Reads the text at an absolute path. `called` is what the file is for people, `begins` the command that begins
 * one. Fails with `Refusal` where there is no such file, or none that is text.
 */
export function textOfSheet(
  project: Pick<Project, 'root' | 'show'>,
  path: string,
  { called, begins }: { readonly called: string; readonly begins: string },
): TextOfSheet {
  const file = project.show(path);
  let real: string;
  try {
    real = realpathSync(path);
  } catch (error) {
    throw new Refusal(
      `the ${called} ${file} cannot be read: ${causeInWords(error)}`,
      `to begin one, name the sheet: gaugeleaf ${begins} orlo-t71-wexcombe-six`,
    );
  }
  const read = readOwnText(project.root, real, file);
  if (!read.ok) throw new Refusal(read.message, read.fix);
  const { text, fault } = read;
  if (fault === null) return { path: real, file, text, fault };
  const { start, end, message, fix } = fault;
  return { path: real, file, text, fault: { span: { start, end }, message, fix } };
}

/** The sheet of a project that such a file names, or what is wrong with the name. */
export function sheetItNames(
  project: Pick<Project, 'sheets'>,
  name: string,
): { readonly sheet: string } | { readonly message: string; readonly fix: string } {
  const sheets = project.sheets();
  const sheet = sheets.find((each) => fileId(each) === name);
  if (sheet !== undefined) return { sheet };
  const near = nearestName(name, sheets.map(fileId));
  return {
    message: `this project has no sheet \`${name}\``,
    fix: near === null ? 'correct the name of the sheet' : `did you mean \`${near}\`?`,
  };
}
