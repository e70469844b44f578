import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { FileSort } from '../desk-page/model.ts';
import { makeFolder, Refusal, readOwnText, writeWhole } from '../project/index.ts';
import { markOf } from './journal.ts';

/** Where a sheet lies, and where what gives way to it is kept. */
export interface SheetPlace {
  readonly id: string;
  readonly path: string;
  /** The project's folder. */
  readonly root: string;
  /** How reports show it. */
  readonly file: string;
  /** Where journals lie. */
  readonly folder: string;
  readonly sort: FileSort;
}

/** The file of a sheet as it stands on the disk. */
export interface FileRead {
  /** Null where there is none. */
  readonly text: string | null;
  /** Why it cannot be written by what was read of it; null where it can. */
  readonly locked: string | null;
}

/** Reads it. Fails with `Refusal` where it is no text, or leads out of the project. */
export function readSheetFile({ path, root, file }: SheetPlace): FileRead {
  if (!existsSync(path)) return { text: null, locked: null };
  const read = readOwnText(root, path, file);
  if (!read.ok) throw new Refusal(read.message, read.fix);
  const locked =
    read.fault === null
      ? null
      : `${file} is not UTF-8 throughout (${read.fault.message}), and saving it would spoil what is not`;
  return { text: read.text, locked };
}

/** Keeps a text that gave way to another, under a name that only it has. */
export function setAside({ folder, id, sort }: SheetPlace, text: string): void {
  const aside = join(folder, 'aside');
  makeFolder(aside, 0o700);
  const name = id.replaceAll('/', '-').slice(0, 80);
  const end = sort === 'sheet' ? '.md' : '.yaml';
  writeWhole(join(aside, `${name}-${markOf(text).slice(0, 12)}${end}`), text, { within: aside });
}
