import { type Io, say } from './io.ts';
import { tellMishap } from './mishap.ts';
import type { ExitStatus } from './run.ts';
import { watchSaves } from './watch.ts';
import type { Changes, WatchedFiles } from './watched-files.ts';

/**
 * Does something once, and again at each save, until the user ends it; the status is that of the last time.
 * What goes wrong is told, and the next save awaited. `show` turns paths into what reports say.
 */
export async function atEachSave(
  files: WatchedFiles,
  work: (changes: Changes) => Promise<ExitStatus>,
  show: (path: string) => string,
  io: Io,
): Promise<ExitStatus> {
  const saves = await watchSaves(files, io);
  try {
    let status: ExitStatus = 0;
    for (let changes: Changes | null = { paths: [], moved: true }; changes !== null; ) {
      tellRound(changes, show, io);
      try {
        status = await work(changes);
      } catch (error) {
        tellMishap(error, io);
        status = 2;
      }
      say(io, 'watching; Ctrl-C ends it');
      changes = await saves.next();
    }
    return status;
  } finally {
    await saves.close();
  }
}

/** On a terminal each round begins on an empty screen; elsewhere under a line that says what changed. */
function tellRound(changes: Changes, show: (path: string) => string, io: Io): void {
  if (io.stdout.isTTY === true && io.env.TERM !== 'dumb') {
    io.stdout.write('\u001b[2J\u001b[3J\u001b[H');
  } else if (changes.paths.length > 0) {
    say(io, `changed: ${changes.paths.map(show).join(', ')}`);
  }
}
