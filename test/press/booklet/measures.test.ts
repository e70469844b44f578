import { spawnSync } from 'node:child_process';
import { beforeAll, describe, expect, test } from 'vitest';
import { bookletMargins, papers } from '../../../src/press/orders/index.ts';
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
const before = { pages: 154, chapters: 118, openPages: 26, split: 25, also: 106 };

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
    const { topMm, bottomMm } = bookletMargins(papers['half-letter']);
    const { heightMm } = papers['half-letter'];
    // Half a millimeter less at the foot, where a folio may be antialiased.
    const [top, bottom] = [topMm, heightMm - bottomMm - 0.5].map((mm) =>
      Math.ceil((height * mm) / heightMm),
    ) as [number, number];
    let last = top;
    for (let y = bottom - 1; y > last; y--) if (row(y).some((gray) => gray < 160)) last = y;
    fills.push((last - top) / (bottom - top));
    at += width * height;
  }
  return fills;
}

/** Only the letters of a text with or without tags: how figures are set is another matter. */
function letters(text: string): string {
  return text
    .replace(/<[^>]*>|&\w+;/g, '')
    .toLowerCase()
    .replace(/[^a-z]/g, '');
}

/** Tasks of which no page has both the title and the end of the last step. */
function splitTasks(html: string, pages: readonly string[]): readonly string[] {
  const tasks = html.split(/(?=<section class="[^"]*operation")/).slice(1);
  return tasks.flatMap((task) => {
    const own = task.slice(0, task.indexOf('</section>'));
    const title = /<h2[^>]*>(.*?)<\/h2>/.exec(own)?.[1] ?? '';
    const steps = [...own.matchAll(/<li[^>]*>([\s\S]*?)<\/li>/g)].map(([, step = '']) =>
      letters(step),
    );
    const end = steps.at(-1)?.slice(-24) ?? '';
    const isWhole = pages.some((page) => page.includes(letters(title)) && page.includes(end));
    return isWhole ? [] : [title.replace(/<[^>]*>/g, '')];
  });
}

describe.skipIf(typeof browser === 'string' || !hasReader)(
  'the pages of the demo’s booklet',
  { timeout: 300_000 },
  () => {
    let printed: PrintedBooklet;
    let html = '';
    let fills: readonly number[] = [];
    let split: readonly string[] = [];
    const pageOf = (anchor: string) =>
      Number(new RegExp(`data-page-of="${anchor}">(\\d+)<`).exec(html)?.[1]);

    beforeAll(async () => {
      if (typeof browser === 'string') return;
      const demo = await printedDemo(browser);
      printed = demo.printed;
      html = printed.html();
      fills = fillOf(demo.file);
      const { stdout } = spawnSync('pdftotext', ['-raw', demo.file, '-'], { maxBuffer: 1 << 26 });
      split = splitTasks(html, stdout.toString('utf8').split('\f').map(letters));
    }, 300_000);

    test('are eight to a unit at most, few open but the last of a section, each unit beginning on a left one', async () => {
      const starts = [...sheets.map((_, at) => pageOf(`unit-${at + 1}`)), pageOf('symptoms')];
      const lengths = starts.slice(1).map((end, at) => end - (starts[at] ?? 0));
      const open = fills.flatMap((fill, at) => (fill < 2 / 3 ? [at + 1] : []));
      const also = html.match(/\(also /g)?.length ?? 0;
      const { pages } = printed;
      console.log(
        `half letter: ${pages} pages (before ${before.pages}), ${lengths.join(' ')} a unit, ` +
          `under two thirds full: ${open.join(' ')} (before ${before.openPages}), operations split: ` +
          `${split.length} (before ${before.split}), "also" ${also} times (before ${before.also})`,
      );
      for (const start of starts.slice(0, -1)) expect(start % 2).toBe(0);
      // Eight to a unit, all that is not chapters among them: the eleven carburetors and distributors took 89.
      expect(pages).toBeLessThanOrEqual(8 * lengths.length);
      expect(lengths.filter((length) => length === 4).length).toBeGreaterThanOrEqual(2);
      expect(Math.max(...lengths)).toBeLessThanOrEqual(8);
      // Only what ends a section: what follows is a picture of the order of work or another section.
      const ends = [...starts, pageOf('quick-reference'), pages + 1].map((start) => start - 1);
      // Two pages of the newest chapters stand open before a task that has no room there.
      const loose = open.filter((page) => !ends.some((end) => end === page || end === page + 1));
      expect(loose.length).toBeLessThanOrEqual(2);
      expect(split).toEqual([]);
      expect(also).toBe(0);
    });
  },
);
