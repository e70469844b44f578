import { oncePer } from '../text/index.ts';
import { fontTable } from './font-table.ts';

/** The code points that one at least of these fonts has a glyph for. */
export function charactersOf(fonts: Iterable<Uint8Array>): ReadonlySet<number> {
  const covered = new Set<number>();
  for (const font of fonts) for (const code of fontCoverage(font)) covered.add(code);
  return covered;
}

/**
 * The code points that a font's character map has a glyph for, of a WOFF2, TrueType or OpenType
 * file; none for what is no font. Read as the OpenType specification's `cmap` (formats 4 and 12)
 * and W3C WOFF 2.0, sections 4 and 5, have it.
 */
export const fontCoverage = oncePer((bytes: Uint8Array): ReadonlySet<number> => {
  try {
    const table = fontTable(bytes, 'cmap');
    return table === null ? new Set() : readCharacterMap(table);
  } catch {
    return new Set();
  }
});

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
