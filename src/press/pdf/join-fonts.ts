import type { PartFont } from './part.ts';
import { designOf, uniteSubsets } from './truetype.ts';
import { bytesOf } from './values.ts';
import type { PdfWriter } from './write.ts';

/**
 * The fonts of all parts. What each part has of a font is put together, so that the booklet carries
 * every glyph once, however many parts use it.
 */
export class JoinedFonts {
  private readonly writer: PdfWriter;
  private readonly groups = new Map<string, { number: number; subsets: PartFont[] }>();

  constructor(writer: PdfWriter) {
    this.writer = writer;
  }

  /** The object that a page refers to for this font, for now or once `finish` has written it. */
  add(font: PartFont): number {
    const key = `${font.name} ${designOf(font.file)}`;
    const group = this.groups.get(key) ?? { number: this.writer.reserve(), subsets: [] };
    this.groups.set(key, group);
    group.subsets.push(font);
    return group.number;
  }

  /** Fails with an `Error` where two parts disagree on a glyph of the same font. */
  finish(): void {
    for (const [index, { number, subsets }] of [...this.groups.values()].entries()) {
      this.write(number, subsets, `${subsetTag(index)}+${subsets[0]?.name}`);
    }
  }

  private write(number: number, subsets: readonly PartFont[], name: string): void {
    const { writer } = this;
    const united = uniteSubsets(subsets.map((subset) => subset.file));
    const [first] = subsets;
    if (united === null || first === undefined) {
      throw new Error(`the parts do not agree on the font ${name}`);
    }
    const { file, advances } = united;
    const unicode: PartFont['unicode'] = Object.assign({}, ...subsets.map((each) => each.unicode));
    const packed = writer.pack(`/Length1 ${file.length}`, file);
    const descriptor = writer.add(
      `<</Type/FontDescriptor/FontName/${name}${first.descriptor}/FontFile2 ${packed} 0 R>>`,
    );
    const inner = writer.add(
      `<</Type/Font/Subtype/CIDFontType2/BaseFont/${name}/FontDescriptor ${descriptor} 0 R` +
        '/CIDToGIDMap/Identity/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>' +
        `/W[${widthRuns(Object.keys(unicode).map(Number), advances)}]>>`,
    );
    const map = writer.pack('', bytesOf(unicodeMap(unicode)));
    writer.set(
      number,
      `<</Type/Font/Subtype/Type0/BaseFont/${name}/Encoding/Identity-H` +
        `/DescendantFonts[${inner} 0 R]/ToUnicode ${map} 0 R>>`,
    );
  }
}

/** Six letters before the name mark a subset (ISO 32000-1, 9.6.4). */
function subsetTag(index: number): string {
  const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
  return `AAAA${letters[Math.floor(index / 26) % 26]}${letters[index % 26]}`;
}

/** `first [w w w]`, a list to each run of glyphs (9.7.4.3). */
function widthRuns(glyphs: readonly number[], advances: readonly number[]): string {
  let text = '';
  let before = Number.NaN;
  for (const glyph of glyphs) {
    const advance = advances[glyph] ?? 0;
    if (glyph === before + 1) text += ` ${advance}`;
    else text += `${text === '' ? '' : ']'}${glyph}[${advance}`;
    before = glyph;
  }
  return text === '' ? '' : `${text}]`;
}

/** A map from glyphs to text (9.10.3), a hundred lines to a list as the format has it. */
function unicodeMap(unicode: Readonly<Record<string, string>>): string {
  const lines = Object.entries(unicode).map(([glyph, text]) => {
    const code = Number(glyph).toString(16).padStart(4, '0').toUpperCase();
    return `<${code}> <${text}>\n`;
  });
  let lists = '';
  for (let start = 0; start < lines.length; start += 100) {
    const list = lines.slice(start, start + 100);
    lists += `${list.length} beginbfchar\n${list.join('')}endbfchar\n`;
  }
  return (
    '/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n' +
    '/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n' +
    '/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n' +
    `1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n${lists}` +
    'endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n'
  );
}
