import { describe, expect, test } from 'vitest';
import { agree, findMisprint } from '../../src/quantity/index.ts';
import type { Agreement } from '../../src/quantity/model.ts';
import { gauges, size } from './reading.ts';

function verdictOf(first: string, second: string): Agreement {
  return agree(size(first), size(second), { gauges });
}

type Apart = Extract<Agreement, { verdict: 'disagrees' | 'within-tolerance' }>;

/** How two texts differ; fails where they do not. */
function apart(first: string, second: string): Apart {
  const found = verdictOf(first, second);
  if (found.verdict !== 'disagrees' && found.verdict !== 'within-tolerance') {
    throw new Error(`${first} and ${second}: ${found.verdict}`);
  }
  return found;
}

describe('agree', () => {
  test.each([
    ['13/64 in', '0.203125 in'],
    ['1/4 in', 'drill E'],
    ['No. 29 drill', '#29 drill'],
    ['No. 29 drill', '0.136 in'],
    ['9/64 drill', '9/64 in'],
    ['25.4 mm', '1 in'],
    ['1-1/4 turns out', '7-1/2 flats out'],
    ['12 flats down', '2 turns down'],
    ['18 to 22 thou', '0.018–0.022 in'],
    ['parallel', 'Parallel'],
    ['index', 'on index'],
    ['0.5 cm3 per stroke', '5 cc/10 strokes'],
    ['650 mbar', '65 kPa'],
  ])('same: %s and %s', (first, second) => {
    expect(verdictOf(first, second)).toEqual({ verdict: 'same' });
    expect(verdictOf(second, first)).toEqual({ verdict: 'same' });
  });

  test.each([
    // trade.md: `.203` for 13/64 is right to three places, `.20` to two.
    ['13/64 in', '.203 in'],
    ['13/64 in', '.20 in'],
    ['13/64 in', '5.16 mm'],
    ['0.203 in', '5.16 mm'],
    // A tie may go either way (ASTM E29): 1/8 is .125, and 1/16 is .0625.
    ['1/8 in', '.12 in'],
    ['1/8 in', '.13 in'],
    ['No. 28 drill', '0.14 in'],
    ['20 AWG', '0.81 mm'],
    ['19 inHg', '64 kPa'],
    ['12 ft-lb', '16 N·m'],
    ['35 s per 100 ml', '171 ml/min'],
    // Limits are the business of agreeLimits; here the figures need only be conversions.
    ['0.018–0.022 in', '0.46–0.56 mm'],
    ['13/64 ± 1/64 in', '4.77–5.55 mm'],
    ['0.018–0.022 in', '0.020 in wire'],
    ['0.018 in min', '0.018–0.022 in'],
    ['0.022 in max', '0.020 ± 0.002 in'],
  ])('agrees: %s and %s', (first, second) => {
    expect(verdictOf(first, second)).toEqual({ verdict: 'agrees' });
    expect(verdictOf(second, first)).toEqual({ verdict: 'agrees' });
  });

  test.each([
    // trade.md: `.140` for 9/64 = 0.140625 is neither rounding of three places.
    ['9/64 in', '.140 in', '.141 in', 'second'],
    ['.140 in', '9/64 in', '.141 in', 'first'],
    ['9/64 in', '0.140"', '0.141"', 'second'],
    ['9/64 in', '3,57 mm', null, null],
    ['11/64 in', '4,36 mm', '4,37 mm', 'second'],
    ['23 thou', '0.60 mm', '24 thou', 'first'],
  ] as const)('chopped: %s and %s', (first, second, expected, which) => {
    const found = verdictOf(first, second);
    expect(found).toEqual(
      expected === null ? { verdict: 'agrees' } : { verdict: 'chopped', expected, which },
    );
  });

  test('loose: both could be one size, but neither is the other converted', () => {
    // .2025 in is .203 in and 5.14 mm, but .203 in is 5.16 mm and 5.14 mm is .202 in.
    expect(verdictOf('0.203 in', '5.14 mm')).toEqual({ verdict: 'loose', expected: '5.16 mm' });
    expect(verdictOf('5,14 mm', '.203"')).toEqual({ verdict: 'loose', expected: '.202"' });
    expect(verdictOf('.203"', '5,14 mm')).toEqual({ verdict: 'loose', expected: '5,16 mm' });
  });

  test.each([
    ['13/64 ± 1/64 in', '0.210 in', '0.2031 in', '0.210 in', '0.007 in more'],
    ['0.210 in', '13/64 ± 1/64 in', '0.2100 in', '13/64 in', '0.007 in less'],
    ['475 ± 25 rpm', '500 rpm', '475 rpm', '500 rpm', '25 rpm more'],
    [
      '0.018–0.022 in',
      '0.021 in wire',
      '0.018–0.022 in',
      '0.021 in wire',
      'inside the range, off its middle',
    ],
  ])('within tolerance: %s and %s', (first, second, firstIn, secondText, difference) => {
    expect(verdictOf(first, second)).toMatchObject({
      verdict: 'within-tolerance',
      first: firstIn,
      second: secondText,
      difference,
    });
  });

  test('the limit itself is inside, the next figure is not', () => {
    expect(verdictOf('475 ± 25 rpm', '500 rpm').verdict).toBe('within-tolerance');
    expect(verdictOf('475 ± 25 rpm', '501 rpm').verdict).toBe('disagrees');
    expect(verdictOf('13/64 ± 1/64 in', '7/32 in').verdict).toBe('within-tolerance');
    expect(verdictOf('0.018–0.022 in', '0.022 in wire').verdict).toBe('within-tolerance');
    expect(verdictOf('0.018–0.022 in', '0.023 in wire').verdict).toBe('disagrees');
  });

  test.each([
    ['No. 29 drill', '0.163 in', '0.1360 in', '0.163 in', '0.027 in more'],
    ['0.203 in', '15/64 in', '0.2030 in', '15/64 in', '0.031 in more'],
    // Neighbors in the last figure share a tie, and are two sizes all the same.
    ['0.203 in', '0.204 in', '0.2030 in', '0.204 in', '0.001 in more'],
    ['475 rpm', '476 rpm', '475 rpm', '476 rpm', '1 rpm more'],
    ['No. 28 drill', '9/64 drill', '0.1405 in', '9/64 drill', '0.0001 in more'],
    ['0.203 in', '13/32 ± 1/64"', '0.2030 in', '13/32"', '0.203 in more'],
    ['1 turn out', '1-1/2 turns out', '1 turn', '1-1/2 turns', '1/2 turn more'],
    ['2 turns down', '11 flats down', '12 flats', '11 flats', '1 flat less'],
    ['0.018–0.022 in', '0.018–0.025 in', '0.0220 in', '0.025 in', '0.003 in more'],
    ['0.018–0.022 in', '0.015–0.022 in', '0.0180 in', '0.015 in', '0.003 in less'],
    [
      'No. 55 to No. 53 drill',
      'No. 56 to No. 53 drill',
      '0.0520 in',
      'No. 56 drill',
      '0.006 in less',
    ],
    ['19 inHg', '54 kPa', '64 kPa', '54 kPa', '10 kPa less'],
    ['8° BTDC', '10° BTDC', '8°', '10°', '2° more'],
    ['1 notch rich', '2 notches rich', '1 notch', '2 notches rich', '1 notch richer'],
    ['index', '2 notches lean', 'index', '2 notches lean', '2 notches leaner'],
    ['0.020 in min', '0.025 in min', '0.0200 in', '0.025 in', '0.005 in more'],
    ['0.020 in min', '0.5–0.6 mm', '0.508 mm', '0.5 mm', null],
  ] as const)('disagrees: %s and %s', (first, second, firstIn, secondText, difference) => {
    if (difference === null) return expect(verdictOf(first, second).verdict).toBe('agrees');
    expect(verdictOf(first, second)).toMatchObject({
      verdict: 'disagrees',
      first: firstIn,
      second: secondText,
      difference,
    });
  });

  test.each([
    ['1 turn out', '1 turn in', 'way', 'the other way'],
    ['1 notch rich', '1 notch lean', 'way', 'the other way'],
    ['8° BTDC', '8° ATDC', 'way', 'the other way'],
    ['0.020 in min', '0.020 in max', 'way', 'the other limit'],
    [
      '1 turn out from the seat',
      '1 turn out from first contact',
      'datum',
      'counted from contact, not from the seat',
    ],
    ['parallel', 'flush', 'condition', null],
  ] as const)('disagrees in words: %s and %s', (first, second, by, difference) => {
    expect(verdictOf(first, second)).toEqual({
      verdict: 'disagrees',
      first,
      second,
      by,
      difference,
      misprint: null,
    });
  });

  test.each([
    ['13/64 in', '475 rpm', '13/64 in is a length, 475 rpm is a speed'],
    ['1 turn out', '0.039 in', '1 turn out is a number of turns, 0.039 in is a length'],
    ['8° BTDC', '1/4 turn', '8° BTDC is an angle, 1/4 turn is a number of turns'],
    ['parallel', '13/64 in', 'parallel and 13/64 in: one is a condition, the other a figure'],
    [
      '2nd notch from the top',
      '2 notches rich',
      '2nd notch from the top and 2 notches rich: one is counted from an end, the other from the index',
    ],
    [
      '64 kPa vacuum',
      '64 kPa abs',
      '64 kPa vacuum is counted as a vacuum, 64 kPa abs as absolute pressure',
    ],
    ['19 inHg', '64 kPa abs', '19 inHg is counted as a vacuum, 64 kPa abs as absolute pressure'],
    ['19 inHg', '9.3 psig', '19 inHg is counted as a vacuum, 9.3 psig as gauge pressure'],
    [
      '4.5 psi',
      '31 kPa abs',
      '4.5 psi is counted as a pressure of unstated zero, 31 kPa abs as absolute pressure',
    ],
  ])('incomparable: %s and %s', (first, second, reason) => {
    expect(verdictOf(first, second)).toEqual({ verdict: 'incomparable', reason });
    expect(verdictOf(second, first).verdict).toBe('incomparable');
  });
});

