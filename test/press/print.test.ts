import { beforeAll, describe, expect, test } from 'vitest';
import {
  type CardOrder,
  type EditionFacts,
  type Paper,
  PressStopped,
  printBooklet,
} from '../../src/press/index.ts';
import type { BookletOrder } from '../../src/press/orders/model.ts';
import { flate } from '../../src/project/flate.ts';
import { ofItsOwn } from '../suite/own-browser.ts';
import { type ReadPdf, readPdf, unreadText } from './pdf.ts';
import { browserHere, builtInTemplates, finding, printCard, sampleText, toPrint } from './stand.ts';

const browser = await browserHere();
if (typeof browser === 'string') console.warn(`Printing is not tested: ${browser}`);
const here = typeof browser === 'string' ? null : browser;

const edition: EditionFacts = { title: 'Settings for Holme cars', club: 'Holme & Tarn Circle' };
const templates = builtInTemplates();

function common(paper: Paper) {
  if (here === null) throw new Error('no browser');
  return { paper, templates, picture: null, browser: here, flate, draft: false, edition };
}

/** A print beside those of the browser that the tests share. */
function own() {
  if (here === null) throw new Error('no browser');
  return { browser: ofItsOwn(here) };
}

function cardOrder(text: string, paper: Paper, more: Partial<CardOrder> = {}): CardOrder {
  return { ...common(paper), ...toPrint(text), ...more };
}

function bookletOrder(paper: Paper, more: Partial<BookletOrder> = {}): BookletOrder {
  const sheets = [toPrint(sampleText), toPrint(sampleText)];
  return { ...common(paper), sheets, store: null, ...more };
}

/** Values as the page draws them: a fraction bar for a slash, a minus for a hyphen, limits stacked. */
const printedValues = [
  '13⁄64 ± 1⁄64 in',
  '0.250 +0.010 −0 in',
  '1 notch rich',
  'No. 30 drill',
  'No. 29 drill',
  '0.026 in wire',
  '0.030 in wire',
  '1 1⁄4 ± 1⁄4 turns out',
  '475 ± 25 rpm',
  '19 inHg',
];
/** Paper sizes in points: 72 to the inch; ISO 216 for A4 and A5. */
const sizes: Record<Paper, [number, number]> = {
  letter: [612, 792],
  a4: [595.28, 841.89],
  'half-letter': [396, 612],
  a5: [419.53, 595.28],
};

function expectPrint(read: ReadPdf, paper: Paper): void {
  for (const [index, page] of read.pages.entries()) {
    // Chromium rounds a page to a whole CSS pixel, .75 pt.
    expect(Math.abs(page.width - sizes[paper][0]), `width of page ${index + 1}`).toBeLessThan(0.76);
    expect(Math.abs(page.height - sizes[paper][1]), `height of page ${index + 1}`).toBeLessThan(
      0.76,
    );
    for (const font of page.fonts) {
      expect(font.embedded, `${font.name} is embedded`).toBe(true);
      expect(font.name).toMatch(/Gaugeleaf(Sans|Condensed|Upper|Lower|Slashed)/);
    }
  }
  const text = read.pages.map((page) => page.text).join(' ');
  for (const value of printedValues) expect(text).toContain(value);
}

// Generous: the machine may be busy with other tests.
const patience = { timeout: 120_000 };

describe.skipIf(here === null)('a card', patience, () => {
  // On half the paper the work has a leaf of its own.
  const leaves = { letter: 1, a4: 1, 'half-letter': 2, a5: 2 } as const;

  test.each<Paper>(['letter', 'a4', 'half-letter', 'a5'])('on %s has all of it', async (paper) => {
    const printed = await printCard(cardOrder(sampleText, paper));
    expect(printed.problems).toEqual([]);
    const read = await readPdf(printed.pdf);
    expect(read.pages.length).toBeLessThanOrEqual(2 * leaves[paper]);
    expect(read.pages.length).toBe(printed.pages);
    expectPrint(read, paper);
    expect(read.title).toBe('Tarn T64 two-barrel, Holme Seven: bench card');
    expect(read.language).toBe('en');
    expect(read.tagged).toBe(true);
    expect(read.pages.some((page) => page.text.includes('DRAFT'))).toBe(false);
    expect(read.pages[0]?.text).toMatch(/0\.2031.*\b5\.16\b/);
  });

  test('comes out the same to the byte, and from a browser of its own', async () => {
    const first = await printCard(cardOrder(sampleText, 'letter'));
    const second = await printCard(cardOrder(sampleText, 'letter', own()));
    expect(Buffer.from(first.pdf).equals(Buffer.from(second.pdf))).toBe(true);
    expect(await unreadText(first.pdf)).toEqual([]);
  });

  test('that needs more than a leaf goes on to further ones, and loses nothing', async () => {
    const values = Array.from({ length: 60 }, (_, index) => `0.0${10 + index} in`);
    const more = values
      .map((value, index) => `  shim-${index}:\n    value: ${value}\n    note: A shim of its own.`)
      .join('\n');
    const text = sampleText.replace('  idle-vacuum:', `${more}\n  idle-vacuum:`);
    const printed = await printCard(cardOrder(text, 'a5'));
    expect(printed.pages).toBeGreaterThan(2 * leaves.a5);
    const { pages } = await readPdf(printed.pdf);
    const words = pages.map((page) => page.text).join(' ');
    for (const value of values) expect(words).toContain(value);
    expectPrint(await readPdf(printed.pdf), 'a5');
  });

  test('with an error is refused, and as a draft bears DRAFT on every side', async () => {
    const wrong = [finding({ severity: 'error' })];
    await expect(printCard(cardOrder(sampleText, 'letter', { findings: wrong }))).rejects.toThrow(
      'has errors: it is printed only as a draft',
    );
    const printed = await printCard(
      cardOrder(sampleText, 'half-letter', { findings: wrong, draft: true }),
    );
    const { pages } = await readPdf(printed.pdf);
    expect(pages.map((page) => page.text.includes('DRAFT'))).toEqual(pages.map(() => true));
  });

  test('with matter too wide or letters without a font names them', async () => {
    const wide = `| ${Array.from({ length: 60 }, () => 'w').join(' | ')} |`;
    const rule = `| ${Array.from({ length: 60 }, () => '---').join(' | ')} |`;
    const text = sampleText
      .replace('## Float level', '## Float level\n\n1. Сталь.')
      .replace(
        '1. Turn the cover over.',
        `1. Look:\n\n   ${wide}\n   ${rule}\n   ${wide}\n\n1. Turn the cover over.`,
      );
    const { problems } = await printCard(cardOrder(text, 'a5'));
    expect(problems.join('\n')).toMatch(/mm too wide for the page and would be cut off/);
    expect(problems.join('\n')).toContain('No font in templates/fonts has С (U+0421), а (U+0430)');
  });
});

