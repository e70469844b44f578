import { randomBytes } from 'node:crypto';
import { closeSync, openSync, rmSync, writeSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { makeFolder, readText } from '../project/index.ts';
import type { Seat } from './guard.ts';
import { isPrivate, newPrivate } from './hidden-folder.ts';
import { markOf } from './journal.ts';

/** Where the seat of a project is kept: in the user's own cache, so that no project can bring one along. */
export function seatFile(cache: string, root: string): string {
  return join(cache, 'desk', `${markOf(root).slice(0, 32)}.json`);
}

/**
 * The seat that a desk left when it was ended by force: taken again, its open pages find their server back.
 * A desk that is closed leaves none. Null where there is none that can be read.
 */
export function leftSeat(path: string): Seat | null {
  const read = isPrivate(path) ? readText(path) : null;
  if (read?.ok !== true) return null;
  try {
    const { port, place, secret } = JSON.parse(read.text) as Partial<Seat>;
    const sound =
      typeof port === 'number' &&
      Number.isInteger(port) &&
      port > 1023 &&
      port < 65536 &&
      typeof place === 'string' &&
      /^[0-9a-f]{16}$/.test(place) &&
      typeof secret === 'string' &&
      /^[0-9a-f]{64}$/.test(secret);
    return sound ? { port, place, secret } : null;
  } catch {
    return null;
  }
}

/** A new seat, its port still to be found. */
export function newSeat(port = 0): Seat {
  return { port, place: randomHex(8), secret: randomHex(32) };
}

/** Keeps the seat, readable by its user alone. */
export function keepSeat(path: string, seat: Seat): void {
  makeFolder(dirname(path), 0o700);
  rmSync(path, { force: true });
  const handle = openSync(path, newPrivate, 0o600);
  writeSync(handle, JSON.stringify(seat));
  closeSync(handle);
}

export function dropSeat(path: string): void {
  rmSync(path, { force: true });
}

/** Random bytes that nobody guesses, as hexadecimal digits. */
export function randomHex(bytes: number): string {
  return randomBytes(bytes).toString('hex');
}
