import { realpathSync } from 'node:fs';
import { Projects, Refusal, targetsOf } from '../project/index.ts';
import type { CheckedSheet, KeptSheets } from './checked-sheet.ts';
import { type CheckOptions, check } from './commands/check.ts';
import { type Io, say } from './io.ts';
import { tellMishap } from './mishap.ts';
import type { ExitStatus } from './run.ts';
import { type Saves, watchSaves } from './watch.ts';
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
  const saves = await watchSaves(files, io);
  try {
    return await untilEnded(paths, options, saves, projects.of(io.cwd).show, io);
  } finally {
    await saves.close();
  }
}

async function untilEnded(
  paths: readonly string[],
  options: CheckOptions,
  saves: Saves,
  show: (path: string) => string,
  io: Io,
): Promise<ExitStatus> {
  const kept = new CheckedSheets(show);
  let status: ExitStatus = 0;
  for (let changes: Changes | null = { paths: [], moved: true }; changes !== null; ) {
    tellRound(changes, show, io);
    try {
      status = await check(paths, { ...options, kept }, io);
    } catch (error) {
      tellMishap(error, io);
      status = 2;
    }
    say(io, 'watching; Ctrl-C ends it');
    changes = await saves.next();
    if (changes !== null) kept.forget(changes);
  }
  return status;
}

/** On a terminal each round begins on an empty screen; elsewhere under a line that says what changed. */
export function tellRound(changes: Changes, show: (path: string) => string, io: Io): void {
  if (io.stdout.isTTY === true && io.env.TERM !== 'dumb') {
    io.stdout.write('\u001b[2J\u001b[3J\u001b[H');
  } else if (changes.paths.length > 0) {
    say(io, `changed: ${changes.paths.map(show).join(', ')}`);
  }
}

/** Sheets as they were checked, until something that they rest on changes. */
class CheckedSheets implements KeptSheets {
  readonly #checked = new Map<string, CheckedSheet>();
  readonly #show: (path: string) => string;

  constructor(show: (path: string) => string) {
    this.#show = show;
  }

  get(path: string): CheckedSheet | undefined {
    return this.#checked.get(real(path));
  }

  set(path: string, checked: CheckedSheet): void {
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
      if (!checked.ok || checked.files.some((file) => files.has(file))) this.#checked.delete(path);
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
