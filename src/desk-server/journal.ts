import { createHash } from 'node:crypto';
import { closeSync, constants, fsyncSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { ChangeSet, Text } from '@codemirror/state';
import { readBounded } from '../project/index.ts';
import { isPrivate, newPrivate } from './hidden-folder.ts';

/** What came back of a journal: the text as it was last typed. */
export interface Recovered {
  readonly text: string;
  /** The mark of the file's text that the typing began with; see `markOf`. */
  readonly base: string;
}

/** Journals are begun anew long before they have this many bytes. */
const longestJournal = 64 * 1024 * 1024;

/** What two texts of a file share if they are the same. */
export function markOf(text: string | null): string {
  return text === null ? 'none' : createHash('sha256').update(text).digest('hex');
}

/**
 * What was typed into one sheet and is not in its file yet: the text that it began with, then a line for each
 * change as it was taken. Every line is with the system before the page is told that its change is taken, so
 * that the end of the program, however sudden, loses none. A journal of a sheet that is saved is removed.
 */
export class Journal {
  readonly #path: string;
  #handle: number | null = null;
  #written = 0;
  #syncing: ReturnType<typeof setTimeout> | null = null;

  constructor(folder: string, id: string) {
    this.#path = join(folder, `${safeName(id)}.journal`);
  }

  /** Writes a change down. `text` is the one before it, `base` the mark of the file's; both go first. */
  add(change: unknown, text: string, base: string): void {
    const line = `${JSON.stringify(change)}\n`;
    if (this.#handle !== null && this.#written > 4 * text.length + 1024 * 1024) this.#close();
    if (this.#handle === null) this.#begin(`${JSON.stringify({ base, text })}\n${line}`);
    else this.#write(this.#handle, line);
    this.#soonToDisk();
  }

  /** What an earlier desk left; null where it left nothing. A last line that was cut off is passed over. */
  recover(): Recovered | null {
    // One that others could write came along with the project: its words are not this person's.
    const read = isPrivate(this.#path) ? readBounded(this.#path, longestJournal) : null;
    if (read?.ok !== true) return null;
    const [head, ...lines] = Buffer.from(read.bytes).toString('utf8').split('\n');
    // The last piece has no line end: it is empty, or was cut off.
    lines.pop();
    try {
      const { base, text } = JSON.parse(head ?? '') as Recovered;
      let doc = Text.of(text.split('\n'));
      for (const line of lines) {
        const changes = ChangeSet.fromJSON(JSON.parse(line));
        if (changes.length !== doc.length) break;
        doc = changes.apply(doc);
      }
      return { base, text: doc.toString() };
    } catch {
      return null;
    }
  }

  /** Takes the journal away: all of it is in the file. */
  clear(): void {
    this.#close();
    rmSync(this.#path, { force: true });
  }

  /** Leaves it where it is, for the next desk. */
  leave(): void {
    this.#close();
  }

  #begin(content: string): void {
    // Whole beside it and then in its place: of an older one and this there is always one that can be read.
    const partial = `${this.#path}.new`;
    rmSync(partial, { force: true });
    const handle = openSync(partial, newPrivate | constants.O_APPEND, 0o600);
    this.#written = 0;
    this.#write(handle, content);
    renameSync(partial, this.#path);
    this.#handle = handle;
  }

  #write(handle: number, content: string): void {
    const bytes = Buffer.from(content, 'utf8');
    let written = 0;
    while (written < bytes.length) written += writeSync(handle, bytes, written);
    this.#written += bytes.length;
  }

  /** The system holds what was written; a power cut takes it along unless it is on the disk. */
  #soonToDisk(): void {
    this.#syncing ??= setTimeout(() => {
      this.#syncing = null;
      if (this.#handle !== null) fsyncSync(this.#handle);
    }, 500).unref();
  }

  #close(): void {
    if (this.#handle !== null) closeSync(this.#handle);
    this.#handle = null;
  }
}

/** A file's name for any sheet's: its own where that is plain, else its mark. */
function safeName(id: string): string {
  return /^[a-z0-9][a-z0-9._-]{0,99}$/i.test(id) ? id : markOf(id).slice(0, 32);
}
