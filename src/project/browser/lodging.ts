import { spawn } from 'node:child_process';
import { lstatSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Lodging } from '../../press/orders/model.ts';
import { isAlive } from '../alive.ts';
import { causeInWords, Refusal } from '../refusal.ts';

const start = 'gaugeleaf-browser-';

/** Waits for the end of its input, which is that of the program, and takes the folder away: for sh. */
const keeper =
  'cat >/dev/null; n=0; while [ -e "$1" ] && [ $n -lt 20 ]; do sleep 0.2; rm -rf -- "$1"; n=$((n+1)); done';

/**
 * A temporary folder for a browser that is started now. It goes when the browser is closed; where the program is
 * ended by any signal, SIGKILL among them, a small keeper that outlives it takes the folder away; and where that was
 * ended too, the next start does. Fails with `Refusal` where there is no room for temporary files.
 */
export function lodge(): Lodging {
  const temporary = tmpdir();
  sweepLodgings(temporary);
  let folder: string;
  try {
    folder = mkdtempSync(join(temporary, `${start}${process.pid}-`));
    mkdirSync(join(folder, 'profile'));
  } catch (error) {
    throw new Refusal(
      `the browser has no room in ${temporary}: ${causeInWords(error)}`,
      'set TMPDIR to a folder that can be written',
    );
  }
  const ended = keep(folder);
  return {
    profile: join(folder, 'profile'),
    // Elsewhere its sockets would have names too long for the system.
    env: process.platform === 'linux' ? { TMPDIR: folder } : {},
    leave() {
      discard(folder);
      ended();
    },
  };
}

/** Takes away what browsers left whose programs have ended. */
export function sweepLodgings(temporary: string): void {
  let names: readonly string[];
  try {
    names = readdirSync(temporary);
  } catch {
    return;
  }
  for (const name of names) {
    const owner = name.startsWith(start)
      ? /^(\d+)-/.exec(name.slice(start.length))?.[1]
      : undefined;
    if (owner === undefined || isAlive(Number(owner))) continue;
    const path = join(temporary, name);
    const facts = lstatSync(path, { throwIfNoEntry: false });
    // The folder is open to everybody: what another made is left, and so is a link.
    if (facts?.isDirectory() === true && facts.uid === (process.getuid?.() ?? facts.uid)) {
      discard(path);
    }
  }
}

/** Sets the keeper to wait; where the system has no sh, the next start takes the folder away. */
function keep(folder: string): () => void {
  if (process.platform === 'win32') return () => {};
  // In a group of its own: Ctrl-C goes to all of the program's.
  const child = spawn('/bin/sh', ['-c', keeper, 'sh', folder], {
    stdio: ['pipe', 'ignore', 'ignore'],
    detached: true,
  });
  child.on('error', () => {});
  child.stdin.on('error', () => {});
  child.unref();
  (child.stdin as { unref?: () => void }).unref?.();
  return () => child.stdin.end();
}

function discard(folder: string): void {
  try {
    rmSync(folder, { recursive: true, force: true, maxRetries: 3, retryDelay: 50 });
  } catch {
    // What the system does not give away now, the next start asks for again.
  }
}
