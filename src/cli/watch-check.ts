import { realpathSync } from 'node:fs';
import { type Checked, Projects, Refusal, targetsOf } from '../project/index.ts';
import type { KeptSheets } from './check-in-order.ts';
import { type CheckOptions, check } from './commands/check.ts';
import type { Io } from './io.ts';
import type { ExitStatus } from './run.ts';
import { atEachSave } from './watch-rounds.ts';
import { type Changes, WatchedFiles } from './watched-files.ts';

/**
 * `gaugeleaf check --watch`: checks, and again at each save, reading only what changed; what lies between
 * sheets is looked at whole each time. Ends when the user ends it, with the status of the last check.
 */
export async function watchCheck(
  paths: readonly string[],
  options: CheckOptions,
  io: Io,
): Promise<ExitStatus> {
  if (options.fix === true)
    throw new Refusal('--fix and --watch do not go together', 'mend first, then watch');
  const projects = new Projects(io.cwd);
  const { sheets } = targetsOf(paths, projects, io.cwd);
  const files = new WatchedFiles(
    projects.opened,
    sheets.map(({ path }) => path),
  );
  const { show } = projects.of(io.cwd);
  const kept = new CheckedSheets(show);
  return atEachSave(
    files,
    (changes) => {
      kept.forget(changes);
      return check(paths, { ...options, kept }, io);
    },
    show,
    io,
  );
}

/** Sheets as they were checked, until something that they rest on changes. */
class CheckedSheets implements KeptSheets {
  readonly #checked = new Map<string, Checked>();
  readonly #show: (path: string) => string;

  constructor(show: (path: string) => string) {
    this.#show = show;
  }

  get(path: string): Checked | undefined {
    return this.#checked.get(real(path));
  }

  set(path: string, checked: Checked): void {
    this.#checked.set(real(path), checked);
  }

  /** A sheet that was saved is examined anew, and so is what is based on it; all are where anything else changed. */
  forget({ paths, moved }: Changes): void {
    if (moved || paths.some((path) => !this.#checked.has(path))) {
      this.#checked.clear();
      return;
    }
    const files = new Set(paths.map(this.#show));
    for (const [path, checked] of this.#checked) {
      if (!checked.ok || checked.sheet.files.some((file) => files.has(file)))
        this.#checked.delete(path);
    }
  }
}

function real(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}
