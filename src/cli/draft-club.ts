import { readdirSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { draftSheet } from '../import/draft-sheet.ts';
import { exampleUnits } from '../import/example-units.ts';
import { builtInKinds } from '../kinds/index.ts';
import { clubExamples, clubFiles, clubSchemas } from '../project/club-files.ts';
import { packageRoot } from '../project/package-root.ts';
import { programSource } from '../project/program-source.ts';
import { causeInWords, Refusal } from '../project/refusal.ts';
import { isFolder, shownPath } from '../project/root.ts';
import { isTaken } from '../project/safe-path.ts';
import { writeWhole } from '../project/write-whole.ts';
import { scalar } from '../text/yaml-scalar.ts';
import { type Io, say } from './io.ts';
import type { ExitStatus } from './run.ts';

/**
 * `gaugeleaf draft --club`: a project folder to begin with, with an example sheet of each built-in
 * kind, a workflow for a forge, an entry for pre-commit, and a package.json that says where the
 * program comes from (`given`, see `programSource`). Never into a folder that holds anything but
 * `.git`.
 */
export async function draftClub(
  folder: string,
  given: string | undefined,
  date: string,
  io: Io,
): Promise<ExitStatus> {
  const root = resolve(io.cwd, folder);
  refuseFilled(root, folder);
  const title = scalar(titleOf(root));
  const program = await programSource(packageRoot(), given, io.cwd);
  const words = {
    title,
    date,
    program: JSON.stringify(program.spec).slice(1, -1),
    folder: packageNameOf(root),
  };
  const files = new Map<string, string | Uint8Array>([...clubFiles(words), ...clubSchemas()]);
  if (program.file !== null) files.set(program.file.name, program.file.bytes);
  const kinds = builtInKinds();
  for (const [name, unit] of exampleUnits(clubExamples(), kinds)) {
    const kind = kinds.get(name);
    if (kind === undefined) continue;
    const id = `example-${name}`;
    const schema = '../schemas/sheet.schema.json';
    const { maker, model, features } = unit;
    const title = `Nowhere: an invented ${kind.title.toLowerCase()}`;
    const source = { name: 's1', title, kind: null, year: date.slice(0, 4) };
    const order = { kind, maker, model, features, id, date, schema };
    files.set(`sheets/${id}.md`, draftSheet({ ...order, given: { unit, source } }));
  }
  for (const [place, text] of files) {
    const path = join(root, place);
    writeWhole(path, text);
    io.stdout.write(`${shownPath(path, io.cwd)}\n`);
  }
  say(io, `Now go there and look: cd ${folder} && npm install && npm run check`);
  return 0;
}

function refuseFilled(root: string, folder: string): void {
  if (!isTaken(root)) return;
  if (!isFolder(root)) throw new Refusal(`${folder} is a file, not a folder`);
  let names: readonly string[];
  try {
    names = readdirSync(root).filter((name) => name !== '.git');
  } catch (error) {
    throw new Refusal(`${folder} cannot be looked into: ${causeInWords(error)}`);
  }
  if (names.length === 0) return;
  throw new Refusal(
    `${folder} holds ${names[0]} already, and nothing is written over`,
    'name a new folder, or an empty one',
  );
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
  return words === '' ? 'Adjustment sheets' : `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
