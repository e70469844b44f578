import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judge, nearestLimit } from '../../src/conformance/judge.ts';
import type { Limits, ReadingRange, Verdict } from '../../src/conformance/model.ts';
import { above, probabilityInside } from '../../src/conformance/normal.ts';
import { rational } from '../../src/quantity/index.ts';
import type { Rational } from '../../src/quantity/model.ts';
import { ZERO } from '../../src/quantity/rational.ts';
import { runs } from '../suite/part.ts';

const size = (number: Rational): ReadingRange => ({ low: number, high: number, open: false });
const gauge = (expanded: Rational) => ({ gauge: expanded, half: ZERO });
const limits = (low: string | null, high: string | null): Limits => ({
  low: low === null ? null : rational(low),
  high: high === null ? null : rational(high),
});

/** references.md, "Conformance with an uncertain gauge": limits 1.041-1.143 mm, U = .006 (k = 2). */
const published = limits('1.041', '1.143');
const uncertainty = rational('0.006');

describe('the published values (references.md, Conformance, computed there)', () => {
  test('the guard band draws the limits in to 1.047-1.137', () => {
    const { accepted } = judge(size(rational('1.1')), uncertainty, published, 'guarded');
    expect(accepted.low?.equals(rational('1.047'))).toBe(true);
    expect(accepted.high?.equals(rational('1.137'))).toBe(true);
  });

  test.each([
    ['1.136', 'conforms', '.9902', 'conforms'],
    ['1.140', 'unproven', '.8413', 'conforms'],
    ['1.1465', 'unproven', '.1217', 'does not conform'],
    ['1.150', 'does not conform', '.0098', 'does not conform'],
  ] as const)('%s mm: %s, p = %s', (reading, guarded, p, simple) => {
    const number = rational(reading);
    expect(judge(size(number), uncertainty, published, 'guarded').verdict).toBe(guarded);
    expect(judge(size(number), uncertainty, published, 'simple').verdict).toBe(simple);
    const found = probabilityInside(number, gauge(uncertainty), published).toFixed(4);
    expect(found).toBe(`0${p}`);
  });
});

describe('at the limits', () => {
  const guarded = (reading: string, [low, high]: [string | null, string | null], u = '0.006') =>
    judge(size(rational(reading)), rational(u), limits(low, high), 'guarded').verdict;

  test.each<[string, Verdict]>([
    ['1.137', 'conforms'],
    ['1.1370000001', 'unproven'],
    ['1.047', 'conforms'],
    ['1.0469999999', 'unproven'],
    // All that the gauge leaves possible is 1.143 to 1.155: 1.143 itself is still inside.
    ['1.149', 'unproven'],
    ['1.1490000001', 'does not conform'],
    ['1.035', 'unproven'],
    ['1.0349999999', 'does not conform'],
  ])('%s: %s', (reading, verdict) => {
    expect(guarded(reading, ['1.041', '1.143'])).toBe(verdict);
  });

  test('a limit on one side asks nothing of the other', () => {
    expect(guarded('99', ['1.041', null])).toBe('conforms');
    expect(guarded('1.047', ['1.041', null])).toBe('conforms');
    expect(guarded('1.046', ['1.041', null])).toBe('unproven');
    expect(guarded('-99', [null, '1.143'])).toBe('conforms');
    expect(guarded('1.15', [null, '1.143'])).toBe('does not conform');
  });

  test('the simple rule accepts the limit itself and nothing beyond', () => {
    const simple = (reading: string) =>
      judge(size(rational(reading)), null, published, 'simple').verdict;
    expect(simple('1.143')).toBe('conforms');
    expect(simple('1.1430000001')).toBe('does not conform');
  });

  test('an uncertainty of half the band leaves one reading, a wider one none', () => {
    const half = judge(size(rational('1.092')), rational('0.051'), published, 'guarded');
    expect(half).toMatchObject({ verdict: 'conforms', hopeless: false });
    const wider = judge(size(rational('1.092')), rational('0.0511'), published, 'guarded');
    expect(wider).toMatchObject({ verdict: 'unproven', hopeless: true });
  });

  test('without an uncertainty nothing is proven, neither in nor out', () => {
    for (const reading of ['1.1', '5']) {
      expect(judge(size(rational(reading)), null, published, 'guarded').verdict).toBe('unproven');
    }
  });
});

