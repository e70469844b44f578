import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import {
  causeInWords,
  clubFolder,
  isFolder,
  isTaken,
  Refusal,
  shownPath,
  writeWhole,
} from '../project/index.ts';
import { type Io, say } from './io.ts';
import type { ExitStatus } from './run.ts';

/**
 * `gaugeleaf draft --club`: a project folder to begin with. Never into a folder that holds anything but
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
  const files = await clubFolder(root, given, date, io.cwd);
  for (const [place, text] of files) {
    const path = join(root, place);
    writeWhole(path, text, { within: root });
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
