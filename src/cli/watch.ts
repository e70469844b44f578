import { watch } from 'chokidar';
import { causeInWords, Refusal } from '../project/index.ts';
import type { Io } from './io.ts';
import type { Changes, WatchedFiles } from './watched-files.ts';

/** Saves of some files, told one after the other. */
export interface Saves {
  /** What changed since it was last asked; null where the user ends it. Waits for either. */
  next(): Promise<Changes | null>;
  close(): Promise<void>;
}

/** How long nothing has to happen before files are looked at: an editor saves in several goes (milliseconds). */
const quiet = 30;

/** How often they are looked at though nothing was told: under load one of some hundred saves is not. */
const pace = 500;

/**
 * Watches files. Being told by the system only says when to look; what changed is found by looking, so that
 * no save is told twice and none is missed. Fails with `Refusal` where the system cannot watch.
 */
export async function watchSaves(files: WatchedFiles, io: Io): Promise<Saves> {
  let wake: () => void = () => {};
  let soon: NodeJS.Timeout | undefined;
  const watcher = watch([...files.folders], {
    ignoreInitial: true,
    followSymlinks: false,
    atomic: false,
    ignored: (path) => files.ignores(path),
  });
  watcher.on('all', () => {
    clearTimeout(soon);
    soon = setTimeout(() => wake(), quiet);
  });
  let failure: unknown = null;
  watcher.on('error', (error) => {
    failure = error;
    wake();
  });
  const round = setInterval(() => wake(), pace);
  await new Promise<void>((resolve) => watcher.once('ready', () => resolve()));
  return {
    async next() {
      let over = false;
      const waiting = io.untilInterrupted?.();
      void waiting?.interrupted.then(() => {
        over = true;
        wake();
      });
      try {
        for (;;) {
          // Whoever was asked to end before is told so by now.
          await Promise.resolve();
          if (over) return null;
          if (failure !== null)
            throw new Refusal(`the files cannot be watched: ${causeInWords(failure)}`);
          const changes = files.changes();
          if (changes !== null) return changes;
          await new Promise<void>((resolve) => {
            wake = resolve;
          });
        }
      } finally {
        waiting?.stop();
      }
    },
    async close() {
      clearTimeout(soon);
      clearInterval(round);
      await watcher.close();
    },
  };
}
