import {
  type Checked,
  checkFile,
  type PartFolder,
  recallFile,
  type Target,
} from '../project/index.ts';
import { Crew, helpersFor, type Numbered } from './check-crew.ts';
import type { Io } from './io.ts';

/** Where what was told of sheets is kept. */
export interface Keeping {
  readonly store: PartFolder;
  /** The folder that it is in. */
  readonly folder: string;
}

/** What is known of sheets from before in this very run, by their paths. */
export interface KeptSheets {
  get(path: string): Checked | undefined;
  set(path: string, checked: Checked): void;
}

/** What need not be checked again, and where to keep the rest; null for neither. */
export interface Known {
  readonly keeping: Keeping | null;
  readonly kept: KeptSheets | null;
}

/**
 * From so many sheets on that nobody knows, helpers are called: each takes as long to get ready as some
 * twenty sheets to check, and gets quick only after as many.
 */
const worthHelp = 48;

/** How far ahead of the sheet that is told next others may be checked: what they gave waits in memory. */
const farAhead = 400;

/** How long interruptions and the progress line may be kept waiting (milliseconds). */
export const breath = 40;

/** And how long helpers that have done their share. */
const shortBreath = 4;

/** Fewer sheets than this are done before any preparation would pay. */
export const many = 10;

/**
 * Checks sheets, several at a time where there are many that were not checked before, and gives what came
 * of each in the order of the sheets. `progress` is told how many are done.
 */
export async function* checkInOrder(
  targets: readonly Target[],
  { keeping, kept }: Known,
  io: Io,
  progress: (done: number) => void,
): AsyncGenerator<Checked> {
  const store = keeping?.store ?? null;
  const count = helpersFor(io);
  const found = new Map<number, Checked>();
  const unknown: Numbered[] = [];
  let looked = 0;
  let done = 0;
  let rested = performance.now();
  const settle = (index: number, checked: Checked): void => {
    found.set(index, checked);
    done += 1;
  };
  const rest = async (longest: number): Promise<void> => {
    if (performance.now() - rested <= longest) return;
    progress(done);
    await new Promise((resolve) => setImmediate(resolve));
    rested = performance.now();
  };
  /** Looks whether the next sheet is known; it waits among the others if not. */
  const look = (): void => {
    const target = targets[looked];
    if (target === undefined) return;
    const known =
      kept?.get(target.path) ?? (store && recallFile(target.project, target.path, store));
    if (known) settle(looked, known);
    else unknown.push([looked, target]);
    looked += 1;
  };
  let crew: Crew | null = null;
  let mayHaveCrew = count > 0 && targets.length >= worthHelp;
  let isLong = false;
  try {
    for (let next = 0; next < targets.length; next++) {
      while (!found.has(next)) {
        await rest(crew === null ? breath : shortBreath);
        if (crew !== null) unknown.unshift(...crew.orphans());
        const most = crew === null ? (mayHaveCrew ? worthHelp : 1) : farAhead;
        const mayLook = looked < targets.length && looked - next < farAhead;
        if (mayLook && unknown.length < most) {
          look();
          if (crew?.wantsWork !== true) continue;
        }
        if (mayHaveCrew && unknown.length >= worthHelp) {
          mayHaveCrew = false;
          const task = { cwd: io.cwd, kept: keeping?.folder ?? null };
          const share = Math.ceil((targets.length - next) / (worthHelp / 2));
          crew = await Crew.start(Math.min(count, share), task, io, settle);
        }
        if (!isLong && unknown.length > 0 && targets.length >= many) {
          isLong = true;
          io.expectLongWork?.();
        }
        if (crew !== null && !crew.isGone) {
          crew.feed(unknown);
          const isFed = unknown.length > 0 || !mayLook;
          if (isFed && !found.has(next)) await crew.word();
          continue;
        }
        const first = unknown.shift();
        if (first === undefined) continue;
        const [index, { project, path }] = first;
        settle(index, checkFile(project, path, store));
      }
      const checked = found.get(next);
      found.delete(next);
      const path = targets[next]?.path;
      if (checked === undefined || path === undefined) continue;
      if (kept?.get(path) === undefined) kept?.set(path, checked);
      yield checked;
    }
  } finally {
    await crew?.dismiss();
    if (crew !== null) keeping?.store.tidy();
  }
}
