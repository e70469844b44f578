import type { JoinedLinks } from './join-links.ts';
import type { LinkKid, Mark, Part, Tag } from './part.ts';
import type { PdfWriter } from './write.ts';

/** The structure of a joined file: all parts' tags in reading order below one `Document`. */
export class JoinedTags {
  private readonly writer: PdfWriter;
  private readonly pages: readonly number[];
  private readonly links: JoinedLinks | null;
  private readonly root: number;
  private readonly document: number;
  private readonly kids: number[] = [];
  /** By page: the element of each mark. */
  private readonly parents: (number | null)[][];
  private readonly linkParents: number[] = [];
  private readonly names: [name: string, number: number][] = [];

  constructor(
    parts: readonly Part[],
    pages: readonly number[],
    links: JoinedLinks | null,
    writer: PdfWriter,
  ) {
    this.writer = writer;
    this.pages = pages;
    this.links = links;
    this.root = writer.reserve();
    this.document = writer.reserve();
    this.parents = parts.flatMap((part) =>
      part.pages.map(({ marks }) => new Array<number | null>(marks).fill(null)),
    );
    let first = 0;
    for (const part of parts) {
      const naming = new Naming(part.tags, this.names.length);
      for (const tag of part.tags) this.kids.push(this.element(tag, this.document, first, naming));
      first += part.pages.length;
    }
  }

  /** A page's own key is its number, from 0: the keys of links come after all pages. */
  pageEntries(page: number): string {
    return `/StructParents ${page}/Tabs/S`;
  }

  /** Entries of the catalog. */
  finish(): string {
    const { writer } = this;
    const nums = this.parents.map((list, page) => {
      const parents = list.map((each) => (each === null ? 'null' : `${each} 0 R`)).join(' ');
      return `${page}[${parents}]`;
    });
    for (const [at, parent] of this.linkParents.entries()) {
      nums.push(`${this.pages.length + at} ${parent} 0 R`);
    }
    const parentTree = writer.add(`<</Nums[${nums.join(' ')}]>>`);
    const sorted = [...this.names].sort(([one], [two]) => (one < two ? -1 : 1));
    const names = sorted.map(([name, number]) => `(${name})${number} 0 R`).join('');
    const idTree = names === '' ? '' : `/IDTree ${writer.add(`<</Names[${names}]>>`)} 0 R`;
    writer.set(
      this.document,
      `<</S/Document/P ${this.root} 0 R/K[${this.kids.map((kid) => `${kid} 0 R`).join(' ')}]>>`,
    );
    const next = this.pages.length + this.linkParents.length;
    writer.set(
      this.root,
      `<</Type/StructTreeRoot/K ${this.document} 0 R/ParentTree ${parentTree} 0 R` +
        `/ParentTreeNextKey ${next}${idTree}>>`,
    );
    return `/MarkInfo<</Marked true>>/StructTreeRoot ${this.root} 0 R`;
  }

  private element(tag: Tag, parent: number, first: number, naming: Naming): number {
    const number = this.writer.reserve();
    const own = tag.kids.find((kid) => 'mark' in kid)?.page;
    const kids = tag.kids.flatMap((kid) => {
      if ('role' in kid) return [`${this.element(kid, number, first, naming)} 0 R`];
      if ('mark' in kid) return [this.mark(kid, own, first, number)];
      return this.link(kid, first, number);
    });
    let attributes = tag.attributes;
    const headers = tag.headers.map((id) => naming.nameOf(id)).filter((each) => each !== null);
    if (headers.length > 0) {
      attributes += `<</O/Table/Headers[${headers.map((each) => `(${each})`).join('')}]>>`;
    }
    // A note has a name of its own (ISO 14289-1, 7.9).
    const name =
      tag.role === 'Note'
        ? `n${number.toString(36).padStart(6, '0')}`
        : tag.id === null
          ? null
          : naming.nameOf(tag.id);
    if (name !== null) this.names.push([name, number]);
    this.writer.set(
      number,
      `<</S/${tag.role}/P ${parent} 0 R${own === undefined ? '' : `/Pg ${this.pages[first + own]} 0 R`}` +
        `${kids.length === 0 ? '' : kids.length === 1 ? `/K ${kids[0]}` : `/K[${kids.join(' ')}]`}` +
        `${attributes === '' ? '' : `/A[${attributes}]`}${name === null ? '' : `/ID(${name})`}${tag.more}>>`,
    );
    return number;
  }

  private mark(mark: Mark, own: number | undefined, first: number, number: number): string {
    const page = first + mark.page;
    const parents = this.parents[page];
    if (parents !== undefined && mark.mark < parents.length) parents[mark.mark] = number;
    if (mark.page === own) return String(mark.mark);
    return `<</Type/MCR/Pg ${this.pages[page]} 0 R/MCID ${mark.mark}>>`;
  }

  private link(kid: LinkKid, first: number, number: number): string[] {
    const page = first + kid.page;
    const key = this.pages.length + this.linkParents.length;
    const object = this.links?.claim(page, kid.link, key) ?? null;
    if (object === null) return [];
    this.linkParents.push(number);
    return [`<</Type/OBJR/Pg ${this.pages[page]} 0 R/Obj ${object} 0 R>>`];
  }
}

/** Names for the heading cells of one part, only for those that a cell asks for. */
class Naming {
  private readonly names = new Map<number, string>();

  constructor(tags: readonly Tag[], start: number) {
    const asked = new Set<number>();
    const gather = (tag: Tag): void => {
      for (const id of tag.headers) asked.add(id);
      for (const kid of tag.kids) if ('role' in kid) gather(kid);
    };
    for (const tag of tags) gather(tag);
    const found: number[] = [];
    const order = (tag: Tag): void => {
      if (tag.id !== null && asked.has(tag.id)) found.push(tag.id);
      for (const kid of tag.kids) if ('role' in kid) order(kid);
    };
    for (const tag of tags) order(tag);
    // Of one length, so that their order is that of the letters, as a name tree wants it.
    for (const [at, id] of found.entries()) {
      this.names.set(id, `h${(start + at).toString(36).padStart(4, '0')}`);
    }
  }

  /** Null for a cell that no other names as its heading. */
  nameOf(id: number): string | null {
    return this.names.get(id) ?? null;
  }
}
