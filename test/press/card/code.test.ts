import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cardCode, codeSymbols } from '../../../src/press/card/code.ts';
import { cardModel } from '../../../src/press/card/model.ts';
import { capHeightsByFamily } from '../../../src/press/html/font-faces.ts';
import { builtInTemplates, sampleText, toPrint } from '../stand.ts';

/** Whether the eighth symbol bears out the others, reckoned as guide and comment say. */
function isCardCode(code: string): boolean {
  const values = [...code.toUpperCase().replace(/[\s-]/g, '')].map((each) =>
    codeSymbols.indexOf(each),
  );
  let sum = 0;
  for (const [index, value] of values.entries()) sum += (index + 1) * value;
  return values.length === 8 && !values.includes(-1) && sum % 19 === 0;
}

/** The first seven symbols of a content's code, from the digest that OpenSSL makes. */
function symbolsOf(content: string): string {
  const digest = createHash('sha256').update(content).digest('hex');
  let rest = BigInt(`0x${digest}`);
  let symbols = '';
  for (let each = 0; each < 7; each++) {
    symbols += codeSymbols[Number(rest % 19n)];
    rest /= 19n;
  }
  return symbols;
}

describe('the code of a card', () => {
  test('is the digest of its content modulo 19 to the seventh', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (content) => {
        expect(cardCode(content).replace('-', '').slice(0, 7)).toBe(symbolsOf(content));
      }),
    );
  });

  test('has symbols of which none looks like another', () => {
    expect(new Set(codeSymbols).size).toBe(19);
    for (const pair of ['0O', '1I', '1L', '2Z', '5S', '8B', '6G', 'UV', 'OQ', 'OD', 'MN', 'PT']) {
      expect([...pair].filter((symbol) => codeSymbols.includes(symbol)).length, pair).toBeLessThan(
        2,
      );
    }
  });

  test('of any content is well formed, whatever its case and gaps', () => {
    fc.assert(
      fc.property(fc.string(), (content) => {
        const code = cardCode(content);
        expect(code).toMatch(new RegExp(`^[${codeSymbols}]{4}-[${codeSymbols}]{4}$`));
        expect(isCardCode(code)).toBe(true);
        expect(isCardCode(code.toLowerCase().replace('-', ' '))).toBe(true);
      }),
    );
  });

  const place = fc.integer({ min: 0, max: 7 });
  test('with one symbol misheard is known to be wrong', () => {
    fc.assert(
      fc.property(fc.string(), place, fc.integer({ min: 1, max: 18 }), (content, at, step) => {
        const symbols = [...cardCode(content).replace('-', '')];
        const old = codeSymbols.indexOf(symbols[at] ?? '');
        symbols[at] = codeSymbols[(old + step) % 19] ?? '';
        expect(isCardCode(symbols.join(''))).toBe(false);
      }),
    );
  });

  test('with two symbols changed about is known to be wrong', () => {
    fc.assert(
      fc.property(fc.string(), place, place, (content, first, second) => {
        const symbols = [...cardCode(content).replace('-', '')];
        fc.pre(symbols[first] !== symbols[second]);
        [symbols[first], symbols[second]] = [symbols[second] ?? '', symbols[first] ?? ''];
        expect(isCardCode(symbols.join(''))).toBe(false);
      }),
    );
  });
});

describe('the code on a card', () => {
  const capHeights = capHeightsByFamily(builtInTemplates());
  const options = { paper: 'letter', draft: false, picture: null, capHeights, readings: null };
  const codeOf = (text: string, more: object = {}) => {
    const { sheet } = toPrint(text);
    return cardModel(sheet, [], null, { ...options, ...more } as never).code;
  };
  const code = codeOf(sampleText);

  test.each([
    ['a figure', '13/64 ± 1/64 in', '13/64 ± 1/32 in'],
    ['a step', '1. Turn the cover over.', '1. Turn the cover round.'],
    ['the revision', 'revision: 3', 'revision: 4'],
    ['the status', 'status: released', 'status: proof'],
    ['a page', 'from: shop p. 6', 'from: shop p. 16'],
    ['a ruling', 'Later units only', 'Earlier units only'],
    ['a caution', 'Exhaust kills', 'Exhaust will kill'],
  ])('is another when %s is', (_, old, changed) => {
    expect(sampleText).toContain(old);
    expect(codeOf(sampleText.replace(old, changed))).not.toBe(code);
  });

  test('is the same on another paper, as a draft, and filled in', () => {
    const readings = { serial: '12', by: 'J', date: null, rule: 'r', settings: new Map() };
    expect(codeOf(sampleText, { paper: 'a5' })).toBe(code);
    expect(codeOf(sampleText, { draft: true })).toBe(code);
    expect(codeOf(sampleText, { readings })).toBe(code);
  });
});
