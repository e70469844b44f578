import type { Flate } from '../orders/model.ts';
import { FoldStrips } from './fold-strips.ts';
import { JoinedFonts } from './join-fonts.ts';
import { Covers, Frames } from './join-frames.ts';
import { JoinedLinks } from './join-links.ts';
import { JoinedTags } from './join-tags.ts';
import { xmpPacket } from './metadata.ts';
import type { Part, PartPage } from './part.ts';
import { bytesOf, PdfText, writeNumber, writeValue } from './values.ts';
import { PdfWriter } from './write.ts';

/** What the joined file is beyond its parts. */
export interface Joining {
  readonly title: string;
  /** Who publishes it, as written; null leaves it out. */
  readonly author: string | null;
  readonly language: string;
  /** One page for each of the parts' pages: running heads and folios, drawn under them; null for none. */
  readonly furniture: Part | null;
  /** How far what a part drew goes to the right on left pages, in points: it drew for right ones. */
  readonly leftShift: number;
  /**
   * Two distances from the fold, in points, between which nothing of the parts is drawn: the bars in
   * the margin that are the wrong ones on their page. Null draws all.
   */
  readonly foldStrip?: readonly [near: number, far: number] | null;
  /**
   * With all that a reader on a screen wants: tags, outline, links. Without, the pages only, for
   * being put on sheets of paper.
   */
  readonly tagged: boolean;
  /** Asks a reader to print at the true size, with no fitting to the page; not, if absent. */
  readonly trueSize?: boolean;
  /** What is drawn over the page at an index, from 0, as PDF operators; nothing where null or absent. */
  readonly over?: ((page: PartPage, index: number) => string | null) | undefined;
}

/** Every print bears this date: a print's bytes tell of the sheets and not of the hour. */
const printDate = '(D:20000101000000Z)';

/** Pages to a node of the page tree. */
const pagesToNode = 40;

/**
 * Joins parts, in the order of the booklet, to one PDF; the same parts give the same bytes. Links
 * and places hold across parts, each font is carried once, and streams that are alike as well. Fails
 * with an `Error` where the furniture has not as many pages as the parts.
 */
export function joinParts(parts: readonly Part[], joining: Joining, flate: Flate): Uint8Array {
  const count = parts.reduce((sum, part) => sum + part.pages.length, 0);
  const { furniture, over } = joining;
  if (furniture !== null && furniture.pages.length !== count) {
    throw new Error(`there are ${furniture.pages.length} page frames for ${count} pages`);
  }
  const writer = new PdfWriter(flate);
  const catalog = writer.reserve();
  const shared = new SharedThings(writer);
  const frames = new Frames(
    furniture,
    furniture === null ? String : shared.referrer(furniture),
    flate,
    writer,
  );
  const covers = new Covers(writer);
  const shift =
    joining.leftShift === 0
      ? 0
      : writer.add('<<>>', bytesOf(`1 0 0 1 ${writeNumber(joining.leftShift)} 0 cm\n`));
  const strips = new FoldStrips(joining.foldStrip ?? null, writer);
  const pages = Array.from({ length: count }, () => writer.reserve());
  const nodes = new PageTree(pages, writer);
  const shiftOf = (page: number) => (page % 2 === 1 ? joining.leftShift : 0);
  const links = joining.tagged ? new JoinedLinks(parts, pages, shiftOf, writer) : null;
  const tags = joining.tagged ? new JoinedTags(parts, pages, links, writer) : null;
  let at = 0;
  for (const part of parts) {
    const refer = shared.referrer(part);
    for (const page of part.pages) {
      const frame = frames.take(at, refer, page.resources);
      const under = [
        ...frame.contents,
        ...strips.take(at, page),
        ...(shiftOf(at) === 0 ? [] : [shift]),
        ...page.contents.map((thing) => refer(`@${thing}@`).replace(/ 0 R$/, '')),
      ];
      const contents = covers.put(under, over?.(page, at) ?? null);
      writer.set(
        pages[at] ?? 0,
        `<</Type/Page/Parent ${nodes.parentOf(at)} 0 R/MediaBox[${boxOf(page)}]` +
          `/Resources${frame.resources}/Contents[${contents.map((each) => `${each} 0 R`).join(' ')}]` +
          `${tags?.pageEntries(at) ?? ''}${links?.pageEntries(at) ?? ''}>>`,
      );
      at++;
    }
  }
  shared.finish();
  const { title, author: by, language } = joining;
  // Said only once a validator from outside has found it so; what can be told here is held by tests.
  const isUniversal = false;
  const metadata = writer.add(
    '<</Type/Metadata/Subtype/XML>>',
    bytesOfUtf8(xmpPacket({ title, author: by, language, isUniversal })),
  );
  writer.set(
    catalog,
    `<</Type/Catalog/Pages ${nodes.root} 0 R/Metadata ${metadata} 0 R/Lang${text(joining.language)}` +
      `/ViewerPreferences<</DisplayDocTitle true${joining.trueSize ? '/PrintScaling/None' : ''}>>${tags?.finish() ?? ''}${links?.finish() ?? ''}>>`,
  );
  const author = joining.author === null ? '' : `/Author${text(joining.author)}`;
  const info = writer.add(
    `<</Title${text(joining.title)}${author}/Creator(Gaugeleaf)/Producer(Gaugeleaf)` +
      `/CreationDate${printDate}/ModDate${printDate}>>`,
  );
  return writer.finish(catalog, info);
}

