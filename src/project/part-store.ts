import { createHash } from 'node:crypto';
import {
  readdirSync,
  readFileSync,
  renameSync,
  statSync,
  unlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { PartStore } from '../press/index.ts';
import { makeFolder } from './make-folder.ts';
import { packageRoot } from './package-root.ts';

/** What is kept in all: some thousand chapters. */
const largestStore = 256 * 1024 * 1024;

/** A half-written file that is older is nobody's any more, in milliseconds. */
const abandoned = 60 * 60 * 1000;

const digestLength = 32;

/** A store of printed parts in a folder that is bounded. */
export interface PartFolder extends PartStore {
  /** Lets go of what was not used for longest until the rest is within bounds. */
  tidy(): void;
  /** The same after some hundred things were kept, in this run or others: to look at all of them costs. */
  tidyAtTimes(): void;
}

/**
 * Keeps printed parts in a folder, a file each, named by what they were made from and by the program
 * that made them. A file carries the SHA-256 of its name and content: one that is damaged, half written or
 * another's is as good as none. Nothing here ever fails: what can't be kept is printed again.
 */
export function partFolder(folder: string, bound = largestStore): PartFolder {
  const pathOf = (name: string) => join(folder, `${name}.part`);
  let count = 0;
  let isDue = false;
  return {
    nameOf: (text) =>
      createHash('sha256').update(`${markOfProgram()} ${text}`).digest('hex').slice(0, 40),
    read(name) {
      try {
        const path = pathOf(name);
        const bytes = readFileSync(path);
        const content = bytes.subarray(digestLength);
        if (!digest(name, content).equals(bytes.subarray(0, digestLength))) return null;
        const now = new Date();
        utimesSync(path, now, now);
        return content;
      } catch {
        return null;
      }
    },
    keep(name, content) {
      try {
        makeFolder(folder, 0o700);
        count += 1;
        const partial = join(folder, `${name}.${process.pid}-${count}.partial`);
        writeFileSync(partial, Buffer.concat([digest(name, content), content]), { flag: 'wx' });
        renameSync(partial, pathOf(name));
        // Names are digests: one of so many begins so.
        isDue ||= name.startsWith('00');
      } catch {
        // A full disk or a folder of another user: the next print does without.
      }
    },
    tidy: () => tidy(folder, bound),
    tidyAtTimes() {
      if (isDue) tidy(folder, bound);
    },
  };
}

/**
 * The bundler names each chunk by its content, and the entry names all chunks: with any line of the
 * program the entry is another. Run from its sources the program finds nothing of another run.
 */
function markOfProgram(): string {
  mark ??= fileURLToPath(import.meta.url).endsWith('.ts')
    ? `${process.pid} ${Date.now()}`
    : createHash('sha256')
        .update(readFileSync(join(packageRoot(), 'dist', 'gaugeleaf.js')))
        .digest('hex');
  return mark;
}

let mark: string | null = null;

/** Of the name as well: a file that was put in another's place is none. */
function digest(name: string, bytes: Uint8Array): Buffer {
  return createHash('sha256').update(`${name}\n`).update(bytes).digest();
}

function tidy(folder: string, bound: number): void {
  const files: { path: string; size: number; used: number }[] = [];
  try {
    for (const name of readdirSync(folder)) {
      const path = join(folder, name);
      const facts = statSync(path, { throwIfNoEntry: false });
      if (facts === undefined || !facts.isFile()) continue;
      if (name.endsWith('.part')) files.push({ path, size: facts.size, used: facts.mtimeMs });
      else if (name.endsWith('.partial') && Date.now() - facts.mtimeMs > abandoned) discard(path);
    }
  } catch {
    return;
  }
  files.sort((first, second) => second.used - first.used);
  let total = 0;
  for (const { path, size } of files) {
    total += size;
    if (total > bound) discard(path);
  }
}

function discard(path: string): void {
  try {
    unlinkSync(path);
  } catch {
    // Another run was quicker.
  }
}