describe('gauges that go in or do not', () => {
  const between = (low: string | null, high: string | null): ReadingRange => ({
    ...limits(low, high),
    open: true,
  });
  const verdict = (range: ReadingRange, u: string, rule: 'guarded' | 'simple' = 'guarded') =>
    judge(range, rational(u), published, rule).verdict;

  test.each<[string, ReadingRange, string, Verdict]>([
    ['both well inside', between('1.05', '1.13'), '0.006', 'conforms'],
    ['both at the limits drawn in', between('1.047', '1.137'), '0.006', 'conforms'],
    ['go at the lower limit', between('1.041', '1.13'), '0.006', 'unproven'],
    ['only a go gauge', between('1.1', null), '0.001', 'unproven'],
    ['go above the upper limit', between('1.15', null), '0.006', 'does not conform'],
    ['no-go below the lower limit', between(null, '1.034'), '0.006', 'does not conform'],
  ])('%s', (_, range, u, expected) => {
    expect(verdict(range, u)).toBe(expected);
  });

  test('a no-go gauge of the very limit that went in proves it too wide, by the simple rule', () => {
    expect(verdict(between('1.143', null), '0', 'simple')).toBe('does not conform');
    expect(verdict(between(null, '1.041'), '0', 'simple')).toBe('does not conform');
    expect(verdict(between('1.041', '1.143'), '0', 'simple')).toBe('conforms');
  });
});

describe('properties', () => {
  const number = fc
    .tuple(fc.integer({ min: -2000, max: 2000 }), fc.constantFrom(1, 3, 7, 64, 254))
    .map(([n, d]) => rational(n, d));
  const magnitude = number.map((value) => value.abs());
  const band = fc.tuple(number, magnitude, fc.constantFrom('both', 'low', 'high')).map(
    ([low, width, sides]): Limits => ({
      low: sides === 'high' ? null : low,
      high: sides === 'low' ? null : low.add(width),
    }),
  );
  const reading = fc.oneof(
    number.map(size),
    fc
      .tuple(number, magnitude, fc.boolean())
      .map(([low, width, open]): ReadingRange => ({ low, high: low.add(width), open })),
  );

  test('the guard band never accepts what the simple rule refuses, nor refuses what it accepts', () => {
    fc.assert(
      fc.property(reading, magnitude, band, (range, u, within) => {
        const guarded = judge(range, u, within, 'guarded').verdict;
        const simple = judge(range, u, within, 'simple').verdict;
        if (guarded !== 'unproven') expect(simple).toBe(guarded);
      }),
      { numRuns: runs(2000) },
    );
  });

  test('a wider uncertainty never proves what a narrower one left open', () => {
    fc.assert(
      fc.property(reading, magnitude, magnitude, band, (range, u, more, within) => {
        const narrow = judge(range, u, within, 'guarded').verdict;
        const wide = judge(range, u.add(more), within, 'guarded').verdict;
        expect([narrow, 'unproven']).toContain(wide);
      }),
      { numRuns: runs(2000) },
    );
  });

  test('the unit makes no difference: all figures times 25.4 judge alike', () => {
    const times = (value: Rational | null) => value?.mul(rational('25.4')) ?? null;
    fc.assert(
      fc.property(reading, magnitude, band, (range, u, within) => {
        const inches = judge(range, u, within, 'guarded').verdict;
        const mm = judge(
          { ...range, low: times(range.low), high: times(range.high) },
          times(u),
          { low: times(within.low), high: times(within.high) },
          'guarded',
        ).verdict;
        expect(mm).toBe(inches);
      }),
    );
  });

  test('what is proven to conform is more likely than not to be inside, at 2.5 % a side', () => {
    fc.assert(
      fc.property(
        number,
        magnitude.filter((u) => u.n !== 0n),
        band,
        (value, u, within) => {
          const { verdict } = judge(size(value), u, within, 'guarded');
          const p = probabilityInside(value, gauge(u), within);
          expect(p).toBeGreaterThanOrEqual(0);
          expect(p).toBeLessThanOrEqual(1);
          if (verdict === 'conforms') expect(p).toBeGreaterThan(0.954);
          if (verdict === 'does not conform') expect(p).toBeLessThan(0.0228);
        },
      ),
    );
  });
});

