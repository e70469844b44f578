import { execFileSync, spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { withBrowser } from '../../../src/press/browser/run.ts';
import { type PartStore, printBooklet } from '../../../src/press/index.ts';
import type { BookletOrder, PrintedBooklet } from '../../../src/press/orders/model.ts';
import { flate } from '../../../src/project/flate.ts';
import { partFolder } from '../../../src/project/part-store.ts';
import { folderWith } from '../../project/folder.ts';
import { type ReadPdf, readPdf } from '../pdf.ts';
import { browserHere, builtInTemplates, sampleText, toPrint } from '../stand.ts';

const browser = await browserHere();
if (typeof browser === 'string') console.warn(`Joining is not tested: ${browser}`);
const here = typeof browser === 'string' ? null : browser;

const hasTool = (name: string) => spawnSync(name, ['--version']).error === undefined;
for (const tool of ['qpdf', 'pdfinfo']) {
  if (!hasTool(tool)) console.warn(`Joined files are not held against ${tool}: it is not here.`);
}

// Generous: the machine may be busy with other tests.
const patience = { timeout: 240_000 };

const longer = sampleText.replace('## Float level', '## Float level\n\nLook at the float first.');
const title = (name: string) => sampleText.replace(/^title: .*$/m, `title: ${name}`);

function order(texts: readonly string[], store: PartStore | null): BookletOrder {
  if (here === null) throw new Error('no browser');
  return {
    paper: 'half-letter',
    templates: builtInTemplates(),
    picture: null,
    browser: here,
    draft: false,
    edition: { title: 'Settings for Holme cars' },
    orderGraphs: true,
    sheets: texts.map((text, index) => ({ ...toPrint(text), digest: `${index} ${text}` })),
    flate,
    store,
  };
}

const three = [sampleText, title('A second unit'), title('A third unit')];

describe.skipIf(here === null)('a booklet that is joined from parts', patience, () => {
  let printed: PrintedBooklet;
  let read: ReadPdf;
  const newFile = () => join(folderWith(), 'booklet.pdf');

  beforeAll(async () => {
    printed = await printBooklet(order(three, null));
    read = await readPdf(printed.pdf);
  }, patience.timeout);

  test('has on each page what the same browser prints there in one go', async () => {
    if (here === null) return;
    const whole = await withBrowser(here, async (run) => {
      await run.load(printed.html());
      return run.pdf({ tagged: true });
    });
    const expected = await readPdf(whole);
    expect(read.pages.length).toBe(expected.pages.length);
    // The heads are drawn before the rest, in place of after: words are compared without their order. In
    // one go there is no telling which tasks a page has, and its head does not say so.
    const words = (text: string) =>
      text
        .replace(/\btask \d+(?:\u2013\d+)?/, ' ')
        .trim()
        .split(/ +/)
        .sort();
    for (const [index, page] of read.pages.entries()) {
      expect(words(page.text), `page ${index + 1}`).toEqual(
        words(expected.pages[index]?.text ?? ''),
      );
    }
    // Joined, the chapters' bookmarks have their numbers.
    expect(read.outline.map((title) => title.replace(/^\d+ /, ''))).toEqual(expected.outline);
    expect(printed.pdf.length).toBeLessThan(whole.length);
  });

  test('carries each font once, and only what is used of it', () => {
    const names = read.pages.flatMap((page) => page.fonts.map(({ name }) => name));
    const faces = [...new Set(names)].map((name) => name.replace(/^[A-Z]{6}\+/, ''));
    expect(new Set(faces).size).toBe(faces.length);
    expect(names.every((name) => /^[A-Z]{6}\+/.test(name))).toBe(true);
  });

  test.skipIf(!hasTool('qpdf'))('is sound to qpdf, with tags and without', () => {
    const path = newFile();
    for (const bytes of [printed.pdf, printed.plain()]) {
      writeFileSync(path, bytes);
      expect(execFileSync('qpdf', ['--check', path], { encoding: 'utf8' })).toContain(
        'No syntax or stream encoding errors',
      );
    }
  });

  test.skipIf(!hasTool('pdfinfo'))('has headings, tables and links that poppler finds', () => {
    const path = newFile();
    writeFileSync(path, printed.pdf);
    const info = (option: string) =>
      execFileSync('pdfinfo', [option, path], { encoding: 'utf8', maxBuffer: 1 << 26 });
    const structure = info('-struct');
    expect(structure).not.toMatch(/error/i);
    expect(structure.match(/^ {2}H1 /gm)?.length).toBeGreaterThan(7);
    expect(structure).toMatch(/Table[\s\S]*TR[\s\S]*TH[\s\S]*TD/);
    expect(structure).toMatch(/Link \(inline\)\s+Object \d+ 0/);
    // The contents lead to each chapter, the chapters being other parts.
    const places = [...info('-dests').matchAll(/^ *(\d+) \[.*\] "(.*)"/gm)];
    const chapters = places.filter(([, , name]) => /^unit-\d$/.test(name ?? ''));
    expect(chapters.map(([, , name]) => name)).toEqual(['unit-1', 'unit-2', 'unit-3']);
    for (const [, page, name] of chapters) {
      expect(read.pages[Number(page) - 1]?.text, name).toMatch(/PART NUMBERS/i);
    }
  });

  test('is the same pages without its tags', async () => {
    const plain = await readPdf(printed.plain());
    expect(plain.tagged).toBe(false);
    expect(plain.outline).toEqual([]);
    expect(plain.pages.map(({ text }) => text)).toEqual(read.pages.map(({ text }) => text));
  });

  test('keeps its parts, and prints only what changed', async () => {
    const store = partFolder(folderWith());
    const first = await printBooklet(order(three, store));
    expect(first.parts.kept).toBe(0);
    expect(Buffer.compare(first.pdf, printed.pdf)).toBe(0);
    const again = await printBooklet(order(three, store));
    expect(again.parts).toEqual({ printed: 0, kept: first.parts.printed });
    expect(Buffer.compare(again.pdf, printed.pdf)).toBe(0);
    const other = [
      three[0] ?? '',
      longer.replace(/^title: .*$/m, 'title: A second unit'),
      three[2] ?? '',
    ];
    const changed = await printBooklet(order(other, store));
    expect(changed.parts.printed).toBe(1);
    const anew = await printBooklet(order(other, null));
    expect(Buffer.compare(changed.pdf, anew.pdf)).toBe(0);
  });
});
