import {
  chmodSync,
  closeSync,
  constants,
  lstatSync,
  mkdirSync,
  openSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';

/** The project's own hidden folder, and in it what a desk keeps while it is open. */
const hidden = '.gaugeleaf';

/**
 * The folder that a desk keeps its journals in, for its user's eyes only; made where it is missing. Fails
 * with an `Error` where something else is in its place: a link might lead anywhere.
 */
export function deskFolder(root: string): string {
  const outer = ownFolder(join(root, hidden));
  const ignore = join(outer, '.gitignore');
  try {
    // None of it belongs among what a club keeps the history of.
    const handle = openSync(ignore, 'wx', 0o600);
    writeSync(handle, '*\n');
    closeSync(handle);
  } catch {
    // It is there already, or the folder cannot be written to: then the journal says so.
  }
  return ownFolder(join(outer, 'desk'));
}

function ownFolder(path: string): string {
  const facts = lstatSync(path, { throwIfNoEntry: false });
  if (facts === undefined) mkdirSync(path, { mode: 0o700 });
  else if (!facts.isDirectory()) throw new Error(`${path} is no folder: move it away`);
  chmodSync(path, 0o700);
  return path;
}

/** How a file of its user alone is made: anew, and through no link. */
export const newPrivate =
  constants.O_WRONLY | constants.O_CREAT | constants.O_EXCL | (constants.O_NOFOLLOW ?? 0);

/** Whether a file is this user's own, and nobody else may read or write it: one that we made. */
export function isPrivate(path: string): boolean {
  const facts = lstatSync(path, { throwIfNoEntry: false });
  if (facts?.isFile() !== true) return false;
  // Windows knows neither users nor modes here; its profile folders are private by themselves.
  if (process.getuid === undefined) return true;
  return facts.uid === process.getuid() && (facts.mode & 0o077) === 0;
}
