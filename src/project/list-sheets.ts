import { type Dirent, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { causeInWords, Refusal } from './refusal.ts';
import { isFolder, isProjectFolder } from './root.ts';

/** By the bytes of their UTF-8, so that every machine sorts alike. */
export function byBytes(first: string, second: string): number {
  return Buffer.compare(Buffer.from(first), Buffer.from(second));
}

function entries(folder: string): Dirent[] {
  try {
    const all = readdirSync(folder, { withFileTypes: true });
    return all.sort((first, second) => byBytes(first.name, second.name));
  } catch (error) {
    throw new Refusal(`the folder ${folder} cannot be read: ${causeInWords(error)}`);
  }
}

function isSheetName(name: string): boolean {
  return /\.md$/i.test(name) && !name.startsWith('.');
}

/** The names of a folder's entries that a pattern fits, in byte order. */
export function listFiles(folder: string, pattern: RegExp): string[] {
  return entries(folder)
    .map((entry) => entry.name)
    .filter((name) => pattern.test(name) && !name.startsWith('.'));
}

/** Folders that hold no sheets, whatever lies in them. */
const passedOver: ReadonlySet<string> = new Set(['node_modules', 'print', 'templates', 'pictures']);

/**
 * The paths of everything named like a sheet in a folder, in byte order: of a project's folder,
 * what lies in its `sheets`; of any other, all of it with the folders below. A folder or pipe named
 * `x.md` is listed too: reading it says what is wrong. Linked folders are not followed. Fails with
 * `Refusal` where a folder cannot be read.
 */
export function listSheets(folder: string): string[] {
  if (isProjectFolder(folder)) {
    const sheets = join(folder, 'sheets');
    if (!isFolder(sheets)) return [];
    return entries(sheets)
      .filter((entry) => isSheetName(entry.name))
      .map((entry) => join(sheets, entry.name));
  }
  const found: string[] = [];
  // A list to work off and not a recursion: folders may nest deeper than the stack.
  const open = [folder];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    for (const entry of entries(next)) {
      const path = join(next, entry.name);
      if (isSheetName(entry.name)) found.push(path);
      else if (entry.isDirectory() && !entry.name.startsWith('.') && !passedOver.has(entry.name)) {
        open.push(path);
      }
    }
  }
  return found.sort(byBytes);
}
