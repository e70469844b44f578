import type { PDFDict, PDFDocument, PDFObject, PDFPage } from '@cantoo/pdf-lib';
import { PressStopped } from '../orders/model.ts';

/** What the finished PDF says of itself. */
export interface PdfFacts {
  readonly title: string;
  /** Who publishes it, as written; null leaves it out. */
  readonly author: string | null;
  readonly language: string;
  /** Asks a reader to print at the true size, with no fitting to the page (ISO 32000-1, table 150). */
  readonly trueSize?: boolean;
}

/** A PDF whose bytes depend on its content alone, with what was read from it on the way. */
export interface Settled {
  readonly pdf: Uint8Array;
  readonly pages: number;
  /** The page, from 1, that each named place is on. */
  readonly places: ReadonlyMap<string, number>;
  /** Pages, from 1, that the browser shrank because something on them was too wide. */
  readonly shrunk: readonly number[];
}

/** Every print bears this date: a print's bytes tell of the sheets and not of the hour. */
const printDate = 'D:20000101000000Z';

/**
 * Takes out of a browser's PDF what differs from one print to the next (dates, random names of
 * structure elements) and says who made it. Fails with `PressStopped` where the PDF can't be read.
 */
export async function settlePdf(bytes: Uint8Array, facts: PdfFacts): Promise<Settled> {
  const lib = await import('@cantoo/pdf-lib');
  const document = await open(lib, bytes);
  const { PDFName, PDFString, PDFHexString } = lib;
  const dated = document.context.trailerInfo.Info;
  if (dated instanceof lib.PDFRef) document.context.delete(dated);
  const info = document.context.obj({});
  info.set(PDFName.of('Title'), PDFHexString.fromText(facts.title));
  if (facts.author !== null) info.set(PDFName.of('Author'), PDFHexString.fromText(facts.author));
  info.set(PDFName.of('Creator'), PDFString.of('Gaugeleaf'));
  info.set(PDFName.of('Producer'), PDFString.of('Gaugeleaf'));
  info.set(PDFName.of('CreationDate'), PDFString.of(printDate));
  info.set(PDFName.of('ModDate'), PDFString.of(printDate));
  document.context.trailerInfo.Info = document.context.register(info);
  document.catalog.set(PDFName.of('Lang'), PDFString.of(facts.language));
  document.catalog.set(
    PDFName.of('ViewerPreferences'),
    document.context.obj({
      DisplayDocTitle: true,
      ...(facts.trueSize === true ? { PrintScaling: 'None' } : {}),
    }),
  );
  renameElements(lib, document);
  return {
    places: placesOf(lib, document),
    shrunk: shrunkPages(lib, document, facts.trueSize === true ? 0.74999 : 0.7485),
    pages: document.getPageCount(),
    pdf: await document.save({ useObjectStreams: true, updateFieldAppearances: false }),
  };
}

/** The number of pages of a PDF, and the page of each named place. */
export async function readPlaces(
  bytes: Uint8Array,
): Promise<{ pages: number; places: ReadonlyMap<string, number> }> {
  const lib = await import('@cantoo/pdf-lib');
  const document = await open(lib, bytes);
  return { pages: document.getPageCount(), places: placesOf(lib, document) };
}

type Library = typeof import('@cantoo/pdf-lib');

async function open(lib: Library, bytes: Uint8Array): Promise<PDFDocument> {
  try {
    return await lib.PDFDocument.load(bytes, { updateMetadata: false });
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new PressStopped(`The browser's PDF can't be read: ${reason}`);
  }
}