describe('the misprint that explains a difference', () => {
  test.each([
    ['No. 29 drill', '0.163 in', 'swapped-digits', '0.136 in', 'two digits were swapped'],
    ['13/64 in', '.230 in', 'swapped-digits', '.203 in', 'two digits were swapped'],
    ['13/64 in', '5,61 mm', 'swapped-digits', '5,16 mm', 'two digits were swapped'],
    ['13/64 in', '31/64 in', 'swapped-digits', '13/64 in', 'two digits were swapped'],
    ['0.136 in', 'No. 92 drill', 'swapped-digits', 'No. 29 drill', 'two digits were swapped'],
    ['1300 rpm', '3,100 rpm', 'swapped-digits', '1,300 rpm', 'two digits were swapped'],
    ['13/64 in', '51.6 mm', 'slipped-point', '5.16 mm', 'the point slipped'],
    ['13/64 in', '0,516 mm', 'slipped-point', '5,16 mm', 'the point slipped'],
    ['13/64 in', '.0203 in', 'slipped-point', '.203 in', 'the point slipped'],
    ['0.020 in', '0.200"', 'swapped-digits', '0.020"', 'two digits were swapped'],
    ['13/64 in', '.200 in', 'wrong-digit', '.203 in', 'one digit is wrong'],
    ['13/64 in', '5.76 mm', 'wrong-digit', '5.16 mm', 'one digit is wrong'],
    ['1-7/16 in', '2-7/16 in', 'wrong-digit', '1-7/16 in', 'one digit is wrong'],
    ['475 rpm', '476 rpm', 'wrong-digit', '475 rpm', 'one digit is wrong'],
    ['0.1285 in', 'No. 29 drill', 'neighboring-gauge', 'No. 30 drill', 'the next number was taken'],
    ['0.136 in', 'No. 30 drill', 'neighboring-gauge', 'No. 29 drill', 'the next number was taken'],
    ['0.250 in', 'drill F', 'neighboring-gauge', 'drill E', 'the next number was taken'],
    ['0.3065 in', '2/0 AWG', null, null, null],
    ['0.3648 in', '3/0 AWG', 'neighboring-gauge', '2/0 AWG', 'the next number was taken'],
    ['9/64 in', '5/32 drill', 'neighboring-gauge', '9/64 drill', 'the next number was taken'],
    ['0.203 in', '15/64 in', 'wrong-numerator', '13/64 in', 'the numerator is wrong'],
    ['0.203 in', '3/64 in', 'wrong-numerator', '13/64 in', 'the numerator is wrong'],
    ['0.203 in', '13/32"', 'wrong-denominator', '13/64"', 'the denominator is wrong'],
    ['0.203 in', '13/32 ± 1/64"', 'wrong-denominator', '13/64"', 'the denominator is wrong'],
    ['13/64 in', '5.16 in', 'wrong-unit', '5.16 mm', 'the unit was mistaken'],
    ['5.16 mm', '0.203 mm', 'wrong-unit', '0.203 in', 'the unit was mistaken'],
    ['2 turns down', '12 turns down', 'wrong-unit', '12 flats', 'the unit was mistaken'],
    ['19 inHg', '19 kPa', 'wrong-unit', '19 inHg', 'the unit was mistaken'],
    ['0.1360 in', '.16 in', 'missing-digit', '.136 in', 'a digit was left out'],
    ['0.136 in', '.1136 in', 'extra-digit', '.136 in', 'a digit is too many'],
    ['0.0253 in', '22 SWG imperial', 'wrong-system', '22 AWG', 'another gauge was meant'],
  ])('%s, misprinted as %s: %s', (right, wrong, kind, suggestion, because) => {
    const { misprint } = apart(right, wrong);
    expect(misprint).toEqual(kind === null ? null : { kind, suggestion, because });
  });

  test.each([
    // One figure alone is always one digit away from another.
    ['1 turn out', '2 turns out'],
    ['13/64 in', '7 mm'],
    ['0.203 in', '0.347 in'],
    ['parallel', 'flush'],
  ])('none is offered for %s and %s', (right, wrong) => {
    expect(apart(right, wrong).misprint).toBeNull();
  });

  test('a wire of the steel gauge is looked for in its own', () => {
    const wrong = size('27 SWG', { swg: 'us-steel' }).nominal;
    const right = size('0.0162 in').nominal;
    expect(wrong && right && findMisprint(right, wrong, gauges)).toMatchObject({
      kind: 'neighboring-gauge',
      suggestion: 'No. 28 US steel wire',
    });
  });
});
