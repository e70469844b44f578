import type { Flate } from '../orders/model.ts';
import { artifactsMarked, wholeWords } from './marked-content.ts';
import { packText } from './pack-text.ts';
import type { PartFont, PartPage, Resources, Thing } from './part.ts';
import type { PdfFile } from './read.ts';
import { readFont } from './read-font.ts';
import { uniteSubsets } from './truetype.ts';
import { bytesOf, isDict, PdfRef, type PdfValue, writeValue } from './values.ts';

/** The bytes of a stream that is packed or, as Chromium leaves very short ones, not; `''` for no stream. */
export function unpackedThing({ text, bytes }: Thing, flate: Flate): string {
  if (bytes === null) return '';
  const plain = text.includes('/FlateDecode') ? flate.unpack(bytes) : bytes;
  return Buffer.from(plain.buffer, plain.byteOffset, plain.byteLength).toString('latin1');
}

/** Collects what pages draw with, each object once. */
export class Gathered {
  readonly things: Thing[] = [];
  readonly fonts: PartFont[] = [];
  private readonly pdf: PdfFile;
  private readonly flate: Flate;
  private readonly written = new Map<number, string>();

  constructor(pdf: PdfFile, flate: Flate) {
    this.pdf = pdf;
    this.flate = flate;
  }

  contents(value: PdfValue | undefined): number[] {
    const found = this.pdf.get(value);
    const streams = Array.isArray(found) ? found : [value ?? null];
    return streams.flatMap((each) => {
      if (!(each instanceof PdfRef)) return [];
      return [Number(this.refer(each).slice(1, -1))];
    });
  }

  /** All that are dictionaries: `/ProcSet` is none, and means nothing since PDF 1.4 (14.2). */
  resources(value: PdfValue): Resources {
    const resources: Record<string, Record<string, string>> = {};
    for (const [category, list] of isDict(value) ? value : []) {
      const named = this.pdf.dict(list);
      if (named === null) continue;
      const entries = [...named].map(([name, entry]) => [name, this.text(entry)] as const);
      resources[category] = Object.fromEntries(entries);
    }
    return resources;
  }

  /**
   * Writes what pages say in the short way, which is most of what a print weighs; of pages with tags, so
   * that it is read with its words whole and nothing besides.
   */
  packTexts(pages: readonly PartPage[]): void {
    const advances = this.fonts.map(({ file }) => uniteSubsets([file])?.advances ?? null);
    const letters = this.fonts.map(({ unicode }) => new Letters(unicode));
    for (const { contents, resources, marks } of pages) {
      const fontOf = (name: string) =>
        /^~(\d+)~$/.exec(resources['/Font']?.[`/${name}`] ?? '')?.[1] ?? null;
      const advancesOf = (name: string) => advances[Number(fontOf(name) ?? Number.NaN)] ?? null;
      const lettersOf = (name: string) => letters[Number(fontOf(name) ?? Number.NaN)] ?? null;
      for (const content of contents) {
        const thing = this.things[content];
        if (!thing?.text.includes('/FlateDecode')) continue;
        let packed = packText(unpackedThing(thing, this.flate), advancesOf);
        if (marks > 0) {
          packed = wholeWords(
            packed,
            (font) => lettersOf(font)?.space ?? null,
            (font, glyph) => lettersOf(font)?.partsAfter.has(glyph) ?? false,
          );
          packed = artifactsMarked(packed);
        }
        this.things[content] = { text: thing.text, bytes: this.flate.pack(bytesOf(packed)) };
      }
    }
  }

  private text(value: PdfValue): string {
    return writeValue(value, (ref) => this.refer(ref));
  }

  private refer(ref: PdfRef): string {
    const known = this.written.get(ref.number);
    if (known !== undefined) return known;
    const font = readFont(this.pdf, ref, this.flate);
    let written: string;
    if (font !== null) {
      written = `~${this.fonts.push(font) - 1}~`;
      this.written.set(ref.number, written);
      return written;
    }
    const index = this.things.push({ text: 'null', bytes: null }) - 1;
    written = `@${index}@`;
    this.written.set(ref.number, written);
    const stream = this.pdf.stream(ref);
    const dict = stream === null ? null : new Map(stream.dict);
    dict?.delete('/Length');
    this.things[index] = {
      text: this.text(dict ?? this.pdf.get(ref)),
      bytes: stream?.bytes ?? null,
    };
    return written;
  }
}

/** What of a font's letters says where words end: glyphs as four figures of hex. */
class Letters {
  readonly space: string | null = null;
  readonly partsAfter = new Set<string>();

  constructor(unicode: PartFont['unicode']) {
    for (const [glyph, code] of Object.entries(unicode)) {
      const hex = Number(glyph).toString(16).padStart(4, '0');
      if (code === '0020') this.space = hex;
      // Hyphen, soft and firm, solidus, dashes, no-break spaces, the space itself.
      if (/^(?:002D|00AD|2010|2011|002F|2044|2013|2014|00A0|202F|2009)$/i.test(code)) {
        this.partsAfter.add(hex);
      }
    }
  }
}