test('the nearest limit is the one that is exceeded, or else the one with less room', () => {
  const near = (reading: string) => {
    const found = nearestLimit(rational(reading), published);
    return found && [found.side, found.beyond.valueOf()];
  };
  expect(near('1.150')).toEqual(['high', 0.007]);
  expect(near('1.042')).toEqual(['low', -0.001]);
  expect(near('1.092')).toEqual(['low', -0.051]);
  expect(nearestLimit(ZERO, limits(null, null))).toBeNull();
});

describe('the normal distribution', () => {
  /** Half of the last place that a probability is ever told to, `84.1 %` and `0.8413`, is 5e-5. */
  const told = 1e-7;

  /** Areas of the upper tail: Abramowitz and Stegun, tables 26.1 and 26.2. */
  test.each([
    [0, 0.5],
    [0.5, 0.3085375387],
    [1, 0.1586552539],
    [1.5, 0.0668072013],
    [1.959963984540054, 0.025],
    [2, 0.0227501319],
    [2.5, 0.0062096653],
    [2.575829303548901, 0.005],
    [3, 0.001349898],
    [6, 9.9e-10],
  ])('above %f lies %f', (z, area) => {
    expect(Math.abs(above(z) - area)).toBeLessThan(told);
    expect(Math.abs(above(-z) - (1 - area))).toBeLessThan(told);
  });

  test('agrees with the density added up, step by step', () => {
    for (let z = -4.5; z <= 4.5; z += 0.15) {
      expect(Math.abs(above(z) - tail(z))).toBeLessThan(told);
    }
  });

  test('stays as near where the rounding is a thousandth of the spread, or many times it', () => {
    const sigma = 0.001;
    for (const share of ['0.0011', '0.01', '0.1', '1', '5']) {
      const half = rational(share).mul(rational('0.001'));
      for (const off of ['-0.004', '-0.0004', '0', '0.0003', '0.0011', '0.0035']) {
        const spread = { gauge: rational('0.002'), half };
        const found = probabilityInside(rational(off), spread, limits(null, '0'));
        // The mean of the tail over the rectangle, by Simpson's rule in 200 steps.
        let sum = 0;
        for (let i = 0; i <= 200; i++) {
          const at = -Number(off) + half.valueOf() * (i / 100 - 1);
          const weight = i === 0 || i === 200 ? 1 : i % 2 === 1 ? 4 : 2;
          sum += (weight * above(at / sigma)) / 600;
        }
        expect(Math.abs(found - (1 - sum))).toBeLessThan(3e-7);
      }
    }
  });

  test('stays a number far out, and is plain without uncertainty', () => {
    expect(above(60)).toBe(0);
    expect(above(-60)).toBe(1);
    expect(probabilityInside(rational('1.143'), gauge(ZERO), published)).toBe(1);
    expect(probabilityInside(rational('1.1431'), gauge(ZERO), published)).toBe(0);
  });
});

/** The upper tail of a standard normal distribution by Simpson's rule. */
function tail(z: number): number {
  const steps = 20_000;
  const width = (12 - z) / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * Math.exp(-((z + i * width) ** 2) / 2);
  }
  return (sum * width) / 3 / Math.sqrt(2 * Math.PI);
}
