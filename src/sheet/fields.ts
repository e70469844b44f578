import type { JetNumbering, WireGauge } from '../quantity/index.ts';
import type { Dimension, GaugeBook, Reading } from '../quantity/model.ts';
import type { Placed, PlacedMap, PlacedNode, PlacedScalar, Span } from '../text/index.ts';
import type { Citation, PlacedSize } from './model.ts';
import { nameAmong } from './names.ts';
import { readTool } from './tool.ts';

/** Reads a size; `readStatement` of `quantity`, or what a test puts in its place. */
export type ReadSize = (
  text: string,
  options: {
    readonly gauges: GaugeBook;
    readonly expect?: readonly Dimension[] | undefined;
    readonly swg?: WireGauge | null;
    readonly jets?: JetNumbering | null | undefined;
  },
) => Reading;

/**
 * Takes typed values out of placed YAML, whatever its shape: what has the wrong shape comes back as
 * null or left out, and the schema says so.
 */
export class Fields {
  readonly #text: string;
  readonly #readSize: ReadSize;
  readonly #gauges: GaugeBook;
  readonly #swg: WireGauge | null;
  readonly #sources: ReadonlySet<string>;

  constructor(
    text: string,
    readSize: ReadSize,
    gauges: GaugeBook,
    swg: WireGauge | null,
    sources: ReadonlySet<string> = new Set(),
  ) {
    this.#text = text;
    this.#readSize = readSize;
    this.#gauges = gauges;
    this.#swg = swg;
    this.#sources = sources;
  }

  /** A scalar's text; null for anything else, an empty one included. */
  text(node: PlacedNode | undefined): Placed<string> | null {
    return node?.kind === 'scalar' ? this.#placed(node.text, node.span) : null;
  }

  /** A number; null for a text, even one of digits in quotes. */
  number(node: PlacedNode | undefined): Placed<number> | null {
    if (node?.kind !== 'scalar' || typeof node.value !== 'number') return null;
    return this.#placed(node.value, node.span);
  }

  /** A year, also out of `about 1948` and `1948-1950`: its first. */
  year(node: PlacedNode | undefined): Placed<number> | null {
    if (node?.kind !== 'scalar') return null;
    const digits = /(?<!\d)\d{4}(?!\d)/.exec(node.text)?.[0];
    return digits === undefined ? null : this.#placed(Number(digits), node.span);
  }

  /** The scalars of a list, or a single scalar as a list of one. */
  texts(node: PlacedNode | undefined): readonly Placed<string>[] {
    return scalars(node).map((item) => this.#placed(item.text, item.span));
  }

  /** A size; `expect` are the dimensions it may have, `jets` what a jet's number says. */
  size(
    node: PlacedNode | undefined,
    expect?: readonly Dimension[],
    jets?: JetNumbering | null,
  ): PlacedSize | null {
    if (node?.kind !== 'scalar') return null;
    const { text, span } = node;
    const options = { gauges: this.#gauges, expect, swg: this.#swg, jets };
    return { span, text, reading: this.#readSize(text, options) };
  }

  /** What a setting is measured with: a size or a gauge's name, a factory gauge by number, an instrument. */
  gauge(node: PlacedNode | undefined): PlacedSize | null {
    if (node?.kind !== 'scalar') return null;
    const { text, span } = node;
    const options = { gauges: this.#gauges, expect: ['length'] as const, swg: this.#swg };
    return { span, text, reading: readTool(text, options, this.#readSize) };
  }

  sizes(
    node: PlacedNode | undefined,
    expect?: readonly Dimension[],
    jets?: JetNumbering | null,
  ): readonly PlacedSize[] {
    return scalars(node).flatMap((item) => this.size(item, expect, jets) ?? []);
  }

  /** `m48 p. 31` or a list of such; the name is the first word, the page what follows it. */
  citations(node: PlacedNode | undefined): readonly Citation[] {
    return scalars(node).map((item) => {
      const { text, span } = item;
      const match = /^(\s*)([^\s,;]+)[\s,;]*(.*)$/s.exec(text);
      const [, lead = '', name = text, page = ''] = match ?? [];
      const start = span.start + lead.length;
      // Escapes and folded lines move characters about: the whole scalar is then the place.
      const exact = this.#text.startsWith(name, start);
      const place = exact ? { start, end: start + name.length } : span;
      const id = nameAmong(name, this.#sources) ?? name;
      return { span, source: this.#placed(name, place), id, page: page.trim() || null };
    });
  }

  #placed<T>(value: T, span: Span): Placed<T> {
    return { value, span, source: this.#text.slice(span.start, span.end) };
  }
}

/** The value under a key of a mapping; undefined for another shape or a missing key. */
export function under(node: PlacedNode | null | undefined, key: string): PlacedNode | undefined {
  return node?.kind === 'map' ? node.entries.get(key)?.value : undefined;
}

/** The entries of a mapping; none for another shape. */
export function entriesOf(node: PlacedNode | null | undefined): PlacedMap['entries'] {
  return node?.kind === 'map' ? node.entries : noEntries;
}

/** The items of a list; anything else that is there is a list of one. */
export function itemsOf(node: PlacedNode | null | undefined): readonly PlacedNode[] {
  if (!node || node.kind === 'null') return [];
  return node.kind === 'list' ? node.items : [node];
}

const noEntries: PlacedMap['entries'] = new Map();

function scalars(node: PlacedNode | undefined): readonly PlacedScalar[] {
  return itemsOf(node).filter((item) => item.kind === 'scalar');
}
