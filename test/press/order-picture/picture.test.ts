import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Stage } from '../../../src/kinds/model.ts';
import { glyphWidths, textWidth, wrapText } from '../../../src/press/lettering/line-widths.ts';
import { layOut, type OrderLayout } from '../../../src/press/order-picture/layout.ts';
import { type OrderGraph, orderGraph } from '../../../src/press/order-picture/model.ts';
import { drawOrder } from '../../../src/press/order-picture/svg.ts';
import { bookletMargins, contentWidthMm, papers } from '../../../src/press/orders/paper.ts';
import { runs } from '../../suite/part.ts';
import { expectGolden } from '../stand.ts';
import { box, demoSheets, sample, sheetAndKind } from './stand.ts';

const half = papers['half-letter'];
const textWidthPt = (contentWidthMm(half, bookletMargins(half)) / 25.4) * 72;
const options = { prefix: 'order', alone: true };

async function svgOf(graph: OrderGraph): Promise<string> {
  return (await drawOrder(graph, options))?.svg ?? '';
}

/** What any picture must keep to, whatever the graph. */
async function expectSound(whole: OrderGraph): Promise<void> {
  const picture = await drawOrder(whole, options);
  const graph = { ...whole, disturbs: whole.disturbs.filter(({ harmless }) => !harmless) };
  const layout = await layOut(graph);
  expect(picture?.width).toBeLessThanOrEqual(textWidthPt);
  expectApart(layout);
  expectUncrossed(layout);
  expectBanded(layout);
  const svg = picture?.svg ?? '';
  const boxes = [...svg.matchAll(/data-box="(\d+)"/g)].map(([, number]) => Number(number));
  expect(boxes).toEqual(graph.boxes.map(({ number }) => number));
  const arrows = [...svg.matchAll(/data-arrow="(\w+)" data-from="(\d+)" data-to="(\d+)"/g)];
  expect(arrows.map(([, kind, from, to]) => `${kind} ${from} ${to}`)).toEqual([
    ...graph.before.map(({ from, to }) => `before ${from} ${to}`),
    ...graph.disturbs.map(({ from, to }) => `disturbs ${from} ${to}`),
  ]);
  expect(svg).not.toContain('NaN');
  for (const [, size] of svg.matchAll(/font-size="([\d.]+)"/g))
    expect(Number(size)).toBeGreaterThanOrEqual(6.5);
}

/** No box on another, none beyond the picture. */
function expectApart({ boxes, width, height }: OrderLayout): void {
  const beyond = boxes.filter(
    (one) =>
      one.x - one.width / 2 < -0.01 ||
      one.x + one.width / 2 > width + 0.01 ||
      one.y - one.height / 2 < 0 ||
      one.y + one.height / 2 > height,
  );
  expect(beyond).toEqual([]);
  const overlaps = boxes.flatMap((one, index) =>
    boxes
      .slice(index + 1)
      .filter(
        (two) =>
          Math.abs(one.x - two.x) < (one.width + two.width) / 2 - 0.01 &&
          Math.abs(one.y - two.y) < (one.height + two.height) / 2 - 0.01,
      )
      .map((two) => `${one.box.number} on ${two.box.number}`),
  );
  expect(overlaps).toEqual([]);
}

/** No upright stretch of an arrow through a box. */
function expectUncrossed({ boxes, arrows }: OrderLayout): void {
  const crossed = arrows.flatMap(({ from, to, runs }) =>
    runs
      .filter(({ top, bottom }) => bottom > top)
      .flatMap((run) =>
        boxes
          .filter(
            (one) =>
              Math.abs(run.x - one.x) < one.width / 2 &&
              run.top < one.y + one.height / 2 &&
              run.bottom > one.y - one.height / 2,
          )
          .map((one) => `${from}>${to} through ${one.box.number}`),
      ),
  );
  expect(crossed).toEqual([]);
}

/** Every box within the band of its stage. */
function expectBanded({ boxes, bands }: OrderLayout): void {
  for (const { box: each, y, height } of boxes) {
    const band = bands.find(({ stage }) => stage === each.stage);
    expect(y - height / 2).toBeGreaterThanOrEqual(band?.top ?? Number.POSITIVE_INFINITY);
    expect(y + height / 2).toBeLessThanOrEqual(band?.bottom ?? 0);
  }
}

