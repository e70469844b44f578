import type { Flate } from '../orders/model.ts';
import type { PartFont } from './part.ts';
import type { PdfFile } from './read.ts';
import { type PdfDict, type PdfValue, writeValue } from './values.ts';

/**
 * A font as Chromium embeds one: TrueType, its glyphs under their own numbers. Null for any other
 * object, and for a font in another form, which is then kept as it is.
 */
export function readFont(pdf: PdfFile, value: PdfValue, flate: Flate): PartFont | null {
  const font = pdf.dict(value);
  if (font?.get('/Type') !== '/Font' || font.get('/Encoding') !== '/Identity-H') return null;
  const descendants = pdf.get(font.get('/DescendantFonts'));
  const inner = pdf.dict(Array.isArray(descendants) ? descendants[0] : null);
  const descriptor = pdf.dict(inner?.get('/FontDescriptor'));
  const file = pdf.stream(descriptor?.get('/FontFile2'));
  const map = pdf.stream(font.get('/ToUnicode'));
  if (inner === null || descriptor === null || file === null || map === null) return null;
  if (inner.get('/CIDToGIDMap') !== '/Identity') return null;
  if ([file, map].some((stream) => stream.dict.get('/Filter') !== '/FlateDecode')) return null;
  const name = String(font.get('/BaseFont')).replace(/^\/(?:[A-Z]{6}\+)?/, '');
  return {
    name,
    descriptor: entriesOf(descriptor),
    unicode: readUnicode(Buffer.from(flate.unpack(map.bytes)).toString('latin1')),
    file: flate.unpack(file.bytes),
  };
}

function entriesOf(descriptor: PdfDict): string {
  let text = '';
  for (const [key, value] of descriptor) {
    if (['/Type', '/FontName', '/FontFile2'].includes(key)) continue;
    text += `${key} ${writeValue(value, () => 'null')}`;
  }
  return text;
}

/** The lists of a ToUnicode map (9.10.3): single glyphs, and runs that count up. */
function readUnicode(map: string): Record<string, string> {
  const unicode: Record<string, string> = {};
  for (const [, list = ''] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
    for (const [, glyph = '', text = ''] of list.matchAll(/<(\w+)>\s*<(\w+)>/g)) {
      unicode[Number.parseInt(glyph, 16)] = text;
    }
  }
  for (const [, list = ''] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    for (const [, from = '', to = '', text = ''] of list.matchAll(/<(\w+)>\s*<(\w+)>\s*<(\w+)>/g)) {
      const first = Number.parseInt(from, 16);
      const head = text.slice(0, -4);
      const tail = Number.parseInt(text.slice(-4), 16);
      for (let glyph = first; glyph <= Number.parseInt(to, 16); glyph++) {
        unicode[glyph] = head + (tail + glyph - first).toString(16).padStart(4, '0').toUpperCase();
      }
    }
  }
  return unicode;
}
