import { deflateSync, inflateSync } from 'node:zlib';
import type { Flate } from '../press/index.ts';

/** More than any stream of a print, so that a broken one can't fill the memory. */
const largestStream = 256 * 1024 * 1024;

/** zlib, as this Node.js has it. */
export const flate: Flate = {
  pack: (bytes) => deflateSync(bytes, { level: 9 }),
  unpack: (bytes) => inflateSync(bytes, { maxOutputLength: largestStream }),
};