/** Metadata stand unpacked, so that whoever looks for files can read them (ISO 32000-1, 14.3.2). */
function bytesOfUtf8(text: string): Uint8Array {
  return new Uint8Array(Buffer.from(text, 'utf8'));
}

function text(words: string): string {
  return writeValue(PdfText.of(words), () => 'null');
}

function boxOf({ width, height }: PartPage): string {
  return `0 0 ${writeNumber(width)} ${writeNumber(height)}`;
}

/** Two floors: a root, and nodes of some pages each. */
class PageTree {
  readonly root: number;
  private readonly parents: number[];

  constructor(pages: readonly number[], writer: PdfWriter) {
    this.root = writer.reserve();
    this.parents = [];
    for (let start = 0; start < pages.length; start += pagesToNode) {
      const kids = pages.slice(start, start + pagesToNode);
      this.parents.push(
        writer.add(
          `<</Type/Pages/Parent ${this.root} 0 R/Count ${kids.length}/Kids[${kids.map((kid) => `${kid} 0 R`).join(' ')}]>>`,
        ),
      );
    }
    const kids = this.parents.map((parent) => `${parent} 0 R`).join(' ');
    writer.set(this.root, `<</Type/Pages/Count ${pages.length}/Kids[${kids}]>>`);
  }

  parentOf(page: number): number {
    return this.parents[Math.floor(page / pagesToNode)] ?? this.root;
  }
}

/** What parts draw with: objects that are alike are written once. */
class SharedThings {
  readonly fonts: JoinedFonts;
  private readonly writer: PdfWriter;
  private readonly known = new Map<string, { number: number; bytes: Uint8Array | null }[]>();

  constructor(writer: PdfWriter) {
    this.writer = writer;
    this.fonts = new JoinedFonts(writer);
  }

  /** Writes what a part's objects refer to: a text with the part's marks becomes one of the file. */
  referrer(part: Part): (text: string) => string {
    const fonts = part.fonts.map((font) => this.fonts.add(font));
    const things = part.things.map(() => 0);
    const thing = (index: number): number => {
      const found = part.things[index];
      if (things[index] === 0 && found !== undefined) {
        things[index] = this.writeOnce(refer(found.text), found.bytes);
      }
      return things[index] ?? 0;
    };
    const refer = (text: string): string =>
      text.replace(/([@~])(\d+)\1/g, (_, kind: string, index: string) => {
        const number = kind === '@' ? thing(Number(index)) : fonts[Number(index)];
        return `${number} 0 R`;
      });
    return refer;
  }

  finish(): void {
    this.fonts.finish();
  }

  private writeOnce(text: string, bytes: Uint8Array | null): number {
    const alike = this.known.get(text) ?? [];
    this.known.set(text, alike);
    for (const each of alike) {
      if (each.bytes === null ? bytes === null : bytes && Buffer.compare(each.bytes, bytes) === 0) {
        return each.number;
      }
    }
    const number = this.writer.add(text, bytes);
    alike.push({ number, bytes });
    return number;
  }
}
