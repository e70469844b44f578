import type { Flate } from '../orders/model.ts';
import { Gathered, unpackedThing } from './gather.ts';
import type { OutlineEntry, Part, PartLink, PartPage, Spot } from './part.ts';
import { type PdfFile, readPdfFile } from './read.ts';
import { readTags } from './read-tags.ts';
import { type PdfDict, PdfRef, PdfText, type PdfValue } from './values.ts';

/** What links are led to that leave their part: a host that is none (RFC 6761, 6.4). */
export const elsewhere = 'https://part.invalid/';

/** The number of pages of a browser's PDF. Fails with `PressStopped` where it can't be read. */
export async function pageCount(bytes: Uint8Array): Promise<number> {
  const pdf = await readPdfFile(bytes);
  return pageReferences(pdf, pdf.dict(pdf.trailer.get('/Root'))?.get('/Pages')).length;
}

/**
 * Takes a browser's PDF apart. `trueSize`: pages that are smaller by next to nothing count as shrunk,
 * too. Fails with `PressStopped` where it can't be read.
 */
export async function readPart(
  bytes: Uint8Array,
  flate: Flate,
  { trueSize = false }: { readonly trueSize?: boolean } = {},
): Promise<Part> {
  const least = trueSize ? 0.74999 : 0.7485;
  const pdf = await readPdfFile(bytes);
  const catalog = pdf.dict(pdf.trailer.get('/Root')) ?? new Map();
  const references = pageReferences(pdf, catalog.get('/Pages'));
  const pageOf = new Map(references.map(({ number }, page) => [number, page]));
  const spotOf = (value: PdfValue | undefined): Spot | null => readSpot(pdf, value, pageOf);
  const annotations = new Map<number, { page: number; link: number }>();
  const gathered = new Gathered(pdf, flate);
  const pages = references.map((reference, page): PartPage => {
    const dict = pdf.dict(reference) ?? new Map();
    const [, , width = 0, height = 0] = numbers(pdf, inherited(pdf, dict, '/MediaBox'));
    return {
      width,
      height,
      contents: gathered.contents(dict.get('/Contents')),
      resources: gathered.resources(inherited(pdf, dict, '/Resources')),
      links: readLinks(pdf, dict, (object, link) => annotations.set(object, { page, link })),
      marks: marksOf(pdf, catalog, dict),
    };
  });
  gathered.packTexts(pages);
  return {
    pages,
    things: gathered.things,
    fonts: gathered.fonts,
    tags: readTags(pdf, catalog, { pageOf, annotations }),
    places: readPlaces(pdf, catalog, spotOf),
    outline: readOutline(pdf, pdf.dict(catalog.get('/Outlines')), spotOf),
    shrunk: pages.flatMap(({ contents }, page) => {
      const first = gathered.things[contents[0] ?? -1];
      return first !== undefined && isShrunk(unpackedThing(first, flate), least) ? [page] : [];
    }),
  };
}

function pageReferences(pdf: PdfFile, node: PdfValue | undefined): PdfRef[] {
  const kids = pdf.get(pdf.dict(node)?.get('/Kids'));
  if (!Array.isArray(kids)) return node instanceof PdfRef ? [node] : [];
  return kids.flatMap((kid) => pageReferences(pdf, kid));
}

function inherited(pdf: PdfFile, page: PdfDict, key: string): PdfValue {
  for (let at: PdfDict | null = page; at !== null; at = pdf.dict(at.get('/Parent'))) {
    if (at.has(key)) return pdf.get(at.get(key));
  }
  return null;
}

function numbers(pdf: PdfFile, value: PdfValue | undefined): number[] {
  const list = pdf.get(value);
  return Array.isArray(list) ? list.map((each) => Number(pdf.get(each))) : [];
}

