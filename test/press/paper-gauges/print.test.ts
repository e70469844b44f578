import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Paper, PressStopped } from '../../../src/press/orders/model.ts';
import { papers } from '../../../src/press/orders/paper.ts';
import { paperGaugesModel } from '../../../src/press/paper-gauges/model.ts';
import { printPaperGauges } from '../../../src/press/paper-gauges/print.ts';
import { judgePaper, paperErrorMm } from '../../../src/press/paper-gauges/rule.ts';
import { flate } from '../../../src/project/flate.ts';
import { rational } from '../../../src/quantity/index.ts';
import type { Rational } from '../../../src/quantity/model.ts';
import { browserHere, builtInTemplates, toPrint } from '../stand.ts';

const demo = (name: string) =>
  readFileSync(new URL(`../../../sheets/${name}.md`, import.meta.url), 'utf8');

const mm = (text: string) => rational(text);

function why(low: Rational | null, high: Rational | null): string | null {
  const verdict = judgePaper({ low, high }, 'gap');
  return verdict.ok ? null : verdict.why;
}

describe('whether paper will do', () => {
  // 0.25 mm of cuts, 0.2 % of damp, 0.25 % of scale: common practice, no source.
  test('rests on cuts, damp and the scale that a rule leaves unseen', () => {
    expect(paperErrorMm(mm('0')).valueOf()).toBe(0.25);
    expect(paperErrorMm(mm('10')).valueOf()).toBe(0.295);
    expect(paperErrorMm(mm('100')).valueOf()).toBe(0.7);
  });

  test('limits that leave exactly 0.2 mm between the ends will do, any closer will not', () => {
    // Up to 10 mm: 2 x 0.295 + 0.2 = 0.79 mm.
    expect(why(mm('9.21'), mm('10'))).toBe(null);
    expect(why(mm('9.2101'), mm('10'))).toBe(
      'limits 0.79 mm apart, and paper of that size needs 0.79 mm',
    );
    expect(why(mm('9.5'), mm('10'))).toBe(
      'limits 0.50 mm apart, and paper of that size needs 0.79 mm',
    );
  });

  test('one limit is enough; none is not', () => {
    expect(judgePaper({ low: mm('22.225'), high: null }, 'gap')).toMatchObject({
      ok: true,
      noGoMm: null,
    });
    expect(why(null, null)).toBe('no limits are stated');
  });

  test('what cannot be cut, bends, or lies in a bore is refused', () => {
    expect(why(mm('2.6'), mm('5'))).toBe('less than 3 mm of paper cannot be cut and held');
    // 3 mm exactly: 2.7275 + 0.25 + 0.0045 x 5 = 3.
    expect(why(mm('2.7275'), mm('5'))).toBe(null);
    expect(why(mm('110'), mm('120'))).toBe(null);
    expect(why(mm('110'), mm('120.01'))).toBe('more than 120 mm of paper bends');
    const wide = { low: mm('5'), high: mm('9') };
    expect(judgePaper(wide, 'in-bore')).toMatchObject({ ok: false });
    expect(judgePaper(wide, null)).toMatchObject({ ok: false });
    expect(judgePaper(wide, 'travel')).toMatchObject({ ok: true });
  });

  test('a gauge that is as wrong as it can be passes nothing that the limits refuse', () => {
    const hundredths = fc.integer({ min: 300, max: 12_000 });
    fc.assert(
      fc.property(hundredths, fc.integer({ min: 1, max: 400 }), (start, band) => {
        const low = rational(start, 100);
        const high = rational(start + band, 100);
        const verdict = judgePaper({ low, high }, 'gap');
        if (!verdict.ok || verdict.goMm === null || verdict.noGoMm === null) return;
        const { goMm, noGoMm } = verdict;
        expect(goMm.sub(paperErrorMm(goMm)).compare(low)).toBeGreaterThanOrEqual(0);
        expect(noGoMm.add(paperErrorMm(noGoMm)).compare(high)).toBeLessThanOrEqual(0);
        expect(noGoMm.sub(goMm).valueOf()).toBeGreaterThan(0.17);
      }),
    );
  });
});

