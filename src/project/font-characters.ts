import { brotliDecompressSync } from 'node:zlib';

/** The code points that one at least of these fonts has a glyph for. */
export function charactersOf(fonts: Iterable<Uint8Array>): ReadonlySet<number> {
  const covered = new Set<number>();
  for (const font of fonts) for (const code of fontCoverage(font)) covered.add(code);
  return covered;
}

const known = new WeakMap<Uint8Array, ReadonlySet<number>>();

/**
 * The code points that a font's character map has a glyph for, of a WOFF2, TrueType or OpenType
 * file; none for what is no font. Read as the OpenType specification's `cmap` (formats 4 and 12)
 * and W3C WOFF 2.0, sections 4 and 5, have it.
 */
export function fontCoverage(bytes: Uint8Array): ReadonlySet<number> {
  const before = known.get(bytes);
  if (before) return before;
  let codes: ReadonlySet<number>;
  try {
    const table = characterMap(bytes);
    codes = table === null ? new Set() : readCharacterMap(table);
  } catch {
    codes = new Set();
  }
  known.set(bytes, codes);
  return codes;
}

function view(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function characterMap(bytes: Uint8Array): DataView | null {
  const file = view(bytes);
  if (file.getUint32(0) === 0x774f4632) return fromWoff2(bytes, file);
  const count = file.getUint16(4);
  for (let at = 12; at < 12 + count * 16; at += 16) {
    // The tag `cmap`.
    if (file.getUint32(at) !== 0x636d6170) continue;
    const start = file.getUint32(at + 8);
    return view(bytes.subarray(start, start + file.getUint32(at + 12)));
  }
  return null;
}

/** Number of `cmap`, `glyf` and `loca` in WOFF2's list of known tags. */
const CMAP = 0;
const GLYF = 10;
const LOCA = 11;

function fromWoff2(bytes: Uint8Array, file: DataView): DataView | null {
  const count = file.getUint16(12);
  const packedLength = file.getUint32(20);
  let at = 48;
  const number = (): number => {
    // UIntBase128: seven bits a byte, the top bit says that more follow.
    let value = 0;
    for (;;) {
      const byte = file.getUint8(at++);
      value = value * 128 + (byte & 127);
      if (byte < 128) return value;
    }
  };
  let offset = 0;
  let found: { start: number; length: number } | null = null;
  for (let table = 0; table < count; table++) {
    const flags = file.getUint8(at++);
    const tag = flags & 63;
    const own = tag === 63 ? file.getUint32(at) : 0;
    if (tag === 63) at += 4;
    const original = number();
    const isOutline = tag === GLYF || tag === LOCA;
    const version = flags >> 6;
    const transformed = isOutline ? version !== 3 : version !== 0;
    const length = transformed ? number() : original;
    if (tag === CMAP || own === 0x636d6170) found = { start: offset, length };
    offset += length;
  }
  if (found === null) return null;
  const unpacked = brotliDecompressSync(bytes.subarray(at, at + packedLength), {
    // A font that unpacks to more than this is an attack, not a font.
    maxOutputLength: 64 * 1024 * 1024,
  });
  return view(unpacked.subarray(found.start, found.start + found.length));
}

function readCharacterMap(table: DataView): Set<number> {
  const codes = new Set<number>();
  const count = table.getUint16(2);
  for (let index = 0; index < count; index++) {
    const start = table.getUint32(4 + index * 8 + 4);
    const format = table.getUint16(start);
    if (format === 4) readFormat4(table, start, codes);
    if (format === 12) readFormat12(table, start, codes);
  }
  return codes;
}

function readFormat4(table: DataView, start: number, codes: Set<number>): void {
  const doubled = table.getUint16(start + 6);
  const ends = start + 14;
  const starts = ends + doubled + 2;
  const deltas = starts + doubled;
  const ranges = deltas + doubled;
  for (let at = 0; at < doubled; at += 2) {
    const last = table.getUint16(ends + at);
    const range = table.getUint16(ranges + at);
    const delta = table.getUint16(deltas + at);
    for (let code = table.getUint16(starts + at); code <= last && code !== 0xffff; code++) {
      const place = ranges + at + range + (code - table.getUint16(starts + at)) * 2;
      const glyph = range === 0 ? code + delta : table.getUint16(place);
      if ((glyph & 0xffff) !== 0) codes.add(code);
    }
  }
}

function readFormat12(table: DataView, start: number, codes: Set<number>): void {
  const groups = table.getUint32(start + 12);
  for (let group = 0; group < groups; group++) {
    const at = start + 16 + group * 12;
    const last = Math.min(table.getUint32(at + 4), 0x10ffff);
    for (let code = table.getUint32(at); code <= last; code++) codes.add(code);
  }
}
