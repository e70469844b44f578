import { statSync } from 'node:fs';
import { dirname } from 'node:path';
import type { PictureState } from '../checks/index.ts';
import { pixelsOf, svgFault } from '../text/index.ts';
import { readBounded } from './read-text.ts';
import { locate } from './safe-path.ts';

/** A picture of more bytes than this is not printed (16 MiB). */
export const largestPicture = 16 * 1024 * 1024;

/** What a browser prints, by file ending. */
const types: ReadonlyMap<string, string> = new Map([
  ['png', 'image/png'],
  ['jpg', 'image/jpeg'],
  ['jpeg', 'image/jpeg'],
  ['gif', 'image/gif'],
  ['webp', 'image/webp'],
  ['svg', 'image/svg+xml'],
]);

/** A picture's place on the disk and its media type; `path` and `type` only where it was found. */
export type PictureFile =
  | { readonly status: 'found'; readonly path: string; readonly type: string }
  | { readonly status: Exclude<PictureState, 'found'> };

/**
 * Looks for a picture by the address that a sheet gives. `sheetPath` is the sheet's absolute path:
 * the address counts from its folder. Nothing outside `root` is looked at; of the file is read what tells whether a
 * browser can be handed it.
 */
export function findPicture(root: string, sheetPath: string, url: string): PictureFile {
  const address = url.trim();
  if (address.startsWith('//') || address.startsWith('\\\\')) return { status: 'remote' };
  const scheme = /^([a-z][a-z0-9+.-]*):/i.exec(address)?.[1]?.toLowerCase();
  if (scheme === 'file') return { status: 'outside' };
  // One letter is a drive of Windows: an absolute path.
  if (scheme !== undefined && scheme.length === 1) return { status: 'outside' };
  if (scheme === 'data') return { status: 'unsupported' };
  if (scheme !== undefined) return { status: 'remote' };
  const name = decodePath(address.replace(/[?#].*$/, ''));
  if (name === null) return { status: 'missing' };
  const located = locate(root, dirname(sheetPath), name);
  if (located.status !== 'found') return located;
  const facts = statSync(located.path, { throwIfNoEntry: false });
  if (facts === undefined) return { status: 'missing' };
  const type = types.get(/\.([a-z0-9]+)$/i.exec(name)?.[1]?.toLowerCase() ?? '');
  if (!facts.isFile() || type === undefined || facts.size > largestPicture) {
    return { status: 'unsupported' };
  }
  const fault = contentFault(located.path, type);
  return fault === null ? { status: 'found', path: located.path, type } : { status: fault };
}

/** A picture of more pixels, or of a longer side, takes a browser minutes and all of its memory. */
const mostPixels = 120_000_000;
const longestSide = 30_000;

/** What in a picture's own bytes keeps it from being printed. */
function contentFault(path: string, type: string): 'damaged' | 'unsafe' | 'heavy' | null {
  const read = readBounded(path, largestPicture);
  if (!read.ok || !isOfType(read.bytes, type)) return 'damaged';
  if (type === 'image/svg+xml') {
    return svgFault(Buffer.from(read.bytes).toString('utf8'))?.sort ?? null;
  }
  const pixels = pixelsOf(read.bytes);
  if (pixels === null) return null;
  const { width, height } = pixels;
  const fits = Math.max(width, height) <= longestSide && width * height <= mostPixels;
  return fits ? null : 'heavy';
}

function isOfType(bytes: Uint8Array, type: string): boolean {
  const head = Buffer.from(bytes.subarray(0, 256)).toString('latin1');
  return signatures.get(type)?.some((signature) => signature.test(head)) === true;
}

function decodePath(path: string): string | null {
  try {
    return decodeURIComponent(path);
  } catch {
    return null;
  }
}

const signatures: ReadonlyMap<string, readonly RegExp[]> = new Map([
  // The first bytes as each format's own specification has them, read one character a byte.
  // biome-ignore lint/suspicious/noControlCharactersInRegex: PNG's signature has one.
  ['image/png', [/^\x89PNG\r\n\x1a\n/]],
  ['image/jpeg', [/^\xff\xd8\xff/]],
  ['image/gif', [/^GIF8[79]a/]],
  ['image/webp', [/^RIFF[\s\S]{4}WEBP/]],
  ['image/svg+xml', [/^(?:\xef\xbb\xbf)?\s*<(?:\?xml|!--|!DOCTYPE|svg)/i]],
]);

/**
 * A picture as a `data:` address, so that printing reads no file; null where it is not to be had,
 * or where its bytes are not what its name says.
 */
export function pictureData(
  root: string,
  sheetPath: string,
  url: string,
): { readonly dataUri: string } | null {
  const picture = findPicture(root, sheetPath, url);
  if (picture.status !== 'found') return null;
  const read = readBounded(picture.path, largestPicture);
  if (!read.ok) return null;
  const bytes = Buffer.from(read.bytes.buffer, read.bytes.byteOffset, read.bytes.byteLength);
  return { dataUri: `data:${picture.type};base64,${bytes.toString('base64')}` };
}
