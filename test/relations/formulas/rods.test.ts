import { describe, expect, it } from 'vitest';
import equivalent from '../../../src/relations/formulas/equivalent-bore.ts';
import area from '../../../src/relations/formulas/rod-area.ts';
import enrichment from '../../../src/relations/formulas/rod-enrichment.ts';
import steps from '../../../src/relations/formulas/rod-steps.ts';
import { expectEnclosed, expectThereAndBack, middle, refusal, work } from '../sampling.ts';

// references.md, "Metering": a jet of 2.54 mm and a rod of 1.50 mm.
const pair = { jet: 2.54, rod: 1.5 };

describe('a metering rod in its jet', () => {
  it('leaves the area of the ring, and the bore that has it', () => {
    expect(middle(area, 'area', pair)).toBeCloseTo(3.299929, 6);
    expect(middle(equivalent, 'equivalent-bore', { area: middle(area, 'area', pair) })).toBeCloseTo(
      2.04978,
      5,
    );
  });

  it('comes back to rod, jet and area', () => {
    expectThereAndBack(area, 'area', 'rod', { jet: [2, 3], rod: [0.5, 1.9] });
    expectThereAndBack(area, 'area', 'jet', { jet: [2, 3], rod: [0, 1.9] });
    expectThereAndBack(equivalent, 'equivalent-bore', 'area', { area: [0.001, 20] });
  });

  it('is shut by a rod of its own size, and open without one', () => {
    expect(work(area, 'area', { jet: 2, rod: 2 })).toEqual({ lo: 0, hi: expect.closeTo(0, 12) });
    expect(middle(area, 'area', { jet: 2, rod: 0 })).toBeCloseTo(Math.PI, 12);
    expect(work(area, 'area', { jet: [1.9, 2.1], rod: [1.95, 2.05] }).lo).toBe(0);
    expect(work(area, 'rod', { jet: 2, area: Math.PI }).lo).toBe(0);
  });

  it('holds whatever lies within limits', () => {
    const ring = { jet: [1, 4], rod: [0, 3] } as const;
    expectEnclosed(area, 'area', ring, ({ jet = 0, rod = 0 }) =>
      rod > jet ? null : (Math.PI / 4) * (jet * jet - rod * rod),
    );
    expectEnclosed(area, 'rod', { jet: [1, 4], area: [0.1, 9] }, ({ jet = 0, area: open = 0 }) => {
      const left = jet * jet - (4 * open) / Math.PI;
      return left < 1e-3 ? null : Math.sqrt(left);
    });
    expectEnclosed(area, 'jet', { rod: [0, 3], area: [0, 9] }, ({ rod = 0, area: open = 0 }) =>
      Math.sqrt(rod * rod + (4 * open) / Math.PI),
    );
    expectEnclosed(equivalent, 'equivalent-bore', { area: [0, 9] }, ({ area: open = 0 }) =>
      Math.sqrt((4 * open) / Math.PI),
    );
  });

  it.each([
    [area, 'area', { jet: 2, rod: 2.01 }, 'a rod of {rod} does not go into a jet of {jet}'],
    [area, 'rod', { jet: 2, area: 3.15 }, '{area} is more than a jet of {jet} has without any rod'],
    [
      area,
      'area',
      { jet: 0, rod: 0 },
      'the bore of the jet, {jet}, is too close to nothing to work with',
    ],
    [area, 'area', { jet: 2, rod: -1 }, 'the diameter of the rod, {rod}, is less than nothing'],
    [
      equivalent,
      'area',
      { 'equivalent-bore': 1e10 },
      '{equivalent-bore} is beyond anything that the equivalent bore can be',
    ],
  ])('refuses %#', (relation, wanted, figures, message) => {
    expect(refusal(relation, wanted, figures)).toBe(message);
  });
});

