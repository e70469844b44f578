import { describe, expect, test } from 'vitest';
import { agreeLimits, convertLimits, formatDecimal, inUnit } from '../../src/quantity/index.ts';
import { size } from './reading.ts';

type Options = Parameters<typeof convertLimits>[2];

function converted(
  text: string,
  unit: string,
  places: number,
  rounding: Options['rounding'],
): string {
  const result = convertLimits(size(text), unit, { places, rounding });
  return result.ok ? result.text : result.reason;
}

/** The exact limits of a text in another unit at so many places, for reading beside a book. */
function exact(text: string, unit: string, places: number): (string | null)[] {
  const { low, high, dimension } = size(text);
  return [low, high].map((limit) =>
    limit ? formatDecimal(inUnit(limit.base, dimension, unit), places) : null,
  );
}

describe('converted limits: worked examples', () => {
  test('11 ± 0.3 mm, the published example for ISO 370:1975 and BS 2856', () => {
    // references.md: .42126/.44488 in; nearest .421/.445 violates, inward .422/.444 holds.
    const original = '11 ± 0.3 mm';
    expect(exact(original, 'in', 5)).toEqual(['0.42126', '0.44488']);
    expect(converted(original, 'in', 3, 'ordinary')).toBe('0.421–0.445 in');
    expect(converted(original, 'in', 3, 'inward')).toBe('0.422–0.444 in');
    expect(convertLimits(size(original), 'in', { places: 3, rounding: 'ordinary' })).toMatchObject({
      widened: true,
    });
    expect(convertLimits(size(original), 'in', { places: 3, rounding: 'inward' })).toMatchObject({
      widened: false,
    });
    expect(agreeLimits(size(original), size('0.421–0.445 in'))).toMatchObject({
      verdict: 'widened',
    });
    expect(agreeLimits(size(original), size('0.422–0.444 in'))).toEqual({ verdict: 'inside' });
  });

  test('.043 ± .002 in at three grains of a millimeter', () => {
    // references.md: 1.0414/1.1430 mm; inward .001: 1.042/1.143, .01: 1.05/1.14, .1: 1.1 twice.
    const original = '.043 ± .002 in';
    expect(exact(original, 'mm', 4)).toEqual(['1.0414', '1.1430']);
    expect(converted(original, 'mm', 3, 'inward')).toBe('1.042–1.143 mm');
    expect(converted(original, 'mm', 2, 'inward')).toBe('1.05–1.14 mm');
    expect(convertLimits(size(original), 'mm', { places: 1, rounding: 'inward' })).toMatchObject({
      ok: true,
      text: '1.1–1.1 mm',
      zeroWidth: true,
    });
  });

  test('1.042–1.046 mm has no pair of thousandths: refused, with the reason', () => {
    // references.md: inward at .001 in it is .042/.041, inverted.
    expect(converted('1.042–1.046 mm', 'in', 3, 'inward')).toBe(
      'no figure with 3 decimal places of in lies inside 1.042–1.046 mm: rounded inward the limits cross (0.042 above 0.041); take one more place',
    );
    expect(converted('1.042–1.046 mm', 'in', 4, 'inward')).toBe('0.0411–0.0411 in');
    expect(converted('1.042–1.046 mm', 'in', 3, 'ordinary')).toBe('0.041–0.041 in');
  });

  test('limits are converted, not nominal and tolerance apart', () => {
    // 13/64 ± 1/64 in is 4.7625/5.55625 mm; 5.16 ± 0.40 mm would let 4.76 pass.
    expect(converted('13/64 ± 1/64 in', 'mm', 2, 'inward')).toBe('4.77–5.55 mm');
    expect(agreeLimits(size('13/64 ± 1/64 in'), size('5.16 ± 0.40 mm'))).toEqual({
      verdict: 'widened',
      side: 'low',
      first: '4.763 mm',
      second: '4.760 mm',
    });
  });

  test.each([
    ['0.020 in min', 'mm', 1, '0.6 mm min'],
    ['0.5 mm max', 'in', 3, '0.019 in max'],
    ['475 ± 25 rpm', 'rpm', 0, '450–500 rpm'],
    ['8 ± 1° BTDC', 'deg', 0, '7–9°'],
    ['19 ± 1 inHg', 'kPa', 1, '61.0–67.7 kPa'],
    // A longer time is a smaller flow: the figures still stand in rising order.
    ['30 to 35 s per 100 ml', 's/100 cm3', 0, '30–35 s per 100 cm3'],
    ['30 to 35 s per 100 ml', 'cm3/minute', 0, '172–200 cm3/min'],
    ['170 to 200 ml/min', 's/100 cm3', 0, '30–35 s per 100 cm3'],
  ])('%s in %s, inward at %i: %s', (text, unit, places, expected) => {
    expect(converted(text, unit, places, 'inward')).toBe(expected);
  });

  test('refuses what has no limits', () => {
    expect(converted('13/64 in', 'mm', 2, 'inward')).toBe('13/64 in states no limits');
  });

  test('fails for a unit of another thing', () => {
    expect(() => converted('0.020 in min', 'rpm', 2, 'inward')).toThrow(
      'rpm measures speed, not length',
    );
  });
});

describe('limits held against limits', () => {
  test.each([
    ['13/64 in', '5.16 mm', { verdict: 'none' }],
    ['0.018–0.022 in', '18 to 22 thou', { verdict: 'same' }],
    ['0.018–0.022 in', '0.4572–0.5588 mm', { verdict: 'same' }],
    ['0.018–0.022 in', '0.46–0.55 mm', { verdict: 'inside' }],
    // The first of these may have been worked from the second.
    [
      '0.188–0.218 in',
      '3/16–7/32 in',
      { verdict: 'widened', side: 'low', first: '0.1880 in', second: '0.1875 in' },
    ],
    ['0.187–0.219 in', '3/16–7/32 in', { verdict: 'inside' }],
    [
      '0.018–0.022 in',
      '0.48–0.54 mm',
      { verdict: 'apart', side: 'low', first: '0.457 mm', second: '0.480 mm' },
    ],
    [
      '0.018–0.022 in',
      '0.45–0.55 mm',
      { verdict: 'widened', side: 'low', first: '0.457 mm', second: '0.450 mm' },
    ],
    [
      '0.018–0.022 in',
      '0.46–0.59 mm',
      { verdict: 'apart', side: 'high', first: '0.559 mm', second: '0.590 mm' },
    ],
    [
      '0.018–0.022 in',
      '0.46 mm min',
      { verdict: 'apart', side: 'high', first: '0.559 mm', second: 'no upper limit' },
    ],
    ['0.020 in min', '0.51 mm min', { verdict: 'inside' }],
    [
      '0.020 in min',
      '0.50 mm min',
      { verdict: 'widened', side: 'low', first: '0.508 mm', second: '0.500 mm' },
    ],
  ])('%s and %s', (first, second, expected) => {
    expect(agreeLimits(size(first), size(second))).toEqual(expected);
  });
});
