import { describe, expect, test } from 'vitest';
import closed from '../../../src/relations/formulas/closed-time.ts';
import { expectEnclosed, expectThereAndBack, middle, refusal, work } from '../sampling.ts';

describe('the time that the points are shut', () => {
  test('60° at 5000 rpm is 4.0 ms', () => {
    // References.md, Ignition.
    expect(middle(closed, 'time', { dwell: 60, speed: 5000 })).toBeCloseTo(0.004, 12);
    expect(middle(closed, 'dwell', { time: 0.004, speed: 5000 })).toBeCloseTo(60, 9);
    expect(middle(closed, 'speed', { time: 0.004, dwell: 60 })).toBeCloseTo(5000, 9);
  });

  test('holds every point of its stretches, and comes back', () => {
    const within = { dwell: [5, 170], speed: [100, 9000] } as const;
    expectEnclosed(closed, 'time', within, ({ dwell = 0, speed = 1 }) => dwell / (3 * speed));
    expectThereAndBack(closed, 'time', 'dwell', within);
    expectThereAndBack(closed, 'time', 'speed', within);
  });

  test('an engine that stands, and points that never open, are refused', () => {
    expect(refusal(closed, 'time', { dwell: 60, speed: 0 })).toContain('{speed}');
    expect(refusal(closed, 'time', { dwell: 360, speed: 1000 })).toBe(
      '{dwell} is a whole turn of the distributor or more: the points would never open',
    );
    expect(work(closed, 'time', { dwell: [359, 361], speed: 1000 }).hi).toBeCloseTo(0.12, 12);
  });
});
