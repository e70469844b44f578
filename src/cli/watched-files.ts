import { readdirSync, statSync } from 'node:fs';
import { basename, join, sep } from 'node:path';
import { changedFiles, fileMark, type Project } from '../project/index.ts';

/** What was saved since files were last looked at. */
export interface Changes {
  /** Absolute, in byte order. */
  readonly paths: readonly string[];
  /** Whether files came or went, so that more than their own text is other. */
  readonly moved: boolean;
}

/** What of a project's folder the program reads. */
const readFrom: readonly string[] = [
  'edition.yaml',
  'sources.yaml',
  'sheets',
  'kinds',
  'templates',
];

/** The files that projects are read from, and single sheets that lie in none, as they were last looked at. */
export class WatchedFiles {
  /** Files, and folders with all below them; they need not be there yet. */
  readonly #places: readonly string[];
  #known: ReadonlyMap<string, string>;

  constructor(projects: Iterable<Project>, sheets: Iterable<string>) {
    const roots = [...projects].filter(({ isProject }) => isProject).map(({ root }) => root);
    const single = [...sheets].filter((path) => !roots.some((root) => isBelow(root, path)));
    this.#places = [
      ...roots.flatMap((root) => readFrom.map((name) => join(root, name))),
      ...single,
    ];
    this.#known = this.#look();
  }

  /** The folders that the files lie in, to be told of what happens there. */
  get folders(): readonly string[] {
    return [...new Set(this.#places.map((place) => join(place, '..')))];
  }

  /** Whether a path is of no account: neither one of the files nor on the way to one. */
  ignores(path: string): boolean {
    if (this.folders.includes(path)) return false;
    const place = this.#places.find((each) => path === each || isBelow(each, path));
    return place === undefined || (path !== place && isPassing(path));
  }

  /** What changed since the last look; null for nothing. */
  changes(): Changes | null {
    const before = this.#known;
    const now = this.#look();
    this.#known = now;
    const paths = [...changedFiles(before, now)].sort();
    if (paths.length === 0) return null;
    return { paths, moved: paths.some((path) => !before.has(path) || !now.has(path)) };
  }

  #look(): ReadonlyMap<string, string> {
    const found = new Map<string, string>();
    for (const place of this.#places) note(place, found);
    return found;
  }
}

function isBelow(folder: string, path: string): boolean {
  return path.startsWith(folder + sep);
}

/** Whether a file is one that an editor keeps beside what it saves: `.a.md.swp`, `a.md~`, `#a.md#`, `4913`. */
function isPassing(path: string): boolean {
  return /^[.#]|~$|^\d+$|\.(?:tmp|bak|swp)$/.test(basename(path));
}

/** Notes how a file stands, or every file below a folder. */
function note(path: string, found: Map<string, string>): void {
  try {
    const mark = fileMark(path);
    if (mark !== null) found.set(path, mark);
    if (mark !== null || statSync(path, { throwIfNoEntry: false })?.isDirectory() !== true) return;
    for (const entry of readdirSync(path, { withFileTypes: true })) {
      const below = join(path, entry.name);
      // A link to a folder is not followed: it may lead back up.
      if (isPassing(below) || (entry.isSymbolicLink() && statSync(below).isDirectory())) continue;
      note(below, found);
    }
  } catch {
    // It went while it was looked at, or may not be read: whoever reads it says so.
  }
}
