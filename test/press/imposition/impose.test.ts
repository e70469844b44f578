import { execFileSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFDocument, StandardFonts } from '@cantoo/pdf-lib';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Imposition, impose } from '../../../src/press/imposition/impose.ts';
import { type ImposedSheet, planImposition } from '../../../src/press/imposition/order.ts';
import { type Paper, PressStopped } from '../../../src/press/orders/model.ts';
import { papers } from '../../../src/press/orders/paper.ts';

const hasPoppler = (() => {
  try {
    execFileSync('pdftotext', ['-v'], { stdio: 'ignore' });
    execFileSync('pdftoppm', ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
})();
if (!hasPoppler) console.warn('Imposed sheets are not measured: poppler-utils is missing');

/** As references write it: front | back; left, right. */
function written(pages: number): string {
  return planImposition(pages, null)
    .sheets.map(({ front, back }) => `(${front.join(',')} | ${back.join(',')})`)
    .join(' ');
}

describe('the order of saddle stitch', () => {
  // Worked orders of the published check values.
  test.each([
    [8, '(8,1 | 2,7) (6,3 | 4,5)'],
    [12, '(12,1 | 2,11) (10,3 | 4,9) (8,5 | 6,7)'],
    [16, '(16,1 | 2,15) (14,3 | 4,13) (12,5 | 6,11) (10,7 | 8,9)'],
  ])('of %i pages', (pages, order) => {
    expect(written(pages)).toBe(order);
  });

  test('fills up with blanks at the end', () => {
    expect(written(9)).toBe('(,1 | 2,) (,3 | 4,9) (8,5 | 6,7)');
    expect(planImposition(9, null).blanks).toBe(3);
    expect(written(1)).toBe('(,1 | ,)');
  });

  test('is one fold up to 20 sheets, and signatures of 8 at most beyond', () => {
    expect(planImposition(80, null).signatures).toEqual([20]);
    expect(planImposition(81, null).signatures).toEqual([7, 7, 7]);
    expect(planImposition(114, null).signatures).toEqual([8, 7, 7, 7]);
    expect(planImposition(80, 8).signatures).toEqual([7, 7, 6]);
    expect(planImposition(114, 40).signatures).toEqual([29]);
  });
});

/** A half of a sheet in a pile: what is on the side that lies down, and on the one that lies up. */
interface Leaf {
  readonly down: number | null;
  readonly up: number | null;
}

/**
 * Does with paper what a binder does: lays the sheets of a signature front down on one another, the
 * outermost lowest, folds the right halves over onto the left ones, and turns the pile to read it
 * from its first leaf.
 */
function fold(sheets: readonly ImposedSheet[]): (number | null)[] {
  // Turned over the short edge, what was at the right of the front is at the left, underneath.
  const left: Leaf[] = [];
  const right: Leaf[] = [];
  for (const { front, back } of sheets) {
    left.push({ down: front[1], up: back[0] });
    right.push({ down: front[0], up: back[1] });
  }
  const folded = right.reverse().map(({ down, up }) => ({ down: up, up: down }));
  return [...left, ...folded].flatMap(({ down, up }) => [down, up]);
}

describe('folded', () => {
  test('any number of pages in any signatures can be read in order', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 700 }),
        fc.option(fc.integer({ min: 1, max: 40 })),
        (pages, most) => {
          const plan = planImposition(pages, most);
          const read = plan.signatures.flatMap((count, signature) => {
            const sheets = plan.sheets.filter((sheet) => sheet.signature === signature);
            expect(sheets.map(({ within }) => within)).toEqual([...Array(count).keys()]);
            return fold(sheets);
          });
          const blanks = Array(plan.blanks).fill(null);
          expect(read).toEqual([...Array.from({ length: pages }, (_, at) => at + 1), ...blanks]);
          expect(plan.blanks).toBeLessThan(4);
          const thickest = Math.max(...plan.signatures);
          expect(thickest).toBeLessThanOrEqual(most ?? 20);
          expect(thickest - Math.min(...plan.signatures)).toBeLessThanOrEqual(1);
        },
      ),
    );
  });
});

const points = (mm: number) => (mm * 72) / 25.4;

/** Where the words of a test page begin: from the page's left edge, and their base from its foot. */
const word = { xMm: 50, yMm: 100 };