describe.skipIf(here === null)('a press that can’t print', patience, () => {
  test('names a font that is damaged', async () => {
    const fonts = new Map([...templates.fonts, ['sans-italic.woff2', new Uint8Array([1, 2, 3])]]);
    await expect(
      printCard(cardOrder(sampleText, 'letter', { templates: { ...templates, fonts } })),
    ).rejects.toThrow("A font of the templates can't be used: Gaugeleaf Sans 400 italic.");
  });

  test('says so where the browser does not start', async () => {
    const broken = { path: '/bin/false', label: 'a broken browser', make: '1', env: {}, args: [] };
    const printed = printCard(cardOrder(sampleText, 'letter', { browser: broken }));
    await expect(printed).rejects.toThrow(PressStopped);
    await expect(printed).rejects.toThrow(
      /^The browser \(a broken browser\) does not start: .*Choose another with --browser or GAUGELEAF_BROWSER\.$/,
    );
  });
});

describe.skipIf(here === null)('a booklet', patience, () => {
  let read: ReadPdf;
  let pdf: Uint8Array;
  const talk: string[] = [];

  beforeAll(async () => {
    const order = bookletOrder('half-letter', { onProgress: (message) => talk.push(message) });
    const printed = await printBooklet(order);
    expect(printed.problems).toEqual([]);
    pdf = printed.pdf;
    read = await readPdf(pdf);
  }, patience.timeout);

  test('has its size, its fonts and every value', () => expectPrint(read, 'half-letter'));

  test('has a contents whose page numbers are true', () => {
    const contents = read.pages[1]?.text ?? '';
    expect(contents).toContain('Contents');
    const places = [
      ['How to read a sheet', /^(?:.{0,60})?How to read a sheet.*Each unit has a chapter/],
      ['Before any work', /Before any work.*will kill/],
      ['Quick reference', /Quick reference.*SETTING/i],
      ['Gauges to gather', /Gauges to gather.*What the settings of this booklet are made with/],
    ] as const;
    for (const [title, opening] of places) {
      const number = Number(new RegExp(`${title}\\s*(\\d+)`).exec(contents)?.[1]);
      expect(read.pages[number - 1]?.text, `${title} on page ${number}`).toMatch(opening);
    }
    const chapters = [...contents.matchAll(/Tarn T64 two-barrel, Holme Seven\s*(\d+)/g)];
    expect(chapters.length).toBe(2);
    for (const [, number] of chapters) {
      expect(read.pages[Number(number) - 1]?.text).toMatch(/PART NUMBERS/i);
    }
  });

  test('has page numbers, running heads, a title and an outline', () => {
    for (const [index, page] of read.pages.entries()) {
      if (index > 0)
        expect(page.text, `page ${index + 1}`).toMatch(new RegExp(`\\b${index + 1}\\b`));
    }
    expect(read.title).toBe('Settings for Holme cars');
    expect(read.language).toBe('en');
    expect(read.tagged).toBe(true);
    expect(read.outline.length).toBeGreaterThan(4);
  });

  test('leaves nothing out of what is read aloud', async () => {
    expect(await unreadText(pdf)).toEqual([]);
  });

  test('says what it is doing', () => {
    expect(talk).toContain('Laying out 2 sheets');
    expect(talk.at(-1)).toBe(`Printing ${read.pages.length} pages`);
  });

  test('comes out the same to the byte from a browser of its own', async () => {
    const again = await printBooklet(bookletOrder('half-letter', own()));
    expect(Buffer.from(again.pdf).equals(Buffer.from(pdf))).toBe(true);
  });

  test('with one wrong sheet is refused, and as a draft bears DRAFT on every page', async () => {
    const sheets = [toPrint(sampleText), toPrint(sampleText, [finding({ severity: 'error' })])];
    await expect(printBooklet(bookletOrder('a4', { sheets }))).rejects.toThrow(
      'only as a draft while there are errors in sheets/tarn-t64-holme-seven.md',
    );
    const printed = await printBooklet(bookletOrder('a4', { sheets, draft: true }));
    const { pages } = await readPdf(printed.pdf);
    expect(pages.map((page) => page.text.includes('DRAFT'))).toEqual(pages.map(() => true));
  });

  test('of no sheet is refused', async () => {
    await expect(printBooklet(bookletOrder('a4', { sheets: [] }))).rejects.toThrow(
      'The edition has no sheet to print.',
    );
  });
});
