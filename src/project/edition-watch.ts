import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { changedFiles, fileMark } from './file-mark.ts';

/** How often the disk is looked at, in milliseconds. */
const pace = 700;

/** What of a project was changed by somebody else since it was last looked at. */
export interface DiskChange {
  /** Paths of sheets that are new, other or gone. */
  readonly sheets: readonly string[];
  /** Whether what holds for all sheets is other: edition, sources, kinds, templates, which sheets there are. */
  readonly around: boolean;
}

/**
 * Looks at the files of a project again and again, and tells what changed. Being told by the system is
 * quicker and not to be relied on: a recursive `fs.watch` was measured to miss nine saves of ten.
 */
export class EditionWatch {
  readonly #root: string;
  readonly #timer: ReturnType<typeof setInterval>;
  #known: ReadonlyMap<string, string>;

  constructor(root: string, tell: (change: DiskChange) => void) {
    this.#root = root;
    this.#known = this.#look();
    this.#timer = setInterval(() => {
      const change = this.changes();
      if (change !== null) tell(change);
    }, pace);
    this.#timer.unref();
  }

  /** What changed since the last look; null for nothing. */
  changes(): DiskChange | null {
    const before = this.#known;
    const now = this.#look();
    this.#known = now;
    const sheets: string[] = [];
    let around = false;
    for (const path of changedFiles(before, now)) {
      const isSheet = path.startsWith(join(this.#root, 'sheets')) && /\.md$/i.test(path);
      if (isSheet) sheets.push(path);
      around ||= !isSheet || !before.has(path) || !now.has(path);
    }
    return sheets.length === 0 && !around ? null : { sheets, around };
  }

  close(): void {
    clearInterval(this.#timer);
  }

  #look(): ReadonlyMap<string, string> {
    const found = new Map<string, string>();
    for (const name of ['edition.yaml', 'sources.yaml']) this.#note(join(this.#root, name), found);
    for (const folder of ['sheets', 'kinds', 'templates']) {
      const path = join(this.#root, folder);
      for (const name of namesIn(path)) {
        if (!name.startsWith('.')) this.#note(join(path, name), found);
      }
    }
    return found;
  }

  #note(path: string, found: Map<string, string>): void {
    const mark = fileMark(path);
    if (mark !== null) found.set(path, mark);
  }
}

function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}