/** Structure elements get their names by their order, and what refers to them follows. */
function renameElements(lib: Library, document: PDFDocument): void {
  const { PDFDict, PDFName, PDFString, PDFHexString, PDFArray } = lib;
  const id = PDFName.of('ID');
  const names = new Map<string, string>();
  const tree: PDFObject[] = [];
  const objects = document.context.enumerateIndirectObjects();
  for (const [reference, object] of objects) {
    if (!(object instanceof PDFDict)) continue;
    if (object.get(PDFName.of('Type')) !== PDFName.of('StructElem')) continue;
    const old = object.lookup(id);
    if (!(old instanceof PDFString) && !(old instanceof PDFHexString)) continue;
    const name = `e${String(names.size + 1).padStart(7, '0')}`;
    names.set(old.asString(), name);
    object.set(id, PDFString.of(name));
    tree.push(PDFString.of(name), reference);
  }
  if (names.size === 0) return;
  const rename = (dict: PDFDict): void => {
    const headers = dict.lookup(PDFName.of('Headers'));
    if (!(headers instanceof PDFArray)) return;
    for (let at = 0; at < headers.size(); at++) {
      const old = headers.lookup(at);
      if (!(old instanceof PDFString) && !(old instanceof PDFHexString)) continue;
      headers.set(at, PDFString.of(names.get(old.asString()) ?? old.asString()));
    }
  };
  for (const [, object] of objects) {
    if (!(object instanceof PDFDict)) continue;
    rename(object);
    const attributes = object.lookup(PDFName.of('A'));
    if (attributes instanceof PDFDict) rename(attributes);
    if (!(attributes instanceof PDFArray)) continue;
    for (let at = 0; at < attributes.size(); at++) {
      const one = attributes.lookup(at);
      if (one instanceof PDFDict) rename(one);
    }
  }
  const root = document.catalog.lookup(PDFName.of('StructTreeRoot'));
  if (!(root instanceof PDFDict)) return;
  dropTree(lib, document, root.get(PDFName.of('IDTree')));
  const kids = document.context.obj({ Names: document.context.obj(tree as never[]) });
  root.set(PDFName.of('IDTree'), document.context.register(kids));
}

/** Takes out a name tree with all below it: nothing leads to it any more, and its names are chance. */
function dropTree(lib: Library, document: PDFDocument, node: PDFObject | undefined): void {
  const tree = document.context.lookup(node);
  if (node instanceof lib.PDFRef) document.context.delete(node);
  if (!(tree instanceof lib.PDFDict)) return;
  const kids = tree.lookup(lib.PDFName.of('Kids'));
  if (!(kids instanceof lib.PDFArray)) return;
  for (const kid of kids.asArray()) dropTree(lib, document, kid);
}

/** Named destinations, as Chromium writes them: a dictionary of arrays that start with a page. */
function placesOf(lib: Library, document: PDFDocument): Map<string, number> {
  const { PDFDict, PDFName, PDFArray } = lib;
  const places = new Map<string, number>();
  const named = document.catalog.lookup(PDFName.of('Dests'));
  if (!(named instanceof PDFDict)) return places;
  const pages = new Map(document.getPages().map((page, index) => [page.ref.toString(), index + 1]));
  for (const [name, value] of named.entries()) {
    const place = document.context.lookup(value);
    const target = place instanceof PDFArray ? place : undefined;
    const page = target ? pages.get(String(target.get(0))) : undefined;
    if (page !== undefined) places.set(name.decodeText(), page);
  }
  return places;
}

/**
 * Chromium shrinks a page, without a word, when something on it is too wide. It shows in the first
 * two matrices of the page: together they make .75 point of a CSS pixel, or less where it shrank; `least` is what still passes.
 */
function shrunkPages(lib: Library, document: PDFDocument, least: number): number[] {
  const shrunk: number[] = [];
  for (const [index, page] of document.getPages().entries()) {
    const scale = scaleOf(lib, page);
    if (scale !== null && scale < least) shrunk.push(index + 1);
  }
  return shrunk;
}

function scaleOf(lib: Library, page: PDFPage): number | null {
  const contents = page.node.lookup(lib.PDFName.of('Contents'));
  const stream = contents instanceof lib.PDFArray ? contents.lookup(0) : contents;
  if (!(stream instanceof lib.PDFRawStream)) return null;
  const start = lib.decodePDFRawStream(stream).decode().subarray(0, 2000);
  const text = Buffer.from(start).toString('latin1');
  const scales = [...text.matchAll(/^([\d.]+) 0 0 -?[\d.]+ -?[\d.]+ -?[\d.]+ cm$/gm)];
  const [first, second] = scales.map((match) => Number(match[1]));
  return first === undefined || second === undefined ? null : first * second;
}
