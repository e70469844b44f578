import type { OutlineEntry, Part, Spot } from './part.ts';
import { PdfText, writeNumber, writeValue } from './values.ts';
import type { PdfWriter } from './write.ts';

interface Link {
  readonly number: number;
  /** Its key in the tree of parents; null until a tag has claimed it. */
  key: number | null;
  readonly text: string;
}

/** The links, named places and outline of a joined file. A link to a place that no part has is left out. */
export class JoinedLinks {
  private readonly writer: PdfWriter;
  private readonly parts: readonly Part[];
  private readonly pages: readonly number[];
  private readonly shiftOf: (page: number) => number;
  private readonly links = new Map<string, Link>();
  private readonly byPage = new Map<number, number[]>();
  private readonly places = new Map<string, string>();
  private readonly used = new Set<string>();
  /** By id: the page of the place and what the heading there is called, for who can't see the link. */
  private readonly told = new Map<string, string>();

  constructor(
    parts: readonly Part[],
    pages: readonly number[],
    shiftOf: (page: number) => number,
    writer: PdfWriter,
  ) {
    this.parts = parts;
    this.pages = pages;
    this.shiftOf = shiftOf;
    this.writer = writer;
    let first = 0;
    for (const part of parts) {
      for (const [id, spot] of Object.entries(part.places)) {
        if (this.places.has(id)) continue;
        this.places.set(id, this.spot(spot, first));
        const heading = headingAt(part.outline, spot);
        const page = String(first + spot.page + 1);
        this.told.set(id, heading === null ? page : `${heading}, ${page}`);
      }
      first += part.pages.length;
    }
    first = 0;
    for (const part of parts) {
      for (const [index, page] of part.pages.entries()) {
        for (const [at, link] of page.links.entries()) {
          this.addLink(first + index, at, link.rect, link.to);
        }
      }
      first += part.pages.length;
    }
  }

  /** The object of a page's link and its key in the tree of parents; null where it was left out. */
  claim(page: number, link: number, key: number): number | null {
    const found = this.links.get(`${page} ${link}`);
    if (found === undefined || found.key !== null) return null;
    found.key = key;
    return found.number;
  }

  pageEntries(page: number): string {
    const numbers = this.byPage.get(page);
    return numbers === undefined
      ? ''
      : `/Annots[${numbers.map((each) => `${each} 0 R`).join(' ')}]`;
  }

  /** Entries of the catalog. To be called once the tags have claimed what is theirs. */
  finish(): string {
    for (const { number, key, text } of this.links.values()) {
      this.writer.set(number, `<<${text}${key === null ? '' : `/StructParent ${key}`}>>`);
    }
    let entries = '';
    const named = [...this.used].sort().map((id) => `${nameOf(id)}${this.places.get(id)}`);
    if (named.length > 0) entries += `/Dests ${this.writer.add(`<<${named.join('')}>>`)} 0 R`;
    const outline = this.outline();
    if (outline !== null) entries += `/Outlines ${outline} 0 R`;
    return entries;
  }

  private addLink(page: number, at: number, rect: readonly number[], to: string): void {
    const shift = this.shiftOf(page);
    const [left = 0, bottom = 0, right = 0, top = 0] = rect;
    const corners = [left + shift, bottom, right + shift, top].map(writeNumber).join(' ');
    let target: string;
    let words = to;
    if (to.startsWith('#')) {
      const id = to.slice(1);
      if (!this.places.has(id)) return;
      this.used.add(id);
      target = `/Dest${nameOf(id)}`;
      words = this.told.get(id) ?? id;
    } else {
      target = `/A<</S/URI/URI${writeValue(new PdfText(to), () => 'null')}>>`;
    }
    const number = this.writer.reserve();
    const text = `/Type/Annot/Subtype/Link/F 4/Border[0 0 0]/Rect[${corners}]${target}/Contents${writeValue(PdfText.of(words), () => 'null')}`;
    this.links.set(`${page} ${at}`, { number, key: null, text });
    this.byPage.set(page, [...(this.byPage.get(page) ?? []), number]);
  }

  private spot({ page, x, y }: Spot, first: number): string {
    const at = first + page;
    const left = Math.max(0, x + this.shiftOf(at));
    return `[${this.pages[at]} 0 R/XYZ ${writeNumber(left)} ${writeNumber(y)} 0]`;
  }

  /** Folded at its first floor, so that a reader sees the chapters and not every operation. */
  private outline(): number | null {
    const root = this.writer.reserve();
    const top: { entry: OutlineEntry; first: number }[] = [];
    let first = 0;
    for (const part of this.parts) {
      for (const entry of part.outline) top.push({ entry, first });
      first += part.pages.length;
    }
    const { kids } = this.outlineFloor(top, root);
    this.writer.set(root, `<</Type/Outlines${kids}/Count ${top.length}>>`);
    return top.length === 0 ? null : root;
  }

  private outlineFloor(
    floor: readonly { entry: OutlineEntry; first: number }[],
    parent: number,
  ): { kids: string } {
    const numbers = floor.map(() => this.writer.reserve());
    for (const [at, { entry, first }] of floor.entries()) {
      const number = numbers[at] ?? 0;
      const below = entry.entries.map((each) => ({ entry: each, first }));
      const { kids } = this.outlineFloor(below, number);
      const before = numbers[at - 1];
      const after = numbers[at + 1];
      this.writer.set(
        number,
        `<</Title${writeValue(PdfText.of(entry.title), () => 'null')}/Parent ${parent} 0 R` +
          `/Dest${this.spot(entry, first)}${before ? `/Prev ${before} 0 R` : ''}` +
          `${after ? `/Next ${after} 0 R` : ''}${kids}` +
          `${below.length > 0 ? `/Count -${below.length}` : ''}>>`,
      );
    }
    if (numbers.length === 0) return { kids: '' };
    return { kids: `/First ${numbers[0]} 0 R/Last ${numbers.at(-1)} 0 R` };
  }
}

function nameOf(id: string): string {
  return `/${id.replace(/[^\w.-]/g, (character) => `#${character.charCodeAt(0).toString(16).padStart(2, '0')}`)}`;
}

/** What the heading at a place is called; null where there is none. */
function headingAt(outline: readonly OutlineEntry[], { page, y }: Spot): string | null {
  for (const entry of outline) {
    if (entry.page === page && Math.abs(entry.y - y) < 3) return entry.title;
    const below = headingAt(entry.entries, { page, x: 0, y });
    if (below !== null) return below;
  }
  return null;
}
