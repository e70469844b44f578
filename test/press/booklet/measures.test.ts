import { spawnSync } from 'node:child_process';
import { beforeAll, describe, expect, test } from 'vitest';
import type { PrintedBooklet } from '../../../src/press/orders/model.ts';
import { demoSheets } from '../demo-sheets.ts';
import { browserHere } from '../stand.ts';
import { printedDemo } from './demo-print.ts';

const browser = await browserHere();
const hasReader = spawnSync('pdftoppm', ['-v']).error === undefined;
if (typeof browser === 'string') console.warn(`The demo's booklet is not measured: ${browser}`);
if (!hasReader) console.warn('The booklet is not measured with pdftoppm: it is not here.');

const sheets = demoSheets();

/**
 * The demo's booklet on half letter before its chapters were made anew, counted once on its pages by hand
 * and by the same measure of ink.
 */
const before = { pages: 154, chapters: 118, openPages: 26, also: 106 };

/** How far down the text of each page reaches, of the room between its margins; from a gray picture. */
function fillOf(pdf: string): readonly number[] {
  const { stdout } = spawnSync('pdftoppm', ['-r', '36', '-gray', pdf], { maxBuffer: 1 << 28 });
  const fills: number[] = [];
  for (let at = 0; at < stdout.length; ) {
    const [head = '', w = '', h = ''] =
      /^P5\s+(\d+)\s+(\d+)\s+\d+\s/.exec(stdout.toString('latin1', at, at + 40)) ?? [];
    const [width, height] = [Number(w), Number(h)];
    at += head.length;
    const row = (y: number) =>
      stdout.subarray(
        at + y * width + Math.ceil(width * 0.11),
        at + y * width + Math.floor(width * 0.89),
      );
    // 12 mm above and 11 mm below of 215.9 mm, as `bookletMargins` has them.
    const [top, bottom] = [Math.ceil((height * 12) / 215.9), Math.floor((height * 204.9) / 215.9)];
    let last = top;
    for (let y = bottom - 1; y > last; y--) if (row(y).some((gray) => gray < 160)) last = y;
    fills.push((last - top) / (bottom - top));
    at += width * height;
  }
  return fills;
}

describe.skipIf(typeof browser === 'string' || !hasReader)(
  'the pages of the demo’s booklet',
  { timeout: 300_000 },
  () => {
    let printed: PrintedBooklet;
    let html = '';
    let fills: readonly number[] = [];
    const pageOf = (anchor: string) =>
      Number(new RegExp(`data-page-of="${anchor}">(\\d+)<`).exec(html)?.[1]);

    beforeAll(async () => {
      if (typeof browser === 'string') return;
      const demo = await printedDemo(browser);
      printed = demo.printed;
      html = printed.html();
      fills = fillOf(demo.file);
    }, 300_000);

    test('are two thirds of what they were, each unit beginning on a left one', () => {
      const starts = [...sheets.map((_, at) => pageOf(`unit-${at + 1}`)), pageOf('symptoms')];
      const lengths = starts.slice(1).map((end, at) => end - (starts[at] ?? 0));
      const open = fills.flatMap((fill, at) => (fill < 2 / 3 ? [at + 1] : []));
      const also = html.match(/\(also /g)?.length ?? 0;
      const { pages } = printed;
      console.log(
        `half letter: ${pages} pages (before ${before.pages}), ${lengths.join(' ')} a unit, ` +
          `under two thirds full: ${open.length} (before ${before.openPages}), "also" ${also} times (before ${before.also})`,
      );
      for (const start of starts.slice(0, -1)) expect(start % 2).toBe(0);
      expect(pages).toBeLessThanOrEqual(104);
      expect(Math.max(...lengths)).toBeLessThanOrEqual(10);
      expect(open.length).toBeLessThanOrEqual(15);
      expect(also).toBe(0);
    });
  },
);
