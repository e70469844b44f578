import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import {
  causeInWords,
  clubFolder,
  isFolder,
  isTaken,
  plainFolder,
  Refusal,
  shownPath,
  writeWhole,
} from '../project/index.ts';
import { type Io, say } from './io.ts';
import type { ExitStatus } from './run.ts';

/**
 * `gaugeleaf draft --club`: a project folder to begin with, `plain` without what a forge needs. Never into a folder that holds anything but
 * `.git`.
 */
export async function draftClub(
  folder: string,
  wanted: { readonly program?: string; readonly title?: string; readonly plain?: boolean },
  date: string,
  io: Io,
): Promise<ExitStatus> {
  const { plain = false, program, title } = wanted;
  if (plain && program !== undefined) {
    throw new Refusal(
      'a plain folder does not say where the program comes from',
      'leave --program or --plain out',
    );
  }
  const root = resolve(io.cwd, folder);
  refuseFilled(root, folder);
  const files = plain
    ? plainFolder(root, title, date)
    : await clubFolder(root, title, program, date, io.cwd);
  for (const [place, text] of files) {
    const path = join(root, place);
    writeWhole(path, text, { within: root });
    io.stdout.write(`${shownPath(path, io.cwd)}\n`);
  }
  const look = plain ? 'gaugeleaf desk' : 'npm install && npm run check';
  say(io, `Now go there and look: cd ${folder} && ${look}`);
  return 0;
}

function refuseFilled(root: string, folder: string): void {
  if (!isTaken(root)) return;
  if (!isFolder(root)) throw new Refusal(`${folder} is a file, not a folder`);
  let names: readonly string[];
  try {
    // What the desk keeps while it is open is none of the club's.
    names = readdirSync(root).filter((name) => name !== '.git' && name !== '.gaugeleaf');
  } catch (error) {
    throw new Refusal(`${folder} cannot be looked into: ${causeInWords(error)}`);
  }
  if (names.length === 0) return;
  throw new Refusal(
    `${folder} holds ${names[0]} already, and nothing is written over`,
    'name a new folder, or an empty one',
  );
}
