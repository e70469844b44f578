import { inflateSync } from 'node:zlib';
import { zlibSync } from 'fflate';
import type { Flate } from '../press/index.ts';

/** More than any stream of a print, so that a broken one can't fill the memory. */
const largestStream = 256 * 1024 * 1024;

/**
 * Packs by a library and not by the zlib of this Node.js: one version of that packs into other bytes
 * than the next, and a print is the same on every machine. Unpacking gives the same either way.
 */
export const flate: Flate = {
  pack: (bytes) => zlibSync(bytes, { level: 9 }),
  unpack: (bytes) => inflateSync(bytes, { maxOutputLength: largestStream }),
};