describe('the gauges of a sheet', () => {
  const modelOf = (name: string) => {
    const { sheet } = toPrint(demo(name));
    return paperGaugesModel(sheet, null, { paper: 'letter', draft: false });
  };

  test('say what they are for; settings finer than paper are named with the reason', () => {
    const { gauges, refused, hasTravel } = modelOf('orlo-t71-wexcombe-six');
    expect(gauges.map(({ label }) => label)).toEqual(['Float level', 'Float drop']);
    const words = gauges[0]?.svg.replace(/<[^>]*>/g, '|');
    for (const said of [
      'Float level',
      '13⁄|',
      'free end of the float',
      '4.77–5.55 mm',
      'GO 5.04 mm',
    ])
      expect(words).toContain(said);
    expect(words).toContain('Orlo T71 two-barrel');
    expect(words).toContain('PROOF');
    expect(hasTravel).toBe(false);
    expect(refused).toContainEqual({ why: 'no limits are stated', settings: 'Pump stroke' });
    expect(refused.find(({ why }) => why.includes('bore'))?.settings).toBe(
      'Fast idle cam position; Choke unloader; Fast idle gap',
    );
  });

  test('part a word that would run on over the ends', () => {
    const long = 'x'.repeat(70);
    const text = demo('orlo-t71-wexcombe-six').replace(
      /at: free end of the float$/m,
      `at: ${long}`,
    );
    const { sheet } = toPrint(text);
    const model = paperGaugesModel(sheet, null, { paper: 'letter', draft: false });
    const lines = [...(model.gauges[0]?.svg.matchAll(/>(x+);?/g) ?? [])].map(
      ([, xs]) => xs?.length,
    );
    expect(lines).toEqual([26, 26, 18]);
  });

  test('are held beside a travel', () => {
    const { gauges, hasTravel } = modelOf('fennock-l83-larkmoor-ten');
    expect(gauges.map(({ label }) => label)).toContain('Pump stroke');
    expect(hasTravel).toBe(true);
  });
});

