import { createHash } from 'node:crypto';
import { lstatSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { readBounded } from './read-text.ts';
import { causeInWords, Refusal } from './refusal.ts';
import { isTaken } from './safe-path.ts';
import { writeWhole } from './write-whole.ts';

/** A file for a folder of pages, by its path below it, with `/`. */
export interface PageFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** What a run did to a folder of pages. */
export interface PagesWritten {
  /** How many files it wrote; those that already had the same bytes are not among them. */
  readonly written: number;
  /** Files of earlier runs that this edition has no longer: taken away, ascending. */
  readonly removed: readonly string[];
  /** Such files that somebody has changed since: left where they are, ascending. */
  readonly left: readonly string[];
}

/** The list of what was written, in the form that `sha256sum -c` reads. */
export const listName = 'files.sha256';

/** A list of more bytes than this is none of ours (4 MiB). */
const largestList = 4 * 1024 * 1024;

/** By path, the digests of everything that was ever written there since it was last complete. */
type Written = ReadonlyMap<string, ReadonlySet<string>>;

/**
 * Writes pages into a folder in their order, each whole or not at all, and then takes away what an
 * earlier run wrote and this one has no longer. A list in the folder says what was written; it is
 * brought up to date before the first page and after the last, so that a run that is killed anywhere
 * leaves whole files and a list of all of them. A file that no run wrote is never touched: fails with
 * `Refusal` where one stands in the way, having written nothing, or a link leads out of `within`.
 */
export function writePages(
  folder: string,
  files: readonly PageFile[],
  within = folder,
): PagesWritten {
  const before = readList(join(folder, listName));
  const now = new Map(files.map(({ path, content }) => [path, digestOf(content)]));
  for (const { path } of files) {
    const taken = isTaken(join(folder, path));
    if (taken && !before.has(path) && digestAt(join(folder, path)) !== now.get(path)) {
      throw new Refusal(
        `${join(folder, path)} is there and was not written by gaugeleaf`,
        'choose a folder that is empty or holds pages of an earlier run, or move that file away',
      );
    }
  }
  const both = new Map([...before].map(([path, digests]) => [path, new Set(digests)]));
  for (const [path, digest] of now) both.set(path, (both.get(path) ?? new Set()).add(digest));
  writeList(folder, within, both);
  let written = 0;
  for (const { path, content } of files) {
    // What has not changed keeps its date, for whoever sends only what is newer to a server.
    if (digestAt(join(folder, path)) === now.get(path)) continue;
    writeWhole(join(folder, path), content, { within });
    written += 1;
  }
  const removed: string[] = [];
  const left: string[] = [];
  for (const [path, digests] of before) {
    if (now.has(path) || !isTaken(join(folder, path))) continue;
    if (digests.has(digestAt(join(folder, path)) ?? '')) {
      remove(join(folder, path));
      removed.push(path);
    } else left.push(path);
  }
  writeList(folder, within, new Map([...now].map(([path, digest]) => [path, new Set([digest])])));
  return { written, removed: removed.sort(), left: left.sort() };
}

function readList(path: string): Written {
  const read = isTaken(path) ? readBounded(path, largestList) : null;
  const files = new Map<string, Set<string>>();
  if (read === null || !read.ok) return files;
  for (const line of Buffer.from(read.bytes).toString('utf8').split('\n')) {
    const [, digest, name] = /^([0-9a-f]{64}) {2}([^\\\0]+)$/.exec(line) ?? [];
    // A list that leads out of the folder is none of ours.
    if (digest === undefined || name === undefined || !isInside(name)) continue;
    files.set(name, (files.get(name) ?? new Set()).add(digest));
  }
  return files;
}

function isInside(name: string): boolean {
  return name.split('/').every((part) => part !== '' && part !== '.' && part !== '..');
}

function writeList(folder: string, within: string, files: Written): void {
  const lines = [...files].flatMap(([path, digests]) =>
    [...digests].map((digest) => `${digest}  ${path}\n`),
  );
  const text = lines.sort((a, b) => (a.slice(66) + a < b.slice(66) + b ? -1 : 1)).join('');
  const path = join(folder, listName);
  if (digestAt(path) !== digestOf(text)) writeWhole(path, text, { within });
}

function digestOf(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/** The digest of an ordinary file; null for none, a link, a folder. */
function digestAt(path: string): string | null {
  try {
    return lstatSync(path).isFile() ? digestOf(readFileSync(path)) : null;
  } catch {
    return null;
  }
}

function remove(path: string): void {
  try {
    rmSync(path);
  } catch (error) {
    throw new Refusal(`${path} cannot be taken away: ${causeInWords(error)}`);
  }
}
