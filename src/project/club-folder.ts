import { basename } from 'node:path';
import { draftSheet, exampleUnits } from '../import/index.ts';
import { builtInKinds } from '../kinds/index.ts';
import { capitalized, scalar } from '../text/index.ts';
import { clubExamples, clubFiles, clubSchemas } from './club-files.ts';
import { packageRoot } from './package-root.ts';
import { programSource } from './program-source.ts';

/**
 * All files of a new project folder, by their places in it: an example sheet of each built-in kind, a
 * workflow for a forge, an entry for pre-commit, and a package.json that says where the program comes
 * from (`given`, see `programSource`). `root` is absolute and gives the title unless one is `wanted`;
 * nothing is written here.
 */
export async function clubFolder(
  root: string,
  wanted: string | undefined,
  given: string | undefined,
  date: string,
  cwd: string,
): Promise<ReadonlyMap<string, string | Uint8Array>> {
  const title = scalar(wanted ?? titleOf(root));
  const program = await programSource(packageRoot(), given, cwd);
  const words = {
    title,
    date,
    program: JSON.stringify(program.spec).slice(1, -1),
    folder: packageNameOf(root),
  };
  const files = new Map<string, string | Uint8Array>([...clubFiles(words), ...clubSchemas()]);
  if (program.file !== null) files.set(program.file.name, program.file.bytes);
  for (const [place, text] of examples(date)) files.set(place, text);
  return files;
}

/** The edition and the example sheets alone, for a folder that no forge and no package manager sees. */
export function plainFolder(
  root: string,
  wanted: string | undefined,
  date: string,
): ReadonlyMap<string, string> {
  const title = scalar(wanted ?? titleOf(root));
  const edition = clubFiles({ title, date, program: '', folder: '' }).get('edition.yaml') ?? '';
  // The schemas that the first line leads to are not there.
  const text = edition.replace(/^# yaml-language-server:.*\n(?:#\n)?/, '');
  return new Map([['edition.yaml', text], ...examples(date)]);
}

function examples(date: string): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  const kinds = builtInKinds();
  for (const [name, unit] of exampleUnits(clubExamples(), kinds)) {
    const kind = kinds.get(name);
    if (kind === undefined) continue;
    const id = `example-${name}`;
    const { maker, model, features } = unit;
    const title = `Nowhere: an invented ${kind.title.toLowerCase()}`;
    const source = { name: 's1', title, kind: null, year: date.slice(0, 4) };
    const order = { kind, maker, model, features, id, date };
    files.set(`sheets/${id}.md`, draftSheet({ ...order, given: { unit, source } }));
  }
  return files;
}

/** A name from the folder's that npm allows in package.json. */
function packageNameOf(root: string): string {
  const words = basename(root)
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return words === '' || words === 'gaugeleaf' ? 'adjustment-sheets' : words.slice(0, 200);
}

/** A title from the folder's name: `wexcombe-register` is `Wexcombe register`. */
function titleOf(root: string): string {
  const words = basename(root)
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
  return words === '' ? 'Adjustment sheets' : capitalized(words);
}