describe('the picture of a graph', () => {
  test('is the one that was looked at', async () => {
    expectGolden('order-graph.svg', await svgOf(sample));
  });

  test.each(demoSheets)('of %s is sound and the same every time', async (file, text) => {
    const graph = () => {
      const { sheet, kind } = sheetAndKind(text, file);
      return orderGraph(sheet, kind);
    };
    await expectSound(graph());
    // booklet.css draws a higher one smaller, and its words with it.
    const { height = 0 } = (await drawOrder(graph(), options)) ?? {};
    expect((height / 72) * 25.4).toBeLessThanOrEqual(170);
    expect(await svgOf(graph())).toBe(await svgOf(graph()));
  });

  test('shows a repeat by a second frame, a disturbance by dashes and the setting’s name', async () => {
    const svg = await svgOf(sample);
    const again = /<g data-box="10">.*?<\/g>/s.exec(svg)?.[0] ?? '';
    expect(again.match(/<rect/g)).toHaveLength(2);
    expect(/<g data-box="9">.*?<\/g>/s.exec(svg)?.[0].match(/<rect/g)).toHaveLength(1);
    expect(svg).toMatch(/data-from="9" data-to="8"[^>]*><path [^>]*stroke-dasharray/);
    expect(svg).toContain('>Fuel height</text>');
    // The box that it points to has that name already.
    expect(svg.match(/>Rods<\/text>/g)).toHaveLength(1);
  });

  test('tells who cannot see it the same', async () => {
    const svg = await svgOf(sample);
    expect(svg).toContain('role="img" aria-labelledby="order-title order-desc"');
    expect(svg).toContain('<title id="order-title">Order of work: Tarn T64, Holme Seven</title>');
    expect(svg).toContain(
      '10 Speed, again (after 8, 9; does 8 again). 11 Try it (after 8).</desc>',
    );
    expect(svg).toContain('6 Rods (after 5; disturbs 4).');
  });

  test('is black on white', async () => {
    const colors = [...(await svgOf(sample)).matchAll(/(?:fill|stroke)="([^"]+)"/g)];
    expect(new Set(colors.map(([, color]) => color))).toEqual(new Set(['#000', '#fff', 'none']));
  });

  test('holds the lines of its boxes to their width where it stands alone', async () => {
    expect(await svgOf(sample)).toContain(
      `textLength="16.54" lengthAdjust="spacingAndGlyphs">Level<`,
    );
    const inPage = await drawOrder(sample, { prefix: 'order-3', alone: false });
    expect(inPage?.svg).not.toContain('textLength');
    expect(inPage?.svg).toContain('id="order-3-title"');
  });

  test('is none where there is no work', async () => {
    expect(await drawOrder({ title: 'x', boxes: [], before: [], disturbs: [] }, options)).toBe(
      null,
    );
  });

  test('points up where the sheet goes against an arrow', async () => {
    const boxes = [box(1, 'bench', 'Rods'), box(2, 'bench', 'Pump')];
    const graph = { title: 'x', boxes, before: [{ from: 2, to: 1 }], disturbs: [] };
    const { arrows, boxes: placed } = await layOut(graph);
    expect(arrows[0]?.up).toBe(true);
    expect(placed[0]?.y).toBeLessThan(placed[1]?.y ?? 0);
  });

  test('is sound whatever the graph', { timeout: 120_000 }, async () => {
    const stages: readonly Stage[] = ['strip', 'bench', 'before-start', 'running', 'road'];
    const any = fc
      .record({
        labels: fc.array(fc.string({ unit: 'grapheme', maxLength: 60 }), {
          minLength: 1,
          maxLength: 18,
        }),
        stages: fc.array(fc.nat(4), { minLength: 18, maxLength: 18 }),
        pairs: fc.array(fc.tuple(fc.nat(17), fc.nat(17), fc.boolean()), { maxLength: 40 }),
      })
      .map(({ labels, stages: picked, pairs }): OrderGraph => {
        const boxes = labels.map((label, index) =>
          box(index + 1, stages[picked[index] ?? 0] ?? 'bench', label),
        );
        const seen = new Set<string>();
        const sound = pairs
          .map(([one, two, hard]) => ({
            from: (one % boxes.length) + 1,
            to: (two % boxes.length) + 1,
            hard,
          }))
          .filter(({ from, to, hard }) => {
            const key = `${from} ${to} ${hard}`;
            return from !== to && !seen.has(key) && seen.add(key);
          });
        return {
          title: 'x',
          boxes,
          before: sound.filter(({ hard }) => hard),
          disturbs: sound
            .filter(({ hard }) => !hard)
            .map((pair) => ({ ...pair, settings: ['A setting of some name'], harmless: false })),
        };
      });
    await fc.assert(fc.asyncProperty(any, expectSound), { numRuns: runs(20) });
  });
});

