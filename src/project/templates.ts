import { type Dirent, readdirSync, realpathSync } from 'node:fs';
import { join } from 'node:path';
import { readWording, type Templates } from '../press/index.ts';
import { decodeText } from './decode.ts';
import { capHeightOf } from './font-cap-height.ts';
import { charactersOf } from './font-characters.ts';
import { byBytes } from './list-sheets.ts';
import { packageRoot } from './package-root.ts';
import { readBounded } from './read-text.ts';
import { Refusal } from './refusal.ts';
import { isFolder } from './root.ts';
import { locate } from './safe-path.ts';

/** A template or style of more bytes than this, or a font of more than `largestFont`, is refused. */
const largestTemplate = 1024 * 1024;
const largestFont = 8 * 1024 * 1024;

const wordingFile = 'wording.yaml';

/**
 * The templates that a project prints with: the built-in ones, and over them, file by file, what
 * lies in its own `templates` folder. Fails with `Refusal` for a file that cannot be used.
 */
export function readTemplates(projectRoot: string): Templates {
  const texts = new Map<string, string>();
  const fonts = new Map<string, Uint8Array>();
  const own = join(packageRoot(), 'templates');
  readFolder(own, own, '', texts, fonts);
  const wording = new Map(readWording(texts.get(wordingFile) ?? '').words);
  texts.delete(wordingFile);
  const club = join(projectRoot, 'templates');
  if (isFolder(club) && realpathSync(club) !== realpathSync(own)) {
    readFolder(projectRoot, club, '', texts, fonts);
    // Line by line, not the whole file: what a club does not say stays as it is.
    for (const [key, line] of readWording(texts.get(wordingFile) ?? '').words) {
      if (wording.has(key)) wording.set(key, line);
    }
    texts.delete(wordingFile);
  }
  const capHeights = new Map<string, number>();
  for (const [name, bytes] of fonts) {
    const height = capHeightOf(bytes);
    if (height !== null) capHeights.set(name, height);
  }
  const characters = charactersOf(fonts.values());
  return { texts, fonts, characters, capHeights, wording, logo: null };
}

function readFolder(
  root: string,
  folder: string,
  below: string,
  texts: Map<string, string>,
  fonts: Map<string, Uint8Array>,
): void {
  const entries: Dirent[] = readdirSync(folder, { withFileTypes: true });
  for (const entry of entries.sort((first, second) => byBytes(first.name, second.name))) {
    if (entry.name.startsWith('.')) continue;
    const path = join(folder, entry.name);
    const name = `${below}${entry.name}`;
    if (entry.isDirectory()) {
      // Four floors are one more than the built-in templates have.
      if (name.split('/').length < 5) readFolder(root, path, `${name}/`, texts, fonts);
      continue;
    }
    const isText = /\.(hbs|css|svg)$/.test(entry.name) || name === wordingFile;
    const isFont = /\.(woff2|woff|ttf|otf)$/.test(entry.name);
    if (!isText && !isFont) continue;
    const located = locate(root, folder, entry.name);
    if (located.status !== 'found') {
      throw new Refusal(`${path} leads out of the project, or nowhere; it is not read`);
    }
    const read = readBounded(located.path, isText ? largestTemplate : largestFont);
    if (!read.ok) throw new Refusal(`${path} cannot be used: it is ${read.why}`);
    if (isFont) {
      fonts.set(entry.name, read.bytes);
      continue;
    }
    const decoded = decodeText(read.bytes);
    if (decoded.fault !== null) {
      throw new Refusal(`${path} cannot be used: ${decoded.fault.message}`, decoded.fault.fix);
    }
    texts.set(name, decoded.text.replace(/^\ufeff/, ''));
  }
}
