import { describe, expect, it } from 'vitest';
import { chapman, estimateErrors } from '../../src/rereading/estimate.ts';

describe('errors left, by two catches', () => {
  // Formula and variance as the manual of the package recapr 0.4.4 (CRAN) prints them for its own example.
  it('is N = (101 × 101)/21 − 1 for 100, 100 and 20', () => {
    const { all, deviation } = chapman(100, 100, 20, 180);
    expect(all).toBeCloseTo(484.761905, 6);
    expect(deviation ** 2).toBeCloseTo((101 * 101 * 80 * 80) / (22 * 21 ** 2), 9);
  });

  // From memory: ten turtles marked, fifteen caught later, five of them marked: 28.
  it('is 28 turtles for 10, 15 and 5', () => {
    const { all, deviation } = chapman(10, 15, 5, 20);
    expect(all).toBeCloseTo(28.333, 3);
    expect(deviation).toBeCloseTo(Math.sqrt((11 * 16 * 5 * 10) / (36 * 7)), 9);
  });

  it('says nothing from fewer than five', () => {
    expect(estimateErrors({ first: 2, second: 2, both: 0 })).toBeNull();
    expect(estimateErrors({ first: 3, second: 2, both: 0 })).not.toBeNull();
  });

  it('is what both missed: with none on both lists, the product of the two', () => {
    const found = estimateErrors({ first: 3, second: 2, both: 0 });
    expect(found?.left).toBeCloseTo(6, 9);
    expect(found?.low).toBe(0);
    expect(found?.high).toBeGreaterThan(6);
  });

  it('is none where one reader alone erred', () => {
    expect(estimateErrors({ first: 0, second: 7, both: 0 })?.left).toBe(0);
  });
});