/** Pages that each say their number, as `page7`. */
async function numbered(count: number, paper: Paper): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  const font = await document.embedFont(StandardFonts.Courier);
  const { widthMm, heightMm } = papers[paper];
  for (let page = 1; page <= count; page++) {
    document
      .addPage([points(widthMm), points(heightMm)])
      .drawText(`page${page}`, { x: points(word.xMm), y: points(word.yMm), size: 12, font });
  }
  return document.save();
}

const plain: Imposition = {
  paper: 'half-letter',
  title: 'Settings',
  thicknessMm: null,
  marks: false,
  sheetsInSignature: null,
};

interface Word {
  readonly text: string;
  readonly xMm: number;
}

/** Sizes of the sides and where each word begins, as poppler reads them. */
function readSides(pdf: Uint8Array): { width: number; height: number; words: Word[] }[] {
  const path = join(mkdtempSync(join(tmpdir(), 'impose-')), 'a.pdf');
  writeFileSync(path, pdf);
  const html = execFileSync('pdftotext', ['-bbox', path, '-'], { encoding: 'utf8' });
  return html
    .split('<page ')
    .slice(1)
    .map((side) => {
      const size = /width="([\d.]+)" height="([\d.]+)"/.exec(side);
      const words = [...side.matchAll(/<word xMin="([\d.]+)"[^>]*>(\w+)</g)];
      return {
        width: (Number(size?.[1]) * 25.4) / 72,
        height: (Number(size?.[2]) * 25.4) / 72,
        words: words.map(([, x, text]) => ({ text: text ?? '', xMm: (Number(x) * 25.4) / 72 })),
      };
    });
}

describe.skipIf(!hasPoppler)('measured on the PDF', { timeout: 60_000 }, () => {
  test.each([
    // Letter 11 x 8.5 in, A4 297 x 210 mm, A3 420 x 297 mm, 17 x 11 in: of the published check values.
    ['half-letter', 279.4, 215.9],
    ['a5', 297, 210],
    ['a4', 420, 297],
    ['letter', 431.8, 279.4],
  ] as const)(
    '%s pages meet at the fold of a sheet of twice the width',
    async (paper, width, height) => {
      const { pdf } = await impose(await numbered(6, paper), { ...plain, paper });
      const sides = readSides(pdf);
      expect(sides.map(({ words }) => words.map(({ text }) => text))).toEqual([
        ['page1'],
        ['page2'],
        ['page6', 'page3'],
        ['page4', 'page5'],
      ]);
      const fold = width / 2;
      for (const [at, side] of sides.entries()) {
        expect(side.width).toBeCloseTo(width, 3);
        expect(side.height).toBeCloseTo(height, 3);
        for (const { text, xMm } of side.words) {
          const isLeft = Number(text.slice(4)) % 2 === 0;
          const edge = isLeft ? fold - papers[paper].widthMm : fold;
          expect(Math.abs(xMm - edge - word.xMm), `${text} on side ${at}`).toBeLessThan(0.01);
        }
      }
    },
  );

  test('pages in the middle are moved toward the fold by their share of the creep', async () => {
    const pages = await numbered(16, 'half-letter');
    const { pdf, creepMm } = await impose(pages, { ...plain, thicknessMm: 0.1 });
    // Of the published check values: 16 pages of 0.1 mm, .30 to .42 mm.
    expect(creepMm).toBeGreaterThanOrEqual(0.3);
    expect(creepMm).toBeLessThanOrEqual(0.42);
    for (const [at, { words }] of readSides(pdf).entries()) {
      const share = (creepMm * Math.floor(at / 2)) / 3;
      const [left, right] = words;
      expect(Math.abs((left?.xMm ?? 0) - word.xMm - share), `side ${at}`).toBeLessThan(0.01);
      expect(Math.abs((right?.xMm ?? 0) - 139.7 - word.xMm + share)).toBeLessThan(0.01);
    }
  });

  test('each signature creeps for itself', async () => {
    const pages = await numbered(16, 'half-letter');
    const order = { ...plain, thicknessMm: 0.1, sheetsInSignature: 2 };
    const { pdf, creepMm } = await impose(pages, order);
    expect(creepMm).toBeCloseTo(0.12, 6);
    const lefts = readSides(pdf).map(({ words }) => (words[0]?.xMm ?? 0) - word.xMm);
    for (const [at, share] of [0, 0, 0.12, 0.12, 0, 0, 0.12, 0.12].entries()) {
      expect(Math.abs((lefts[at] ?? 9) - share)).toBeLessThan(0.01);
    }
  });

  test('marks lie on the fold and on the lines of the cut, which move with the pages', async () => {
    const pages = await numbered(16, 'half-letter');
    const order = { ...plain, thicknessMm: 0.2, marks: true, sheetsInSignature: 2 };
    const { pdf } = await impose(pages, order);
    const folder = mkdtempSync(join(tmpdir(), 'impose-'));
    writeFileSync(join(folder, 'a.pdf'), pdf);
    const [first, fourth, fifth] = [1, 4, 5].map((side) => rasterized(folder, side));
    for (const [side, ink = () => false] of [
      [1, first],
      [4, fourth],
    ] as const) {
      const move = side > 2 ? 0.24 : 0;
      // In the 9 mm of a mark, 3 mm off head, foot and fore edge.
      for (const y of [1, 7, 215.9 - 1, 215.9 - 7]) {
        expect(ink(139.7, y), `fold of side ${side} at ${y}`).toBe(true);
        for (const x of [3 + move, 279.4 - 3 - move]) {
          expect(ink(x, y), `cut of side ${side} at ${x}, ${y}`).toBe(true);
          expect(ink(x - 0.4, y)).toBe(false);
          expect(ink(x + 0.4, y)).toBe(false);
        }
      }
      for (const y of [3, 215.9 - 3]) {
        expect(ink(1, y)).toBe(true);
        expect(ink(7, y)).toBe(true);
        expect(ink(11, y)).toBe(false);
      }
      expect(ink(139.7, 60), 'between the marks').toBe(false);
    }
    // The bar of the second signature lies below that of the first.
    expect(first?.(139.7, 16)).toBe(true);
    expect(first?.(139.7, 24)).toBe(false);
    expect(fifth?.(139.7, 16)).toBe(false);
    expect(fifth?.(139.7, 24)).toBe(true);
  });
});

