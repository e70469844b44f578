import { describe, expect, test } from 'vitest';
import direction from '../../../src/relations/formulas/gap-and-dwell.ts';
import { work } from '../sampling.ts';

describe('points gap and dwell', () => {
  test('the dwell at the narrowest gap bounds all others from above, at the widest from below', () => {
    expect(work(direction, 'at-widest', { 'at-narrowest': [62, 64] })).toEqual({ lo: 62, hi: 64 });
    expect(work(direction, 'dwell', { 'at-narrowest': 63 })).toEqual({ lo: 63, hi: 63 });
    expect(work(direction, 'dwell', { 'at-widest': 57 })).toEqual({ lo: 57, hi: 57 });
    expect(direction.solutions.map(({ for: what, from, hold }) => [what, from[0], hold])).toEqual([
      ['at-widest', 'at-narrowest', 'at-most'],
      ['dwell', 'at-narrowest', 'at-most'],
      ['dwell', 'at-widest', 'at-least'],
    ]);
  });

  test('it offers no number of its own', () => {
    expect(direction.solutions.some(({ offer }) => offer)).toBe(false);
  });
});
