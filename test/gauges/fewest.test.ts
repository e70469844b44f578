import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fewestGauges } from '../../src/gauges/index.ts';
import { runs } from '../suite/part.ts';

/** The fewest of `count` gauges that serve every need, by trying every choice. */
function bruteForce(needs: readonly (readonly number[])[], count: number): number {
  let fewest = count;
  for (let mask = 0; mask < 1 << count; mask++) {
    const size = mask.toString(2).replaceAll('0', '').length;
    if (size >= fewest) continue;
    if (needs.every((list) => list.length === 0 || list.some((gauge) => mask & (1 << gauge))))
      fewest = size;
  }
  return fewest;
}

const GAUGES = 10;
const anyNeeds = fc.array(
  fc.uniqueArray(fc.integer({ min: 0, max: GAUGES - 1 }), { maxLength: 4 }),
  {
    maxLength: 12,
  },
);

describe('the fewest gauges', () => {
  test('against brute force, on kits of ten and any needs', () => {
    fc.assert(
      fc.property(anyNeeds, (needs) => {
        const { chosen, atLeast } = fewestGauges(needs);
        for (const list of needs)
          if (list.length > 0) expect(list.some((gauge) => chosen.includes(gauge))).toBe(true);
        expect(chosen.length).toBe(bruteForce(needs, GAUGES));
        expect(atLeast).toBe(chosen.length);
      }),
      { numRuns: runs(500) },
    );
  });

  test('against brute force, with some gauges had anyway', () => {
    const had = fc.uniqueArray(fc.integer({ min: 0, max: GAUGES - 1 }), { maxLength: 3 });
    fc.assert(
      fc.property(anyNeeds, had, (needs, already) => {
        const { chosen } = fewestGauges(needs, new Set(already));
        const open = needs.filter((list) => !list.some((gauge) => already.includes(gauge)));
        expect(chosen.length).toBe(bruteForce(open, GAUGES));
      }),
    );
  });

  test('what is claimed when the work is cut short is true', () => {
    fc.assert(
      fc.property(anyNeeds, fc.integer({ min: 0, max: 5 }), (needs, steps) => {
        const { chosen, atLeast } = fewestGauges(needs, new Set(), steps);
        const fewest = bruteForce(needs, GAUGES);
        expect(chosen.length).toBeGreaterThanOrEqual(fewest);
        expect(atLeast).toBeLessThanOrEqual(fewest);
        for (const list of needs)
          if (list.length > 0) expect(list.some((gauge) => chosen.includes(gauge))).toBe(true);
      }),
    );
  });

  test('a circle of five needs takes three, though only two share no gauge', () => {
    const needs = [0, 1, 2, 3, 4].map((n) => [n, (n + 1) % 5]);
    expect(fewestGauges(needs)).toEqual({ chosen: expect.any(Array), atLeast: 3 });
    expect(fewestGauges(needs).chosen).toHaveLength(3);
    // Without a step, only the two are proven.
    expect(fewestGauges(needs, new Set(), 0).atLeast).toBe(2);
  });

  test('of choices as small it takes the best of each list', () => {
    expect(fewestGauges([[3, 1, 2]]).chosen).toEqual([3]);
    expect(
      fewestGauges([
        [5, 1, 2],
        [2, 1, 9],
      ]).chosen,
    ).toEqual([1]);
    expect(fewestGauges([[5, 4], [4, 5], [4]]).chosen).toEqual([4]);
  });

  test('nothing is needed for no needs', () => {
    expect(fewestGauges([])).toEqual({ chosen: [], atLeast: 0 });
    expect(fewestGauges([[]])).toEqual({ chosen: [], atLeast: 0 });
  });

  test('two thousand overlapping stretches of a ladder are proven, and in short time', () => {
    // Gaps of one dimension are stretches of a ladder of sizes, as on a booklet of two hundred sheets.
    let seed = 7;
    const next = (below: number) => {
      seed = (seed * 1103515245 + 12345) % 2147483648;
      return seed % below;
    };
    const needs = Array.from({ length: 2000 }, () => {
      const from = next(280);
      return Array.from({ length: 1 + next(12) }, (_, i) => from + i);
    });
    const started = performance.now();
    const { chosen, atLeast } = fewestGauges(needs);
    expect(performance.now() - started).toBeLessThan(3000);
    expect(atLeast).toBe(chosen.length);
  });
});