function readLinks(
  pdf: PdfFile,
  page: PdfDict,
  note: (object: number, link: number) => void,
): PartLink[] {
  const links: PartLink[] = [];
  const annotations = pdf.get(page.get('/Annots'));
  for (const each of Array.isArray(annotations) ? annotations : []) {
    const dict = pdf.dict(each);
    const to = dict === null ? null : targetOf(pdf, dict);
    if (dict === null || to === null) continue;
    const link = links.push({ rect: numbers(pdf, dict.get('/Rect')), to }) - 1;
    if (each instanceof PdfRef) note(each.number, link);
  }
  return links;
}

function targetOf(pdf: PdfFile, annotation: PdfDict): string | null {
  const name = pdf.get(annotation.get('/Dest'));
  if (typeof name === 'string') return `#${nameText(name)}`;
  if (name instanceof PdfText) return `#${name.bytes}`;
  const address = pdf.get(pdf.dict(annotation.get('/A'))?.get('/URI'));
  if (!(address instanceof PdfText)) return null;
  const { bytes } = address;
  return bytes.startsWith(elsewhere) ? bytes.slice(elsewhere.length) : bytes;
}

function nameText(name: string): string {
  return name
    .slice(1)
    .replace(/#([0-9a-f]{2})/gi, (_, code) => String.fromCharCode(Number.parseInt(code, 16)));
}

/** How many marks the tree of parents knows on a page. */
function marksOf(pdf: PdfFile, catalog: PdfDict, page: PdfDict): number {
  const key = page.get('/StructParents');
  const root = pdf.dict(catalog.get('/StructTreeRoot'));
  const list = pdf.get(pdf.dict(root?.get('/ParentTree'))?.get('/Nums'));
  if (typeof key !== 'number' || !Array.isArray(list)) return 0;
  const at = list.findIndex((each, index) => index % 2 === 0 && each === key);
  const parents = at < 0 ? null : pdf.get(list[at + 1]);
  return Array.isArray(parents) ? parents.length : 0;
}

function readSpot(
  pdf: PdfFile,
  value: PdfValue | undefined,
  pageOf: ReadonlyMap<number, number>,
): Spot | null {
  const list = pdf.get(value);
  if (!Array.isArray(list)) return null;
  const [target, , x, y] = list;
  const page = target instanceof PdfRef ? pageOf.get(target.number) : undefined;
  if (page === undefined) return null;
  return { page, x: Number(x ?? 0), y: Number(y ?? 0) };
}

/** Named places, as Chromium writes them: a dictionary of arrays that begin with a page. */
function readPlaces(
  pdf: PdfFile,
  catalog: PdfDict,
  spotOf: (value: PdfValue | undefined) => Spot | null,
): Part['places'] {
  const found: [string, Spot][] = [];
  for (const [name, value] of pdf.dict(catalog.get('/Dests')) ?? []) {
    const spot = spotOf(value);
    if (spot !== null) found.push([nameText(name), spot]);
  }
  return Object.fromEntries(found);
}

function readOutline(
  pdf: PdfFile,
  parent: PdfDict | null,
  spotOf: (value: PdfValue | undefined) => Spot | null,
): OutlineEntry[] {
  const entries: OutlineEntry[] = [];
  let dict = pdf.dict(parent?.get('/First'));
  while (dict !== null) {
    const title = pdf.get(dict.get('/Title'));
    const spot = spotOf(dict.get('/Dest'));
    if (title instanceof PdfText && spot !== null) {
      entries.push({ title: title.words, ...spot, entries: readOutline(pdf, dict, spotOf) });
    }
    dict = pdf.dict(dict.get('/Next'));
  }
  return entries;
}

/**
 * Chromium shrinks a page, without a word, when something on it is too wide. It shows in the first
 * two matrices of the page: together they make .75 point of a CSS pixel, or less where it shrank; `least` is
 * what still passes.
 */
function isShrunk(content: string, least: number): boolean {
  const scales = [
    ...content.slice(0, 2000).matchAll(/^([\d.]+) 0 0 -?[\d.]+ -?[\d.]+ -?[\d.]+ cm$/gm),
  ];
  const [first, second] = scales.map((match) => Number(match[1]));
  return first !== undefined && second !== undefined && first * second < least;
}
