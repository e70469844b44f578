import { join } from 'node:path';
import { answerDigest } from '../../rereading/index.ts';
import type { KeptReading, KeptReadings, KeptVerdict } from '../../rereading/model.ts';
import { type FileFaults, fileFaults } from '../file-faults.ts';
import { listFiles } from '../list-sheets.ts';
import type { Project } from '../project.ts';
import { readText } from '../read-text.ts';
import { Refusal } from '../refusal.ts';
import { isFolder } from '../root.ts';
import { locate } from '../safe-path.ts';
import { wordsDigest } from './digest.ts';
import { type ReadingFile, readingFindings, readReadingFile } from './reading-file.ts';

/** Second readings of a sheet, and a text that changes with any of them. */
export interface SheetReadings extends KeptReadings {
  readonly mark: string;
}

/** The second readings of a project. */
export interface ReadingFolder {
  /** Those of the sheet of that id. */
  readonly of: (id: string) => SheetReadings;
  /** All files, as they are. */
  readonly files: () => readonly ReadingFile[];
  readonly faults: () => readonly FileFaults[];
}

/**
 * The second readings of a project; null where it has no folder of them, and nothing is done. Files are read
 * as text when the first sheet is asked for, and understood when somebody looks into them.
 */
export function readingFolder(
  project: Pick<Project, 'root' | 'show' | 'sheets'>,
): ReadingFolder | null {
  const folder = join(project.root, 'sheets', 'readings');
  if (!isFolder(folder)) return null;
  let known: ReadonlyMap<string, readonly { path: string; text: string }[]> | null = null;
  const read = new Map<string, ReadingFile | Refusal>();
  const open = (path: string): ReadingFile | Refusal => {
    const before = read.get(path);
    if (before !== undefined) return before;
    let file: ReadingFile | Refusal;
    try {
      file = readReadingFile(project, path);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      file = error;
    }
    read.set(path, file);
    return file;
  };
  const names = () => listFiles(folder, /\.ya?ml$/i);
  const paths = () => names().map((name) => join(folder, name));
  const bySheet = () => {
    // A link that leads out of the project is not even looked into; it is told of as a fault.
    known ??= textsBySheet(
      names().flatMap((name) => {
        const found = locate(project.root, folder, name);
        return found.status === 'found' ? [found.path] : [];
      }),
    );
    return known;
  };
  return {
    of: (id) => {
      const own = bySheet().get(id) ?? [];
      return {
        mark: own.map(({ path, text }) => `${path}\n${text}`).join('\n'),
        digest: wordsDigest,
        get all() {
          return own.flatMap(({ path }) => keptOf(open(path)));
        },
      };
    },
    files: () => paths().flatMap((path) => notRefused(open(path))),
    faults: () =>
      paths().map((path) => {
        const file = open(path);
        if (!(file instanceof Refusal)) {
          return readingFindings(file.file, file.text, file.faults);
        }
        const { message, hint } = file;
        const fault = { check: 'reading-invalid', span: { start: 0, end: 0 } };
        return fileFaults(project.show(path), '', [{ ...fault, message, fix: hint }]);
      }),
  };
}

function notRefused(file: ReadingFile | Refusal): readonly ReadingFile[] {
  return file instanceof Refusal ? [] : [file];
}

/** The texts of files by the sheet that each names: enough to know what belongs to which. */
function textsBySheet(
  paths: readonly string[],
): ReadonlyMap<string, readonly { path: string; text: string }[]> {
  const texts = new Map<string, { path: string; text: string }[]>();
  for (const path of paths) {
    const found = readText(path);
    if (!found.ok) continue;
    const { text } = found;
    const id = /^["']?sheet["']?[ \t]*:[ \t]*["']?([^\s"'#]+)/m.exec(text)?.[1];
    if (id === undefined) continue;
    const own = texts.get(id) ?? [];
    own.push({ path, text });
    texts.set(id, own);
  }
  return texts;
}

function keptOf(file: ReadingFile | Refusal): readonly KeptReading[] {
  if (file instanceof Refusal || file.reading === null) return [];
  const { source, by, date, answers, read, settled } = file.reading;
  // What was altered since it was compared bears out nothing until it is compared again.
  const isAsCompared = ({ page, setting, answer }: Omit<KeptVerdict, 'verdict'>) =>
    answers.some(
      (each) =>
        each.page === page && each.key === setting && answerDigest(each, wordsDigest) === answer,
    );
  return [
    {
      file: file.file,
      source: source.value,
      by: by?.value ?? null,
      date: date?.value ?? null,
      read: read.filter(isAsCompared),
      settled: settled.filter(isAsCompared),
    },
  ];
}
