import { execFileSync, spawnSync } from 'node:child_process';
import { beforeAll, describe, expect, test } from 'vitest';
import { settingRows } from '../../../src/press/matter/setting-rows.ts';
import type { PrintedBooklet } from '../../../src/press/orders/model.ts';
import { demoSheets } from '../demo-sheets.ts';
import { leveled, printedText } from '../printed-text.ts';
import { browserHere } from '../stand.ts';
import { printedDemo } from './demo-print.ts';

const browser = await browserHere();
if (typeof browser === 'string') console.warn(`The demo's booklet is not printed: ${browser}`);
const hasReader = spawnSync('pdftotext', ['-v']).error === undefined;
if (!hasReader) console.warn('The booklet is not held against pdftotext: it is not here.');

const sheets = demoSheets();

/** Without spaces and with plain signs: how a reader parts what is drawn is its own affair. */
const plain = leveled;

describe.skipIf(typeof browser === 'string' || !hasReader)(
  'the booklet of the demo',
  { timeout: 300_000 },
  () => {
    let printed: PrintedBooklet;
    let html = '';
    /** By page, from 0, as poppler reads it. */
    let pages: readonly string[] = [];
    const pageOf = (anchor: string) => {
      const found = new RegExp(`data-page-of="${anchor}">(\\d+)<`).exec(html);
      if (!found) throw new Error(`the booklet states no page of ${anchor}`);
      return Number(found[1]);
    };

    beforeAll(async () => {
      if (typeof browser === 'string') return;
      const demo = await printedDemo(browser);
      printed = demo.printed;
      html = printed.html();
      const text = execFileSync('pdftotext', ['-raw', demo.file, '-'], { maxBuffer: 1 << 26 });
      pages = text.toString('utf8').split('\f').slice(0, -1);
    }, 300_000);

    test('has no fault, and as many pages as it says', () => {
      expect(printed.problems).toEqual([]);
      expect(pages).toHaveLength(printed.pages);
    });

    test('has every setting of every sheet in its chapter and in the quick reference', () => {
      const quick = pages.slice(pageOf('quick-reference') - 1, pageOf('unit-1') - 1);
      const starts = sheets.map((_, index) => pageOf(`unit-${index + 1}`));
      const ends = [...starts.slice(1), pageOf('symptoms')];
      let count = 0;
      for (const [index, { sheet }] of sheets.entries()) {
        const chapter = plain(
          pages.slice((starts[index] ?? 0) - 1, (ends[index] ?? 0) - 1).join(''),
        );
        for (const { label, values } of settingRows(sheet, [])) {
          expect(chapter).toContain(plain(label));
          for (const { written } of values) {
            expect(chapter).toContain(printedText(written));
            expect(plain(quick.join(''))).toContain(printedText(written));
            count++;
          }
        }
      }
      expect(count).toBeGreaterThan(150);
    });

    test('names true pages: what contents and index lead to stands there', () => {
      const at = (anchor: string) => plain(pages[pageOf(anchor) - 1] ?? '');
      for (const [anchor, title] of [
        ['before-any-work', 'Before any work'],
        ['what-changed', 'What changed'],
        ['gauges-to-gather', 'Gauges to gather'],
        ['gauge-sizes', 'Sizes of the gauges'],
        ['worked-figures', 'Worked figures'],
        ['index', 'Index'],
      ] as const) {
        expect(at(anchor)).toContain(plain(title));
      }
      const headings = [...html.matchAll(/<h2 id="(unit-\d+-heading-\d+)"[^>]*>(.*?)<\/h2>/g)];
      const named = headings.filter(([, anchor]) => html.includes(`data-page-of="${anchor}"`));
      expect(named.length).toBeGreaterThan(80);
      for (const [, anchor = '', words = ''] of named) {
        expect(at(anchor)).toContain(plain(words.replace(/<[^>]*>/g, '').replaceAll('&amp;', '&')));
      }
    });

    test('leaves no heading at the foot of a page, and parts no span of years', () => {
      const feet = pages.map((page) => {
        const lines = page.split('\n').map((line) => line.trim());
        // The folio and the mark stand below the text.
        return lines.filter((line) => line !== '' && !/^(?:\d+|PROOF|DRAFT)$/.test(line));
      });
      for (const lines of feet) {
        expect(lines.at(-1)).not.toMatch(/^\d+ [A-Z][a-z ]+$/);
        expect(lines.join('\n')).not.toMatch(/\b(?:1[89]|20)\d\d[-–]\n(?:1[89]|20)\d\d\b/);
      }
    });
  },
);
