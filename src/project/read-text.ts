import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs';
import { type Decoded, decodeText } from './decode.ts';
import { causeInWords } from './refusal.ts';
import { isBelow, landing } from './safe-path.ts';

/** No sheet, edition or kind is longer than this many bytes (1 MiB). */
export const longestText = 1024 * 1024;

/** A text file, or why there is none to be had, in plain words. */
export type TextRead =
  | ({ readonly ok: true } & Decoded)
  | { readonly ok: false; readonly message: string; readonly fix: string | null };

/**
 * Reads a text file of the project. Refuses folders, pipes and devices without opening them for
 * longer than a look, and files beyond `longestText`. Never throws.
 */
export function readText(path: string, shown = path): TextRead {
  const bytes = readBounded(path, longestText);
  if (bytes.ok) return { ok: true, ...decodeText(bytes.bytes) };
  switch (bytes.why) {
    case 'folder':
      return refuse(`${shown} is a folder, not a file`, 'give the folder another name');
    case 'not a file':
      return refuse(`${shown} is not an ordinary file`, null);
    case 'too long':
      return refuse(
        `${shown} has ${bytes.size} bytes; a file of more than ${longestText} is not read`,
        'split it, or take out what is no sheet',
      );
    default:
      return refuse(`${shown} cannot be read: ${bytes.why}`, null);
  }
}

/** What is said of a file of the project that stands elsewhere. */
export const leadsOut = 'is a link that leads out of the project; it is not read';

/**
 * Reads a text file that lies in a project by its name; refused where a link leads out of the project's
 * folder, `root`, whose own links are resolved. Never throws.
 */
export function readOwnText(root: string, path: string, shown: string): TextRead {
  const real = landing(path);
  return isBelow(root, real)
    ? readText(real, shown)
    : refuse(`${shown} ${leadsOut}`, 'put the file itself there');
}

function refuse(message: string, fix: string | null): TextRead {
  return { ok: false, message, fix };
}

/** Bytes of an ordinary file of at most so many, or why not. */
export type BytesRead =
  | { readonly ok: true; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly why: string; readonly size: number };

/** Reads an ordinary file of at most `most` bytes. Never throws and never waits on a pipe. */
export function readBounded(path: string, most: number): BytesRead {
  let handle: number;
  try {
    // A named pipe without a writer would otherwise hold the opening up for ever.
    handle = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  } catch (error) {
    return { ok: false, why: causeInWords(error), size: 0 };
  }
  try {
    const facts = fstatSync(handle);
    if (facts.isDirectory()) return { ok: false, why: 'folder', size: 0 };
    if (!facts.isFile()) return { ok: false, why: 'not a file', size: 0 };
    if (facts.size > most) return { ok: false, why: 'too long', size: facts.size };
    const bytes = new Uint8Array(facts.size);
    let filled = 0;
    while (filled < bytes.length) {
      const count = readSync(handle, bytes, filled, bytes.length - filled, null);
      if (count === 0) break;
      filled += count;
    }
    return { ok: true, bytes: filled === bytes.length ? bytes : bytes.subarray(0, filled) };
  } catch (error) {
    return { ok: false, why: causeInWords(error), size: 0 };
  } finally {
    closeSync(handle);
  }
}
