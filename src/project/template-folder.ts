import { type Dirent, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { decodeText } from './decode.ts';
import { byBytes } from './list-sheets.ts';
import { readBounded } from './read-text.ts';
import { isFolder } from './root.ts';
import { locate } from './safe-path.ts';

/** A template, style or logo of more bytes than this, or a font of more than `largestFont`, is refused. */
const largestTemplate = 1024 * 1024;
const largestFont = 8 * 1024 * 1024;

/** The files of one folder of templates. */
export interface TemplateFolder {
  /** By path below the folder, with `/`. */
  readonly texts: ReadonlyMap<string, string>;
  /** By file name. */
  readonly fonts: ReadonlyMap<string, Uint8Array>;
  /** The bytes of `logo.png`; null where there is none. */
  readonly png: Uint8Array | null;
  /** Files that can't be used, and why. */
  readonly unusable: readonly UnusableFile[];
}

/** A file that can't be used. */
export interface UnusableFile {
  /** Below the folder. */
  readonly name: string;
  /** After `it`, or after the file's name: `is too long`. */
  readonly why: string;
  readonly fix: string | null;
}

/** The names of files that hold a club's mark. */
export const logoNames = { svg: 'logo.svg', png: 'logo.png' } as const;

/** Where the fixed words of the templates stand. */
export const wordingFile = 'wording.yaml';

/** Reads a folder of templates; nothing that lies outside `root` is read. Never throws. */
export function readTemplateFolder(root: string, folder: string): TemplateFolder {
  const reading: Reading = {
    root,
    texts: new Map(),
    fonts: new Map(),
    pngs: new Map(),
    unusable: [],
  };
  readBelow(reading, folder, '');
  const { texts, fonts, pngs, unusable } = reading;
  return { texts, fonts, png: pngs.get(logoNames.png) ?? null, unusable };
}

interface Reading {
  readonly root: string;
  readonly texts: Map<string, string>;
  readonly fonts: Map<string, Uint8Array>;
  readonly pngs: Map<string, Uint8Array>;
  readonly unusable: UnusableFile[];
}

function readBelow(reading: Reading, folder: string, below: string): void {
  for (const entry of entriesOf(folder)) {
    if (entry.name.startsWith('.')) continue;
    const name = `${below}${entry.name}`;
    if (isFolderThere(entry, folder)) {
      if (locate(reading.root, folder, entry.name).status !== 'found') {
        const why = 'is a link that leads out of the project; nothing in it is read';
        reading.unusable.push({ name, why, fix: 'put the folder itself there' });
        continue;
      }
      // Four floors are one more than the built-in templates have.
      if (name.split('/').length < 5) readBelow(reading, join(folder, entry.name), `${name}/`);
      continue;
    }
    readFile(reading, folder, entry.name, name);
  }
}

/** A link to a folder is one as well. */
function isFolderThere(entry: Dirent, folder: string): boolean {
  return entry.isDirectory() || (entry.isSymbolicLink() && isFolder(join(folder, entry.name)));
}

function readFile(reading: Reading, folder: string, file: string, name: string): void {
  const isText = /\.(hbs|css|svg)$/.test(file) || name === wordingFile;
  const isFont = /\.(woff2|woff|ttf|otf)$/.test(file);
  if (!isText && !isFont && name !== logoNames.png) return;
  const bad = (why: string, fix: string | null = null): void => {
    reading.unusable.push({ name, why, fix });
  };
  const located = locate(reading.root, folder, file);
  if (located.status !== 'found') {
    bad('leads out of the project, or nowhere; it is not read', 'put the file itself there');
    return;
  }
  const read = readBounded(located.path, isFont ? largestFont : largestTemplate);
  if (!read.ok) bad(`cannot be used: it is ${read.why}`);
  else if (isFont) reading.fonts.set(file, read.bytes);
  else if (!isText) reading.pngs.set(name, read.bytes);
  else {
    const { text, fault } = decodeText(read.bytes);
    if (fault !== null) bad(`cannot be used: ${fault.message}`, fault.fix);
    else reading.texts.set(name, text.replace(/^\ufeff/, ''));
  }
}

function entriesOf(folder: string): Dirent[] {
  const entries: Dirent[] = readdirSync(folder, { withFileTypes: true });
  return entries.sort((first, second) => byBytes(first.name, second.name));
}
