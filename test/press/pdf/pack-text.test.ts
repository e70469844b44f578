import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { packText } from '../../../src/press/pdf/pack-text.ts';

const advances = [500, 200, 600, 350];

/** Where each glyph of a content starts, by the rules of text (ISO 32000-1, 9.4.4), without its place. */
function starts(content: string): { glyph: number; at: number }[] {
  const size = Number(/ ([\d.]+) Tf/.exec(content)?.[1]);
  const found: { glyph: number; at: number }[] = [];
  let line = 0;
  let pen = 0;
  const tokens = content.slice(content.indexOf('Tm')).matchAll(/(-?[\d.]+) 0 Td|<(\w+)>|(-?\d+)/g);
  for (const [, move, hex, back] of tokens) {
    if (move !== undefined) {
      line += Number(move);
      pen = line;
    } else if (back !== undefined) pen -= (Number(back) * size) / 1000;
    for (const [code] of (hex ?? '').matchAll(/\w{4}/g)) {
      const glyph = Number.parseInt(code, 16);
      found.push({ glyph, at: pen });
      pen += ((advances[glyph] ?? 0) * size) / 1000;
    }
  }
  return found;
}

const head = 'BT\n/F4 11.5 Tf\n1 0 0 -1 30 40 Tm\n';

describe('lines of glyphs', () => {
  test('that follow by their own advance become one string', () => {
    const content = `${head}<0000> Tj\n5.75 0 Td <0001> Tj\n2.3 0 Td <0002> Tj\nET\n`;
    expect(packText(content, () => advances)).toBe(`${head}<000000010002> Tj\nET\n`);
  });

  test('keep every glyph in its place to half a thousandth of the size', () => {
    const glyphs = fc.array(
      fc.record({ glyph: fc.nat({ max: 3 }), move: fc.integer({ min: -30_000, max: 90_000 }) }),
      { minLength: 1, maxLength: 60 },
    );
    fc.assert(
      fc.property(glyphs, (list) => {
        const lines = list.map(({ glyph, move }, at) => {
          const code = `<${glyph.toString(16).padStart(4, '0')}> Tj\n`;
          return at === 0 ? code : `${move / 10_000} 0 Td ${code}`;
        });
        const content = `${head}${lines.join('')}ET\n`;
        const packed = packText(content, () => advances);
        const [before, after] = [starts(content), starts(packed)];
        expect(after.map(({ glyph }) => glyph)).toEqual(before.map(({ glyph }) => glyph));
        for (const [index, { at }] of before.entries()) {
          expect(Math.abs((after[index]?.at ?? Number.NaN) - at)).toBeLessThanOrEqual(0.00575001);
        }
      }),
    );
  });

  test.each([
    ['a font that is not known', `${head}<0000> Tj\n5 0 Td <0001> Tj\nET\n`, null],
    ['a glyph that is not known', `${head}<0000> Tj\n5 0 Td <0009> Tj\nET\n`, advances],
    ['a line that climbs', `${head}5 2 Td <0001> Tj\nET\n`, advances],
  ])('stay as they are with %s', (_, content, known) => {
    expect(packText(content, () => known)).toBe(content);
  });
});
