import {
  chmodSync,
  closeSync,
  fsyncSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  statSync,
  unlinkSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { isAlive } from './alive.ts';
import { makeFolder } from './make-folder.ts';
import { causeInWords, Refusal } from './refusal.ts';
import { isBelow, landing } from './safe-path.ts';

let count = 0;

/** What has to hold for a file to be written. */
export interface WriteRule {
  /**
   * The folder that no link may lead the file out of: the project's own, or the one that the command names. A
   * path that is this one, or does not lie below it by name, was named itself, and goes wherever it leads.
   */
  readonly within: string;
  /** What the file held when it was read; not written where somebody has saved it since. */
  readonly was?: string;
}

/**
 * Writes a file whole or not at all: into a new file beside it, out to the disk, then renamed over
 * it, so that a reader and a power cut see the old bytes or the new ones. The folder is made where
 * it is missing; an existing file keeps its mode, a link keeps leading to the file it leads to.
 * Fails with `Refusal`, and leaves nothing behind; what a run that was killed left of the same file
 * is taken away.
 */
export function writeWhole(
  path: string,
  content: string | Uint8Array,
  { within, was }: WriteRule,
): void {
  refuseAstray(path, within);
  let partial: string | null = null;
  try {
    makeFolder(dirname(path));
    const target = landing(path);
    const mode = modeOf(target);
    sweep(target);
    count += 1;
    partial = join(dirname(target), `.${basename(target)}.${process.pid}-${count}.partial`);
    const handle = openSync(partial, 'wx', mode ?? 0o666);
    try {
      const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : content;
      let written = 0;
      while (written < bytes.length) written += writeSync(handle, bytes, written);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    // The process's mask may have taken bits away that the file had.
    if (mode !== null) chmodSync(partial, mode);
    if (was !== undefined) refuseSaved(target, path, was);
    renameSync(partial, target);
    partial = null;
    syncFolder(dirname(target));
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal(`${path} cannot be written: ${causeInWords(error)}`);
  } finally {
    if (partial !== null) discard(partial);
  }
}

function refuseAstray(path: string, within: string): void {
  if (path === within || !isBelow(within, path)) return;
  const there = landing(path);
  if (isBelow(landing(within), there)) return;
  throw new Refusal(
    `${path} leads out of ${within} by a link, to ${there}, and is not written`,
    'take the link away, or name the place itself with --out where the command has it',
  );
}

/** The last moment before the file is replaced is the one that counts: the rest is over by then. */
function refuseSaved(target: string, path: string, was: string): void {
  if (readFileSync(target).equals(Buffer.from(was, 'utf8'))) return;
  throw new Refusal(
    `${path} was saved by another program meanwhile, and is not written over`,
    'give the command again: it begins with what stands there now',
  );
}

/** The permission bits of an existing ordinary file; null where there is none. Throws for a folder. */
function modeOf(path: string): number | null {
  const facts = statSync(path, { throwIfNoEntry: false });
  if (facts === undefined) return null;
  if (facts.isDirectory()) throw Object.assign(new Error('a folder'), { code: 'EISDIR' });
  return facts.mode & 0o7777;
}

/** Removes half-written copies of a file whose writers have ended. */
function sweep(target: string): void {
  const start = `.${basename(target)}.`;
  for (const name of readdirSync(dirname(target))) {
    if (!name.startsWith(start)) continue;
    const writer = /^(\d+)-\d+\.partial$/.exec(name.slice(start.length))?.[1];
    if (writer !== undefined && !isAlive(Number(writer))) discard(join(dirname(target), name));
  }
}

function discard(path: string): void {
  try {
    unlinkSync(path);
  } catch {
    // It was never made, or the disk is gone: the first error says more than this one.
  }
}

/** Makes the rename itself last. Not every system lets a folder be synced; then nothing is lost. */
function syncFolder(folder: string): void {
  try {
    const handle = openSync(folder, 'r');
    try {
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  } catch {
    // See above.
  }
}