const hasPoppler = (() => {
  try {
    execFileSync('pdftotext', ['-v'], { stdio: 'ignore' });
    execFileSync('pdftoppm', ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
})();
const browser = await browserHere();
if (typeof browser === 'string') console.warn(`Paper gauges are not printed: ${browser}`);
if (!hasPoppler) console.warn('Paper gauges are not measured: poppler-utils is missing');
const canPrint = typeof browser !== 'string';

const dpi = 600;
const mmOf = (dots: number) => (dots / dpi) * 25.4;

interface Word {
  readonly text: string;
  /** In mm from the left and the top. */
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Where words stand, and which dots are black, as poppler has them. */
function look(pdf: Uint8Array) {
  const folder = mkdtempSync(join(tmpdir(), 'gauges-'));
  writeFileSync(join(folder, 'a.pdf'), pdf);
  const html = execFileSync('pdftotext', ['-l', '1', '-bbox', 'a.pdf', '-'], {
    cwd: folder,
    encoding: 'utf8',
  });
  const box = /<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)</g;
  const words: Word[] = [...html.matchAll(box)].map(([, ...parts]) => {
    const [left = 0, top = 0, right = 0, bottom = 0] = parts
      .slice(0, 4)
      .map((part) => (Number(part) * 25.4) / 72);
    return { text: parts[4] ?? '', left, top, right, bottom };
  });
  const bytes = execFileSync(
    'pdftoppm',
    ['-gray', '-r', String(dpi), '-l', '1', '-singlefile', 'a.pdf'],
    {
      cwd: folder,
      maxBuffer: 2 ** 28,
    },
  );
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'));
  const [width, height] = [Number(head?.[1]), Number(head?.[2])];
  const start = head?.[0].length ?? 0;
  const isBlack = (x: number, y: number) => (bytes[start + y * width + x] ?? 255) < 128;
  return { words, isBlack, width, height };
}

type Looked = ReturnType<typeof look>;

/** The middle, in mm, of the first line met from a place on going up (-1) or down (1). */
function lineFrom({ isBlack, height }: Looked, xMm: number, yMm: number, step: 1 | -1): number {
  const x = Math.round((xMm / 25.4) * dpi);
  let y = Math.round((yMm / 25.4) * dpi);
  while (y >= 0 && y < height && !isBlack(x, y)) y += step;
  const first = y;
  while (isBlack(x, y)) y += step;
  return mmOf((first + y - step + 1) / 2);
}

/** From the first black dot of a row or column to the last, in mm. */
function outermost(
  { isBlack, width, height }: Looked,
  at: number,
  from: number,
  to: number,
  down: boolean,
): number {
  const fixed = Math.round((at / 25.4) * dpi);
  let first = -1;
  let last = -1;
  for (let each = Math.round((from / 25.4) * dpi); each <= (to / 25.4) * dpi; each++) {
    if (each < 0 || each >= (down ? height : width)) continue;
    if (!(down ? isBlack(fixed, each) : isBlack(each, fixed))) continue;
    if (first < 0) first = each;
    last = each;
  }
  return mmOf(last - first + 1);
}

describe.skipIf(!canPrint || !hasPoppler)('printed', { timeout: 120_000 }, () => {
  const print = (name: string, paper: Paper, draft = false) => {
    if (typeof browser === 'string') throw new Error(browser);
    const order = { edition: null, paper, templates: builtInTemplates(), browser, flate, draft };
    return printPaperGauges({ ...toPrint(demo(name)), ...order });
  };

  test.each([
    [
      'orlo-t71-wexcombe-six',
      'letter',
      [
        [5.04, 5.28],
        [17.8, 18.71],
      ],
    ],
    [
      'orlo-m58-wexcombe-marchwood',
      'a4',
      [
        [8.23, 8.43],
        [27.37, 29.77],
      ],
    ],
    [
      'fennock-l83-larkmoor-ten',
      'half-letter',
      [
        [27.37, 28.19],
        [41.72, null],
      ],
    ],
    ['bressac-e52-astrelle-1100', 'a5', [[12.31, 12.69]]],
  ] as const)('%s on %s is true within 0.1 mm at 600 dpi', async (name, paper, wanted) => {
    const printed = await print(name, paper);
    expect(printed.problems).toEqual([]);
    const document = await PDFDocument.load(printed.pdf, { updateMetadata: false });
    expect(document.catalog.getOrCreateViewerPreferences().getPrintScaling()).toBe('None');
    const { widthMm, heightMm } = papers[paper];
    const size = document.getPage(0).getSize();
    // The browser makes its pages of whole pixels of 1/96 in.
    for (const [found, paperMm] of [
      [size.width, widthMm],
      [size.height, heightMm],
    ] as const) {
      const over = (found * 25.4) / 72 - paperMm;
      expect(Math.abs(over)).toBeLessThan(0.27);
    }
    const looked = look(printed.pdf);
    const measured: string[] = [];
    const near = (found: number, size: number, what: string) => {
      measured.push(`${what} ${found.toFixed(3)}`);
      expect(Math.abs(found - size), `${what} is ${found} mm`).toBeLessThan(0.1);
    };
    // The ends, 16 mm long beside a handle of 60 mm, between the lines above and below their words.
    const ends = (text: string, from: number, to: number) =>
      looked.words.filter(
        (word) => word.text === text && word.left > from && word.right < to && word.top > 60,
      );
    const [gos, noGos] = [ends('GO', 12, 28), ends('NO-GO', 88, 106)];
    let noGo = 0;
    for (const [at, [go, not]] of wanted.entries()) {
      near(lengthOfEnd(looked, gos[at]), go, 'GO');
      if (not !== null) near(lengthOfEnd(looked, noGos[noGo++]), not, 'NO-GO');
    }
    // The bars stand below or beside the first words of the mark of 100 mm, and of 4 in.
    const marks = looked.words.filter(({ text }) => text === '100');
    const along = marks.find(
      ({ left, right, top, bottom }) => left < 12 && right - left > bottom - top,
    );
    const down = marks.find(({ left, right, top, bottom }) => bottom - top > right - left);
    if (along === undefined || down === undefined) throw new Error('a bar is missing');
    const rows = [along.bottom + 2, along.bottom + 7];
    near(outermost(looked, rows[0] ?? 0, 9, 118, false), 100, '100 mm along');
    near(outermost(looked, rows[1] ?? 0, 9, 118, false), 101.6, '4 in along');
    near(outermost(looked, down.left - 2, down.top - 3, down.top + 106, true), 100, '100 mm down');
    near(outermost(looked, down.left - 7, down.top - 3, down.top + 106, true), 101.6, '4 in down');
    console.info(`${name}: ${measured.join(', ')}`);
    // Nothing nearer than 10 mm to the edge, but for what the width of a line takes.
    for (let y = 0; y < looked.height; y += 7) {
      for (let x = 0; x < looked.width; x += x < 230 ? 1 : 400) {
        if (looked.isBlack(x, y)) expect(mmOf(x), `ink at ${mmOf(y)} down`).toBeGreaterThan(9.9);
      }
    }
  });

  test('has the same bytes each time', async () => {
    const first = await print('orlo-t71-wexcombe-six', 'letter');
    const second = await print('orlo-t71-wexcombe-six', 'letter');
    expect(Buffer.compare(first.pdf, second.pdf)).toBe(0);
    expect(first.count).toBe(2);
  });

  test('is held back where a club’s style scales what is drawn', async () => {
    if (typeof browser === 'string') throw new Error(browser);
    const own = builtInTemplates();
    const texts = new Map(own.texts).set('club.css', '.gauge svg { width: 50%; height: auto; }');
    const order = { edition: null, paper: 'letter', browser, flate, draft: false } as const;
    const { problems } = await printPaperGauges({
      ...toPrint(demo('orlo-t71-wexcombe-six')),
      ...order,
      templates: { ...own, texts },
    });
    expect(problems).toEqual([
      'A style makes the gauges or the bars larger or smaller than they are: leave their width and height alone.',
    ]);
  });

  test('is refused where paper will do for nothing, with the reasons', async () => {
    const none = print('pellow-p44-ravensgarth-sports', 'letter');
    await expect(none).rejects.toThrow(PressStopped);
    await expect(print('pellow-p44-ravensgarth-sports', 'letter')).rejects.toThrow(
      /Paper is fine enough for no setting of .*Float level: no limits are stated/,
    );
  });
});

function lengthOfEnd(looked: Looked, word: Word | undefined): number {
  if (word === undefined) throw new Error('an end is missing');
  // Beside the words, and still on the end: it reaches 8 mm to either side of their middle.
  const x = (word.left + word.right) / 2 + 7;
  const middle = (word.top + word.bottom) / 2;
  return lineFrom(looked, x, middle, 1) - lineFrom(looked, x, middle, -1);
}
