import { brotliDecompressSync } from 'node:zlib';

/** Numbers of tables in WOFF2's list of known tags (W3C WOFF 2.0, section 4.1). */
const knownTags: Readonly<Record<FontTableName, number>> = { cmap: 0, head: 1, 'OS/2': 6 };
const GLYF = 10;
const LOCA = 11;

/** The tables of a font that are read here; none of them is transformed in WOFF2. */
export type FontTableName = 'cmap' | 'head' | 'OS/2';

/**
 * A table of a WOFF2, TrueType or OpenType font; null where the font has none of that name. May
 * throw for what is no font.
 */
export function fontTable(bytes: Uint8Array, name: FontTableName): DataView | null {
  const file = view(bytes);
  if (file.getUint32(0) === 0x774f4632) return fromWoff2(bytes, file, name);
  const count = file.getUint16(4);
  for (let at = 12; at < 12 + count * 16; at += 16) {
    if (file.getUint32(at) !== tagOf(name)) continue;
    const start = file.getUint32(at + 8);
    return view(bytes.subarray(start, start + file.getUint32(at + 12)));
  }
  return null;
}

function view(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function tagOf(name: FontTableName): number {
  return [...name].reduce((tag, character) => tag * 256 + (character.codePointAt(0) ?? 0), 0);
}

function fromWoff2(bytes: Uint8Array, file: DataView, name: FontTableName): DataView | null {
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
    if (tag === knownTags[name] || own === tagOf(name)) found = { start: offset, length };
    offset += length;
  }
  if (found === null) return null;
  const packed = bytes.subarray(at, at + packedLength);
  // A font that unpacks to more than this is an attack, not a font.
  const unpacked = brotliDecompressSync(packed, { maxOutputLength: 64 * 1024 * 1024 });
  return view(unpacked.subarray(found.start, found.start + found.length));
}