describe('the steps of a metering rod', () => {
  // Worked by hand: (1.7² - 1.4²) / (2² - 1.7²) = .93 / 1.11.
  const rod = { jet: 2, economy: 1.7, power: 1.4 };

  it('bound one another', () => {
    expect(steps.solutions.map(({ for: wanted, hold, offer }) => [wanted, hold, offer])).toEqual([
      ['power', 'at-most', false],
    ]);
    expect(work(steps, 'power', { economy: 1.7 })).toEqual({ lo: 1.7, hi: 1.7 });
  });

  it('enrich by what the power step opens more', () => {
    expect(middle(enrichment, 'enrichment', rod)).toBeCloseTo(83.783784, 6);
    const open = (step: number) => middle(area, 'area', { jet: 2, rod: step });
    expect(middle(enrichment, 'enrichment', rod)).toBeCloseTo(100 * (open(1.4) / open(1.7) - 1), 9);
  });

  it('come back from the enrichment', () => {
    const within = { jet: [2, 3], economy: [1.4, 1.9], power: [0.5, 1.3] } as const;
    expectThereAndBack(enrichment, 'enrichment', 'power', within);
    expectThereAndBack(enrichment, 'enrichment', 'economy', within);
    expectThereAndBack(enrichment, 'enrichment', 'jet', within);
  });

  it('lean by less than nothing where the power step is the thicker', () => {
    expect(middle(enrichment, 'enrichment', { jet: 2, economy: 1.4, power: 1.7 })).toBeCloseTo(
      -45.588235,
      6,
    );
    expect(middle(enrichment, 'enrichment', { jet: 2, economy: 1.7, power: 1.7 })).toBeCloseTo(
      0,
      9,
    );
    expect(middle(enrichment, 'enrichment', { jet: 2, economy: 1.7, power: 2 })).toBeCloseTo(
      -100,
      9,
    );
  });

  it('holds whatever lies within limits, thick steps and thin', () => {
    const within = { jet: [1.5, 2.5], economy: [1, 2], power: [1, 2] } as const;
    expectEnclosed(
      enrichment,
      'enrichment',
      within,
      ({ jet = 0, economy = 0, power = 0 }) =>
        economy >= jet - 1e-6 || power > jet
          ? null
          : (100 * (economy ** 2 - power ** 2)) / (jet ** 2 - economy ** 2),
      1e-9,
    );
    const share = { jet: [1.5, 2.5], economy: [1, 2], enrichment: [0, 60] } as const;
    expectEnclosed(enrichment, 'power', share, ({ jet = 0, economy = 0, enrichment: e = 0 }) => {
      const square = economy ** 2 - (e / 100) * (jet ** 2 - economy ** 2);
      return economy >= jet || square < 1e-3 ? null : Math.sqrt(square);
    });
    const up = { jet: [1.5, 2.5], power: [1, 2], enrichment: [0, 60] } as const;
    expectEnclosed(enrichment, 'economy', up, ({ jet = 0, power = 0, enrichment: e = 0 }) =>
      power > jet ? null : Math.sqrt((power ** 2 + (e / 100) * jet ** 2) / (1 + e / 100)),
    );
    const out = { economy: [1, 2], power: [0.5, 2], enrichment: [1, 60] } as const;
    expectEnclosed(enrichment, 'jet', out, ({ economy = 0, power = 0, enrichment: e = 0 }) =>
      power > economy ? null : Math.sqrt(economy ** 2 + ((economy ** 2 - power ** 2) * 100) / e),
    );
  });

  it.each([
    [
      'enrichment',
      { jet: 2, economy: 2, power: 1.4 },
      'an economy step of {economy} shuts a jet of {jet}',
    ],
    [
      'enrichment',
      { jet: 2, economy: 2.1, power: 1.4 },
      'an economy step of {economy} shuts a jet of {jet}',
    ],
    [
      'enrichment',
      { jet: 2, economy: 1.7, power: 2.1 },
      'a power step of {power} does not go into a jet of {jet}',
    ],
    [
      'power',
      { jet: 2, economy: 2, enrichment: 10 },
      'an economy step of {economy} shuts a jet of {jet}',
    ],
    [
      'power',
      { jet: 2, economy: 1, enrichment: 50 },
      'no power step is thin enough for {enrichment} more in a jet of {jet}',
    ],
    [
      'economy',
      { jet: 2, power: 2.1, enrichment: 50 },
      'a power step of {power} does not go into a jet of {jet}',
    ],
    [
      'jet',
      { economy: 1.4, power: 1.7, enrichment: 50 },
      'a power step of {power} is thicker than an economy step of {economy} and enriches nothing',
    ],
    [
      'jet',
      { economy: 1.7, power: 1.4, enrichment: 0 },
      'the enrichment, {enrichment}, is too close to nothing to work with',
    ],
  ])('refuse the %s of %o', (wanted, figures, message) => {
    expect(refusal(enrichment, wanted, figures)).toBe(message);
  });
});
