import type { PDFDocument, PDFRef } from '@cantoo/pdf-lib';
import { bookletMargins, papers } from '../orders/index.ts';
import { type Paper, PressStopped } from '../orders/model.ts';
import { foldAndTrimMarks } from './marks.ts';
import { type ImpositionPlan, planImposition, type Side } from './order.ts';
import { type DrawnPage, takePages } from './pages.ts';

/** How a booklet is put on sheets of paper. */
export interface Imposition {
  /** What the booklet's pages are printed for; the sheet is twice as wide. */
  readonly paper: Paper;
  readonly title: string;
  /** Thickness of one sheet in millimeters; null makes no allowance for creep. */
  readonly thicknessMm: number | null;
  /** Marks where to fold and to trim. */
  readonly marks: boolean;
  /** The most sheets that are folded together; null leaves it to `planImposition`. */
  readonly sheetsInSignature: number | null;
}

/** A booklet on sheets of paper, ready to be printed on both sides. */
export interface Imposed extends ImpositionPlan {
  readonly pdf: Uint8Array;
  /** How far the innermost sheet's pages were moved toward the fold, in millimeters. */
  readonly creepMm: number;
  /** The paper to print on: `Letter`. */
  readonly sheetLabel: string;
}

/** What two pages of a paper lie on, side by side: ISO 216, and ANSI/ASME Y14.1 sizes A and B. */
const sheetLabels: Readonly<Record<Paper, string>> = {
  a5: 'A4',
  a4: 'A3',
  'half-letter': 'Letter',
  letter: 'Tabloid (11 × 17 in)',
};

/**
 * How much wider than the mere thickness of the sheets inside it a fold makes a sheet's way: in use
 * between 1, a sharp crease, and 1.4; the middle of it.
 */
const creepFactor = 1.2;

/** Every print bears this date: a print's bytes tell of the sheets and not of the hour. */
const printDate = 'D:20000101000000Z';

/**
 * How far the pages of a sheet are moved toward the fold, in millimeters: t c for every sheet that
 * lies around it, so t (pages/4 - 1) c for the innermost, where trimming would else take most off
 * its outer margin.
 */
export function creepOf(within: number, thicknessMm: number): number {
  return within * thicknessMm * creepFactor;
}

/**
 * Puts the pages of an untagged PDF two by two on sheets, front and back, for printing on both sides
 * and turning over the short edge. The inner edges of two pages meet at the fold. Fails with
 * `PressStopped` where the paper is so thick that pages in the middle would lose half their inner margin.
 */
export async function impose(pages: Uint8Array, order: Imposition): Promise<Imposed> {
  const lib = await import('@cantoo/pdf-lib');
  const document = await lib.PDFDocument.load(pages, { updateMetadata: false });
  const plan = planImposition(document.getPageCount(), order.sheetsInSignature);
  const thicknessMm = order.thicknessMm ?? 0;
  const creepMm = creepOf(Math.max(...plan.signatures) - 1, thicknessMm);
  refuseThick(creepMm, order, plan);
  const paper = papers[order.paper];
  const [widthMm, heightMm] = [paper.widthMm * 2 + gapMm(order.paper), paper.heightMm];
  const drawn = takePages(lib, document);
  const sides: DrawnSide[] = [];
  for (const sheet of plan.sheets) {
    const shiftMm = creepOf(sheet.within, thicknessMm);
    const size = { widthMm, heightMm, pageWidthMm: paper.widthMm, shiftMm };
    for (const isFront of [true, false]) {
      const side = isFront ? sheet.front : sheet.back;
      const placed = placePages(side, drawn, size);
      const marked = { ...size, sheet, signatures: plan.signatures.length, isFront };
      sides.push({ placed, marks: order.marks ? foldAndTrimMarks(marked) : '' });
    }
  }
  putSides(lib, document, [points(widthMm), points(heightMm)], sides);
  describe(lib, document, order.title);
  const pdf = await document.save({
    useObjectStreams: true,
    updateFieldAppearances: false,
    addDefaultPage: false,
  });
  return { ...plan, pdf, creepMm, sheetLabel: sheetLabels[order.paper] };
}

type Library = typeof import('@cantoo/pdf-lib');

/** ISO 216 rounds half of an uneven side down: A4 is 1 mm wider than two of A5. */
function gapMm(paper: Paper): number {
  return paper === 'a5' ? 1 : 0;
}

