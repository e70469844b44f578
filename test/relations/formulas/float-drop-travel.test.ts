import { describe, expect, test } from 'vitest';
import travel from '../../../src/relations/formulas/float-drop-travel.ts';
import { expectEnclosed, middle, refusal, work } from '../sampling.ts';

const IN = 25.4;

describe('float travel', () => {
  test('is the drop less the level, each way', () => {
    const level = (13 / 64) * IN;
    const drop = (23 / 32) * IN;
    expect(middle(travel, 'travel', { level, drop }) / IN).toBeCloseTo(33 / 64, 12);
    expect(middle(travel, 'drop', { level, travel: (33 / 64) * IN }) / IN).toBeCloseTo(23 / 32, 12);
    expect(middle(travel, 'level', { drop, travel: (33 / 64) * IN }) / IN).toBeCloseTo(13 / 64, 12);
  });

  test('holds every point of its stretches', () => {
    const within = { level: [0, 40], drop: [5, 80] } as const;
    expectEnclosed(travel, 'travel', within, ({ level = 0, drop = 0 }) =>
      drop > level ? drop - level : null,
    );
    expectEnclosed(
      travel,
      'drop',
      { level: [0, 40], travel: [0, 40] },
      (at) => (at.level ?? 0) + (at.travel ?? 0),
    );
  });

  test('a drop no larger than the level is refused', () => {
    expect(refusal(travel, 'travel', { level: 10, drop: 10 })).toBe(
      'a drop of {drop} is no more than the level, {level}: the float has no way to fall',
    );
    expect(work(travel, 'travel', { level: [9, 11], drop: 10 })).toMatchObject({ lo: 0 });
    expect(refusal(travel, 'level', { drop: 10, travel: 10.1 })).toBe(
      'a float that drops to {drop} cannot have fallen by {travel}',
    );
  });
});