const dpi = 600;

/** Whether a side is black at a place, in millimeters from the left and the top, within .1 mm. */
function rasterized(folder: string, side: number): (xMm: number, yMm: number) => boolean {
  const range = ['-f', String(side), '-l', String(side), '-singlefile'];
  const bytes = execFileSync('pdftoppm', ['-gray', '-r', String(dpi), ...range, 'a.pdf'], {
    cwd: folder,
    maxBuffer: 2 ** 28,
  });
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'));
  const width = Number(head?.[1]);
  const start = head?.[0].length ?? 0;
  return (xMm, yMm) => {
    const reach = Math.floor((0.1 / 25.4) * dpi);
    const [x, y] = [xMm, yMm].map((mm) => Math.round((mm / 25.4) * dpi)) as [number, number];
    for (let down = -reach; down <= reach; down++) {
      for (let across = -reach; across <= reach; across++) {
        if ((bytes[start + (y + down) * width + x + across] ?? 255) < 128) return true;
      }
    }
    return false;
  };
}

describe('an imposed PDF', () => {
  test('has the same bytes each time, and asks to be printed at its size over the short edge', async () => {
    const pages = await numbered(10, 'half-letter');
    const order = { ...plain, marks: true, thicknessMm: 0.1 };
    const first = await impose(pages, order);
    const second = await impose(pages, order);
    expect(Buffer.compare(first.pdf, second.pdf)).toBe(0);
    const document = await PDFDocument.load(first.pdf, { updateMetadata: false });
    expect(document.getPageCount()).toBe(6);
    const asked = document.catalog.getOrCreateViewerPreferences();
    expect(asked.getPrintScaling()).toBe('None');
    expect(asked.getDuplex()).toBe('DuplexFlipShortEdge');
    expect(document.getTitle()).toBe('Settings: sheets to fold');
  });

  test('is refused for paper that would move pages into the fold', async () => {
    // 25 sheets: 24 x 0.3 x 1.2 = 8.64 mm of an inner margin of 14 mm; 20 sheets are 6.84 mm.
    const pages = await numbered(100, 'half-letter');
    const order = { ...plain, thicknessMm: 0.3, sheetsInSignature: 40 };
    await expect(impose(pages, order)).rejects.toThrow(PressStopped);
    await expect(impose(pages, order)).rejects.toThrow(
      '25 sheets of 0.3 mm folded into one another would move the pages in the middle 8.6 mm ' +
        'toward the fold, of an inner margin of 14 mm. Fold fewer together: --signatures 20.',
    );
  });
});