function refuseThick(creepMm: number, order: Imposition, plan: ImpositionPlan): void {
  const { innerMm } = bookletMargins(papers[order.paper]);
  if (creepMm <= innerMm / 2) return;
  const most = Math.max(...plan.signatures);
  const fewer = Math.max(1, Math.floor(innerMm / 2 / creepOf(1, order.thicknessMm ?? 0)) + 1);
  throw new PressStopped(
    `${most} sheets of ${order.thicknessMm} mm folded into one another would move the pages in the middle ` +
      `${creepMm.toFixed(1)} mm toward the fold, of an inner margin of ${innerMm} mm. ` +
      `Fold fewer together: --signatures ${Math.min(fewer, most - 1)}.`,
  );
}

interface SheetSize {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Of one page, as its paper is meant. */
  readonly pageWidthMm: number;
  /** How far both pages are moved toward the fold. */
  readonly shiftMm: number;
}

interface PlacedPage {
  readonly page: DrawnPage;
  readonly name: string;
  /** Draws it, each half kept to its own side of the fold. */
  readonly content: string;
}

interface DrawnSide {
  readonly placed: readonly PlacedPage[];
  readonly marks: string;
}

function placePages(
  side: Side,
  drawn: readonly DrawnPage[],
  { widthMm, heightMm, pageWidthMm, shiftMm }: SheetSize,
): PlacedPage[] {
  const half = points(widthMm) / 2;
  const high = points(heightMm);
  const left = half - points(pageWidthMm);
  return side.flatMap((number, at) => {
    const page = number === null ? undefined : drawn[number - 1];
    if (page === undefined) return [];
    const name = at === 0 ? 'Left' : 'Right';
    const x = at === 0 ? left + points(shiftMm) : half - points(shiftMm);
    // A browser's page is up to a pixel of 1/96 in larger than its paper, at the right and below.
    const y = high - page.height;
    const clip = `${at === 0 ? 0 : exact(half)} 0 ${exact(half)} ${exact(high)} re W n`;
    const content = `q ${clip} 1 0 0 1 ${exact(x)} ${exact(y)} cm /${name} Do Q`;
    return [{ page, name, content }];
  });
}

/** Makes a page of each side, in a new page tree. */
function putSides(
  lib: Library,
  document: PDFDocument,
  [width, height]: readonly [number, number],
  sides: readonly DrawnSide[],
): void {
  const { context, catalog } = document;
  const tree = context.nextRef();
  const box = [0, 0, Number(exact(width)), Number(exact(height))];
  const kids = sides.map(({ placed, marks }) => {
    const drawn: Record<string, PDFRef> = {};
    for (const { name, page } of placed) drawn[name] = page.ref;
    const content = [...placed.map((each) => each.content), marks].filter((text) => text !== '');
    return context.register(
      context.obj({
        Type: 'Page',
        Parent: tree,
        MediaBox: box,
        Resources: { XObject: drawn },
        Contents: context.register(context.flateStream(content.join('\n'))),
      }),
    );
  });
  context.assign(tree, context.obj({ Type: 'Pages', Count: kids.length, Kids: kids }));
  catalog.set(lib.PDFName.of('Pages'), tree);
}

/** Asks the printer for its true size and for turning over the short edge (ISO 32000-1, table 150). */
function describe(lib: Library, document: PDFDocument, title: string): void {
  const { context, catalog } = document;
  const { PDFName, PDFHexString, PDFString } = lib;
  const before = context.trailerInfo.Info;
  if (before instanceof lib.PDFRef) context.delete(before);
  const info = context.obj({});
  info.set(PDFName.of('Title'), PDFHexString.fromText(`${title}: sheets to fold`));
  info.set(PDFName.of('Creator'), PDFString.of('Gaugeleaf'));
  info.set(PDFName.of('Producer'), PDFString.of('Gaugeleaf'));
  info.set(PDFName.of('CreationDate'), PDFString.of(printDate));
  info.set(PDFName.of('ModDate'), PDFString.of(printDate));
  context.trailerInfo.Info = context.register(info);
  catalog.set(
    PDFName.of('ViewerPreferences'),
    context.obj({ DisplayDocTitle: true, PrintScaling: 'None', Duplex: 'DuplexFlipShortEdge' }),
  );
}

function points(mm: number): number {
  return (mm * 72) / 25.4;
}

function exact(value: number): string {
  return value.toFixed(4);
}
