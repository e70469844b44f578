import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exactText, formatDecimal, rational, roundTo } from '../../src/quantity/index.ts';

describe('rational', () => {
  test.each([
    ['.203', '0.203'],
    ['-1.50', '-1.5'],
    ['7.', '7'],
    ['007', '7'],
  ])('reads %s', (text, exact) => {
    expect(exactText(rational(text))).toBe(exact);
  });

  test.each(['', '.', '1/2', '1e3', ' 1', '1,5', '--1'])('refuses %j', (text) => {
    expect(() => rational(text)).toThrow(RangeError);
  });

  test('refuses a zero denominator', () => {
    expect(() => rational(1, 0)).toThrow('a ratio needs a denominator other than 0');
  });
});

describe('rounding', () => {
  // ASTM E29 as references.md gives it: ties to even (35.25 → 35.2, 35.35 → 35.4) or up.
  test.each([
    ['35.25', 1, '35.2', '35.3'],
    ['35.35', 1, '35.4', '35.4'],
    ['35.2500001', 1, '35.3', '35.3'],
    ['0.5', 0, '0', '1'],
    ['1.5', 0, '2', '2'],
    ['-0.5', 0, '0', '-1'],
    ['-35.25', 1, '-35.2', '-35.3'],
  ])('%s at %i: %s to even, %s to nearest', (text, places, even, nearest) => {
    expect(formatDecimal(rational(text), places, 'even')).toBe(even);
    expect(formatDecimal(rational(text), places, 'nearest')).toBe(nearest);
  });

  test('rounds once, never in stages: 1.2449 is 1.24, though 1.245 would be 1.25', () => {
    // references.md, rounding and limits.
    expect(formatDecimal(rational('1.2449'), 2)).toBe('1.24');
    expect(formatDecimal(roundTo(rational('1.2449'), 3), 2)).toBe('1.25');
  });

  test.each([
    ['1.041', 'up', '1.05'],
    ['1.149', 'down', '1.14'],
    ['-1.041', 'up', '-1.04'],
    ['-1.041', 'down', '-1.05'],
    ['-1.049', 'chop', '-1.04'],
    ['1.05', 'up', '1.05'],
  ] as const)('%s %s is %s', (text, mode, expected) => {
    expect(formatDecimal(rational(text), 2, mode)).toBe(expected);
  });

  test('keeps the places asked for, and no zero is negative', () => {
    expect(formatDecimal(rational('5'), 3)).toBe('5.000');
    expect(formatDecimal(rational('-0.0004'), 3)).toBe('0.000');
    expect(formatDecimal(rational(13, 64), 6)).toBe('0.203125');
  });

  test('an exact text is a decimal where one ends, a ratio where none does', () => {
    expect(exactText(rational(13, 64))).toBe('0.203125');
    expect(exactText(rational(-1, 6))).toBe('-1/6');
  });

  test('any number: down ≤ it ≤ up, a grain apart; nearest within half a grain', () => {
    const any = fc.tuple(
      fc.integer({ min: -1e9, max: 1e9 }),
      fc.integer({ min: 1, max: 1e6 }),
      fc.nat(6),
    );
    fc.assert(
      fc.property(any, ([n, d, places]) => {
        const value = rational(n, d);
        const grain = rational(1).div(10 ** places);
        const [down, up] = [roundTo(value, places, 'down'), roundTo(value, places, 'up')];
        expect(down.compare(value) <= 0 && value.compare(up) <= 0).toBe(true);
        expect(up.sub(down).compare(grain) <= 0).toBe(true);
        for (const mode of ['nearest', 'even'] as const) {
          expect(roundTo(value, places, mode).sub(value).abs().mul(2).compare(grain) <= 0).toBe(
            true,
          );
        }
        expect(rational(formatDecimal(value, places)).equals(roundTo(value, places))).toBe(true);
      }),
    );
  });
});
