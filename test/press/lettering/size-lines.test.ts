import { describe, expect, test } from 'vitest';
import { withBrowser } from '../../../src/press/browser/run.ts';
import { enlargement, scaleWords } from '../../../src/press/drawings/enlargement.ts';
import { hatching } from '../../../src/press/drawings/hatching.ts';
import { box } from '../../../src/press/drawings/pen.ts';
import { render } from '../../../src/press/html/render.ts';
import { type Face, faceWidths } from '../../../src/press/lettering/glyph-widths.ts';
import { breadth, nameLines, sizeLines } from '../../../src/press/lettering/size-lines.ts';
import { browserHere, builtInTemplates } from '../stand.ts';

const browser = await browserHere();
if (typeof browser === 'string') console.warn(`Widths of letters are not measured: ${browser}`);

describe('lettering', () => {
  test('says a bound in capitals, as every print does: no minutes', () => {
    const drawn = (text: string) =>
      sizeLines(text, 100).flatMap(({ stretches }) => stretches.map((each) => each.text));
    expect(drawn('1-5/8 in min').join('')).toMatch(/ in MIN$/);
    expect(drawn('17.1 inHg min').join('')).toBe('17.1 inHg MIN');
    expect(drawn('5 min').join('')).toBe('5 min');
  });

  test.skipIf(typeof browser === 'string')('has the widths that the fonts have', async () => {
    if (typeof browser === 'string') return;
    const fonts: Readonly<Record<Face, string>> = {
      size: '600 1000px "Gaugeleaf Sans"',
      name: '400 1000px "Gaugeleaf Condensed"',
      upper: '600 1000px "Gaugeleaf Upper"',
      lower: '600 1000px "Gaugeleaf Lower"',
    };
    const built = builtInTemplates();
    const used = Object.values(fonts).map((font) => `<p style='font: ${font}'>8</p>`);
    const page = `<html><head><style>{{css "styles.css"}}</style></head><body>${used.join('')}</body></html>`;
    const html = await render(
      'x.hbs',
      {},
      { ...built, texts: new Map([...built.texts, ['x.hbs', page]]) },
    );
    const asked = Object.entries(faceWidths).map(([face, table]) => [
      fonts[face as Face],
      table.map(([, letters]) => letters),
    ]);
    const measured = await withBrowser(browser, async (run) => {
      await run.load(html);
      return run.ask(`(async () => {
        await document.fonts.ready;
        const pen = document.createElement('canvas').getContext('2d');
        pen.fontKerning = 'none';
        return ${JSON.stringify(asked)}.map(([font, groups]) => {
          pen.font = font;
          return groups.map((group) => [...group].map((one) => Math.round(pen.measureText(one).width)));
        });
      })()`);
    });
    const expected = Object.values(faceWidths).map((table) =>
      table.map(([width, letters]) => [...letters].map(() => width)),
    );
    expect(measured).toEqual(expected);
  });

  test('parts a size where the press parts it, and a number never from its unit', () => {
    const texts = (text: string, width: number) =>
      sizeLines(text, width).map(({ stretches }) => stretches.map((each) => each.text).join(''));
    expect(texts('13/64 ± 1/64 in', 60)).toEqual(['13⁄64 ± 1⁄64 in']);
    expect(texts('12,5 ± 0,5 mm', 22.5)).toEqual(['12,5', '± 0,5 mm']);
    expect(texts('1-1/2 turns in after contact', 22.5)).toEqual([
      '1\u202f1⁄2 turns in',
      'after',
      'contact',
    ]);
    const [first] = sizeLines('1-13/64 in', 60);
    expect(first?.stretches.map(({ face }) => face)).toEqual(['size', 'upper', 'lower', 'size']);
  });

  test('gives a word that is broader than its line a line of its own', () => {
    const [, second] = nameLines('the thermostaticallycontrolledchokevalve', 20);
    expect(second?.width).toBeGreaterThan(20);
    expect(breadth('88', 'size', 10)).toBe(12);
  });
});

describe('a scale', () => {
  const room = { least: 2, wanted: 3, most: 8 };

  test('is true size where that can be seen, else the one that comes nearest', () => {
    expect(enlargement(2, room)).toBe(1);
    expect(enlargement(8, room)).toBe(1);
    expect(enlargement(8.001, room)).toBe(1 / 3);
    expect(enlargement(1.999, room)).toBe(2);
    expect(enlargement(0.0254, room)).toBe(120);
    expect(enlargement(0, room)).toBeNull();
    expect(enlargement(1e-9, room)).toBeNull();
    expect(enlargement(1e9, room)).toBeNull();
  });

  test('is said in words', () => {
    expect([1 / 2, 1, 2, 120].map(scaleWords)).toEqual([
      'half size',
      'true size',
      'twice its size',
      '120 times its size',
    ]);
  });
});

describe('hatching', () => {
  test('keeps within its outline and out of a hole, at 45 degrees', () => {
    const outline = box(0, 0, 20, 10).points;
    const hole = box(8, 2, 4, 6).points;
    const d = hatching([outline, hole], 'right');
    const lines = [...d.matchAll(/M(\S+) (\S+)L(\S+) (\S+?)(?=M|$)/g)].map((m) =>
      m.slice(1).map(Number),
    );
    expect(lines.length).toBeGreaterThan(8);
    for (const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] of lines) {
      expect(Math.abs(Math.abs(x2 - x1) - Math.abs(y2 - y1))).toBeLessThan(0.003);
      const middle = [(x1 + x2) / 2, (y1 + y2) / 2] as const;
      expect(middle[0] > 8.01 && middle[0] < 11.99 && middle[1] > 2.01 && middle[1] < 7.99).toBe(
        false,
      );
      for (const x of [x1, x2]) expect(x >= -0.001 && x <= 20.001).toBe(true);
      for (const y of [y1, y2]) expect(y >= -0.001 && y <= 10.001).toBe(true);
    }
  });
});
