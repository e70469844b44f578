import { realpathSync } from 'node:fs';
import { join } from 'node:path';
import { readWording, type Templates } from '../press/index.ts';
import { capHeightOf } from './font-cap-height.ts';
import { charactersOf } from './font-characters.ts';
import { packageRoot } from './package-root.ts';
import { Refusal } from './refusal.ts';
import { isFolder } from './root.ts';
import {
  logoNames,
  readTemplateFolder,
  type TemplateFolder,
  wordingFile,
} from './template-folder.ts';

/** The folder of the built-in templates. */
export function builtInFolder(): string {
  return join(packageRoot(), 'templates');
}

/** A project's own `templates` folder; null where it has none, or where that is the built-in one. */
export function clubFolder(projectRoot: string): string | null {
  const club = join(projectRoot, 'templates');
  if (!isFolder(club)) return null;
  return realpathSync(club) === realpathSync(builtInFolder()) ? null : club;
}

/**
 * The templates that a project prints with: the built-in ones, and over them, file by file (the words
 * line by line), what lies in its own `templates` folder. Fails with `Refusal` for a file that cannot
 * be used.
 */
export function readTemplates(projectRoot: string): Templates {
  const own = readWhole(builtInFolder(), builtInFolder());
  const folder = clubFolder(projectRoot);
  const club = folder === null ? null : readWhole(projectRoot, folder);
  const texts = new Map([...own.texts, ...(club?.texts ?? [])]);
  const fonts = new Map([...own.fonts, ...(club?.fonts ?? [])]);
  texts.delete(wordingFile);
  const wording = new Map(readWording(own.texts.get(wordingFile) ?? '').words);
  for (const [key, line] of readWording(club?.texts.get(wordingFile) ?? '').words) {
    if (wording.has(key)) wording.set(key, line);
  }
  const capHeights = new Map<string, number>();
  for (const [name, bytes] of fonts) {
    const height = capHeightOf(bytes);
    if (height !== null) capHeights.set(name, height);
  }
  const characters = charactersOf(fonts.values());
  return { texts, fonts, characters, capHeights, wording, logo: logoOf(club) };
}

function readWhole(root: string, folder: string): TemplateFolder {
  const read = readTemplateFolder(root, folder);
  const [bad] = read.unusable;
  if (bad !== undefined) throw new Refusal(`${join(folder, bad.name)} ${bad.why}`, bad.fix);
  return read;
}

/** A club's mark as a `data:` address. Of two, the drawn one, which is sharp at every size. */
function logoOf(club: TemplateFolder | null): string | null {
  const svg = club?.texts.get(logoNames.svg);
  if (svg !== undefined) {
    return `data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}`;
  }
  const png = club?.png ?? null;
  return png === null ? null : `data:image/png;base64,${Buffer.from(png).toString('base64')}`;
}
