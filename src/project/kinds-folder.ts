import { join } from 'node:path';
import { builtInKinds, readKind, tryKind } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import { formulaNames } from '../relations/index.ts';
import { type Fault, type FileFaults, fileFaults } from './file-faults.ts';
import { listFiles } from './list-sheets.ts';
import { readOwnText } from './read-text.ts';
import { isFolder } from './root.ts';

export interface KindsRead {
  /** The built-in kinds, and over them those of the project's own `kinds` folder. */
  readonly kinds: ReadonlyMap<string, Kind>;
  /** The files of the kinds of that folder, as reports show them, by the kind's name. */
  readonly files: ReadonlyMap<string, string>;
  /** The faulty files of that folder. */
  readonly faults: readonly FileFaults[];
}

/** What is wrong with one file of a kind of unit in a project, wherever it lies there, and what of it is idle; null for nothing. */
export function kindFileFaults(root: string, path: string, file: string): FileFaults | null {
  const read = readOwnText(root, path, file);
  if (!read.ok) {
    const { message, fix } = read;
    return fileFaults(file, '', [
      { check: 'kind-invalid', span: { start: 0, end: 0 }, message, fix },
    ]);
  }
  return kindTextFaults(read.text, file);
}

/** The same of a text that may stand in such a file. */
export function kindTextFaults(text: string, file: string): FileFaults | null {
  const { problems } = readKind(text, file, formulaNames());
  if (problems.length === 0) return idleKind(text, file);
  return fileFaults(
    file,
    text,
    problems.map((problem) => ({ ...problem, check: 'kind-invalid' })),
  );
}

/** The trial of one kind that is right as far as it goes; null where all of it is of use. */
function idleKind(text: string, file: string): FileFaults | null {
  const idle = tryKind(text);
  if (idle.length === 0) return null;
  return fileFaults(
    file,
    text,
    idle.map((each) => ({ ...each, check: 'kind-idle' })),
  );
}

/** Reads the kinds of unit that a project knows. `show` turns a path into what reports say. */
export function readKinds(root: string, show: (path: string) => string): KindsRead {
  const folder = join(root, 'kinds');
  if (!isFolder(folder)) return { kinds: builtInKinds(), files: new Map(), faults: [] };
  const kinds = new Map(builtInKinds());
  const files = new Map<string, string>();
  const faults: FileFaults[] = [];
  for (const name of listFiles(folder, /\.ya?ml$/i)) {
    const file = show(join(folder, name));
    const blame = (text: string, found: readonly Omit<Fault, 'check'>[]): void => {
      const named = found.map((fault) => ({ ...fault, check: 'kind-invalid' }));
      faults.push(fileFaults(file, text, named));
    };
    const nowhere = { start: 0, end: 0 };
    const read = readOwnText(root, join(folder, name), file);
    if (!read.ok) {
      blame('', [{ span: nowhere, message: read.message, fix: read.fix }]);
      continue;
    }
    if (read.fault !== null) {
      const { start, end, message, fix } = read.fault;
      blame(read.text, [{ span: { start, end }, message, fix }]);
      continue;
    }
    const { kind, problems } = readKind(read.text, file, formulaNames());
    if (problems.length > 0) blame(read.text, problems);
    if (kind === null) continue;
    kinds.set(kind.name, kind);
    files.set(kind.name, file);
  }
  return { kinds, files, faults };
}