describe('hostile words', () => {
  const hostile = [
    '<script>alert("1")</script>',
    "</text></svg><img src=x onerror='x'>",
    '&lt; & ]]> <!-- ',
    `${'x'.repeat(400)}`,
    'bell \u0007 null \u0000 lone \ud800 mark',
    '‮turned‬ 汽化器调整单位汽化器调整单位汽化器调整单位 🔧🔧🔧',
    '',
  ];
  const graph: OrderGraph = {
    title: '</title><script>x</script>',
    boxes: hostile.map((label, index) => box(index + 1, 'bench', label)),
    before: [{ from: 1, to: 2 }],
    disturbs: [{ from: 2, to: 3, settings: ['"><script>&', 'x'.repeat(300)], harmless: false }],
  };

  test('stay words, and in their boxes', async () => {
    await expectSound(graph);
    const svg = await svgOf(graph);
    const tags = new Set([...svg.matchAll(/<\/?([^\s/>]+)/g)].map(([, name]) => name));
    expect(tags).toEqual(new Set(['svg', 'title', 'desc', 'rect', 'g', 'path', 'text']));
    expect(svg.replace(/&(?:amp|lt|gt|quot|#39);/g, '')).not.toContain('&');
    expect(svg).not.toMatch(/\p{Surrogate}/u);
    // XML 1.0, 2.2: the controls that no escape makes lawful.
    expect([...svg].filter((each) => each < ' ' && each !== '\n')).toEqual([]);
    expect(svg).toContain('&lt;script&gt;');
  });

  test('are wrapped into two lines that fit, and cut off with a sign', () => {
    for (const label of hostile) {
      const lines = wrapText(label, 7, 58, 2);
      expect(lines.length).toBeLessThanOrEqual(2);
      for (const line of lines) expect(textWidth(line, 7)).toBeLessThanOrEqual(58);
    }
    expect(wrapText('x'.repeat(400), 7, 58, 2)[1]).toMatch(/^x+…$/);
    expect(wrapText('Straighten the float', 7, 58, 2)).toEqual(['Straighten the', 'float']);
    expect(wrapText('Choke pull-down-and-up gap', 7, 58, 2)).toEqual([
      'Choke pull-down-',
      'and-up gap',
    ]);
  });
});

describe('the widths of letters', () => {
  test('are those of the shipped font', () => {
    const font = readFileSync(
      new URL('../../../templates/fonts/fallback/sans-regular.ttf', import.meta.url),
    );
    const advance = advancesOf(font);
    for (const [width, characters] of glyphWidths) {
      for (const character of characters)
        expect([character, advance(character.codePointAt(0) ?? 0)]).toEqual([character, width]);
    }
    const known = new Set(glyphWidths.flatMap(([, characters]) => [...characters]));
    for (let code = 0x20; code < 0x7f; code++) expect(known).toContain(String.fromCharCode(code));
  });
});

/** Advance widths of a TrueType font by code point: OpenType's `cmap` format 4, `hhea`, `hmtx`. */
function advancesOf(font: Buffer): (code: number) => number {
  const table = (tag: string): number => {
    for (let at = 12; at < 12 + 16 * font.readUInt16BE(4); at += 16)
      if (font.toString('latin1', at, at + 4) === tag) return font.readUInt32BE(at + 8);
    throw new Error(`the font has no table ${tag}`);
  };
  const cmap = table('cmap');
  const maps = Array.from(
    { length: font.readUInt16BE(cmap + 2) },
    (_, index) => cmap + font.readUInt32BE(cmap + 8 + 8 * index),
  );
  const map = maps.find((at) => font.readUInt16BE(at) === 4) ?? 0;
  const doubled = font.readUInt16BE(map + 6);
  const glyph = (code: number): number => {
    for (let at = 0; at < doubled; at += 2) {
      if (font.readUInt16BE(map + 14 + at) < code) continue;
      const start = font.readUInt16BE(map + 16 + doubled + at);
      if (start > code) return 0;
      const delta = font.readUInt16BE(map + 16 + 2 * doubled + at);
      const range = map + 16 + 3 * doubled + at;
      const offset = font.readUInt16BE(range);
      const found = offset === 0 ? code : font.readUInt16BE(range + offset + (code - start) * 2);
      return (found + delta) & 0xffff;
    }
    return 0;
  };
  const long = font.readUInt16BE(table('hhea') + 34);
  const hmtx = table('hmtx');
  return (code) => font.readUInt16BE(hmtx + 4 * Math.min(glyph(code), long - 1));
}
