import { describe, expect, test } from 'vitest';
import { probabilityInside } from '../../src/conformance/normal.ts';
import { ofRounding, ofTimedFlow, together } from '../../src/conformance/uncertainty.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { rational, readStatement } from '../../src/quantity/index.ts';
import type { Rational } from '../../src/quantity/model.ts';
import { ZERO } from '../../src/quantity/rational.ts';

describe('uncertainties together', () => {
  test.each([
    [['0.003', '0.004'], 0.005],
    [['0.006'], 0.006],
    [[], 0],
    [['1', '2', '2'], 3],
    [['0.5', '0'], 0.5],
    // The root of 2.
    [['1', '1'], Math.SQRT2],
  ])('%j: %f', (parts, sum) => {
    const found = together(...parts.map((part) => rational(part)));
    expect(found.valueOf()).toBeCloseTo(sum, 11);
    // Never too small: a guard band that is short lets through what it should not.
    expect(
      found
        .mul(found)
        .compare(parts.reduce((all, p) => all.add(rational(p).mul(rational(p))), ZERO)),
    ).toBeGreaterThanOrEqual(0);
  });

  /**
   * GUM (JCGM 100:2008), H.1 with its table: calibration of an end gauge of 50 mm. Standard 25 nm, difference
   * 9.7 nm, coefficients of expansion 2.9 nm, temperatures 16.6 nm; combined standard uncertainty 32 nm.
   */
  test('the end gauge of the GUM: 25, 9.7, 2.9 and 16.6 nm are 32 nm', () => {
    const found = together(...['25', '9.7', '2.9', '16.6'].map((part) => rational(part)));
    expect(Math.round(found.valueOf())).toBe(32);
  });

  /** GUM, 4.3.7 and F.2.2.1: an indication of steps δx has the standard uncertainty 0.29 δx. From memory. */
  test('a step of the indication is 0.29 of itself', () => {
    const expanded = ofRounding(rational(1, 2));
    expect(Math.round((expanded.valueOf() / 2) * 100)).toBe(29);
  });

  test('of half a last place over the root of 3, twice', () => {
    expect(ofRounding(rational('0.0005')).valueOf()).toBeCloseTo((2 * 0.0005) / Math.sqrt(3), 11);
    expect(ofRounding(ZERO).n).toBe(0n);
  });

  const flow = (text: string) => {
    const read = readStatement(text, { gauges: gaugeBook() });
    const amount = read.ok ? read.statement.nominal : null;
    if (!amount) throw new Error(text);
    return amount;
  };
  test.each([
    // 0.3 of 35 s and 0.5 of 100 ml, in parts of the whole: 35 × √(0.00857² + 0.005²).
    ['35 s per 100 ml', 35 * Math.hypot(0.3 / 35, 0.5 / 100)],
    ['20 s per 50 ml', 20 * Math.hypot(0.3 / 20, 0.5 / 50)],
    ['120 cm3/min', 120 * Math.hypot(0.3 / 60, 0.5 / 120)],
    ['10 L/h', 10 * Math.hypot(0.3 / 3600, 0.5 / 10_000)],
  ])('of stopwatch and measure: %s', (text, sum) => {
    const found = ofTimedFlow(flow(text), rational('0.3'), rational('0.5'));
    expect(found?.valueOf()).toBeCloseTo(sum, 9);
  });
});

describe('the probability of a normal distribution and a rectangle together', () => {
  const limits = { low: rational('1.041'), high: rational('1.143') };

  /** By the mean of many normals whose middles are spread evenly over the rectangle. */
  function slowly(reading: number, expanded: number, half: number): number {
    const steps = 2000;
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const at = reading - half + ((i + 0.5) * 2 * half) / steps;
      sum += probabilityInside(exact(at), { gauge: exact(expanded), half: ZERO }, limits);
    }
    return sum / steps;
  }
  const exact = (number: number): Rational => rational(number.toFixed(12));

  test.each([
    [1.14, 0.006, 0.0005],
    [1.14, 0.006, 0.005],
    [1.14, 0.0002, 0.005],
    [1.1, 0.05, 0.05],
    [1.143, 0.006, 0.05],
    [1.15, 0.001, 0.005],
    [1.04, 0.01, 0.005],
  ])('%f ± %f, half a place %f, is as slowly added up', (reading, expanded, half) => {
    const spread = { gauge: exact(expanded), half: exact(half) };
    const found = probabilityInside(exact(reading), spread, limits);
    expect(found).toBeCloseTo(slowly(reading, expanded, half), 6);
  });

  /** JCGM 106:2012, 7.3, a Zener diode: -5.47 V, u = 0.05 V, no more than -5.40 V: Φ(1.40) = 0.92. From memory. */
  test('the diode of JCGM 106 conforms with 0.92', () => {
    const spread = { gauge: rational('0.1'), half: ZERO };
    const limit = { low: null, high: rational('-5.40') };
    expect(probabilityInside(rational('-5.47'), spread, limit).toFixed(2)).toBe('0.92');
  });

  test('a rectangle alone is counted off', () => {
    const spread = { gauge: ZERO, half: rational('0.005') };
    expect(probabilityInside(rational('1.14'), spread, limits)).toBeCloseTo(0.8, 12);
    expect(probabilityInside(rational('1.13'), spread, limits)).toBe(1);
    expect(probabilityInside(rational('1.15'), spread, limits)).toBe(0);
  });

  test('a rectangle that is nothing beside the gauge goes into its spread', () => {
    for (const half of ['0.0000029', '0.0000031']) {
      const spread = { gauge: rational('0.006'), half: rational(half) };
      expect(probabilityInside(rational('1.14'), spread, limits)).toBeCloseTo(0.8413447, 6);
    }
  });
});
