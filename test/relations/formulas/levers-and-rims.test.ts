import { describe, expect, test } from 'vitest';
import lever from '../../../src/relations/formulas/float-lever.ts';
import rim from '../../../src/relations/formulas/rim-length.ts';
import clearance from '../../../src/relations/formulas/wear-clearance.ts';
import { expectEnclosed, expectThereAndBack, middle, refusal, work } from '../sampling.ts';

describe('degrees on a rim', () => {
  test('a degree of a rim of 360 mm/π is a millimeter', () => {
    expect(middle(rim, 'length', { angle: 1, diameter: 360 / Math.PI })).toBeCloseTo(1, 12);
    // By definition a radian is the angle whose arc is the radius: SI Brochure, 9th edition, 2.3.4.
    expect(middle(rim, 'length', { angle: 180 / Math.PI, diameter: 152.4 })).toBeCloseTo(76.2, 9);
    expect(middle(rim, 'angle', { length: Math.PI * 100, diameter: 100 })).toBeCloseTo(360, 9);
    expect(middle(rim, 'diameter', { length: Math.PI * 50, angle: 180 })).toBeCloseTo(100, 9);
  });

  test('holds every point of its stretches, and comes back', () => {
    const within = { angle: [0.5, 60], diameter: [50, 500] } as const;
    expectEnclosed(
      rim,
      'length',
      within,
      ({ angle = 0, diameter = 0 }) => (Math.PI * diameter * angle) / 360,
    );
    expectThereAndBack(rim, 'length', 'angle', within);
    expectThereAndBack(rim, 'length', 'diameter', within);
  });

  test('no rim is refused', () => {
    expect(refusal(rim, 'length', { angle: 8, diameter: 0 })).toContain('{diameter}');
  });
});

describe('float and needle on one lever', () => {
  test('half an inch at two inches is an eighth at half an inch', () => {
    const arms = { arm: 50.8, 'short-arm': 12.7 };
    expect(middle(lever, 'needle', { float: 12.7, ...arms })).toBeCloseTo(3.175, 12);
    expect(middle(lever, 'float', { needle: 3.175, ...arms })).toBeCloseTo(12.7, 12);
    expect(middle(lever, 'arm', { needle: 3.175, float: 12.7, 'short-arm': 12.7 })).toBeCloseTo(
      50.8,
      9,
    );
    expect(middle(lever, 'short-arm', { needle: 3.175, float: 12.7, arm: 50.8 })).toBeCloseTo(
      12.7,
      9,
    );
  });

  test('arc and straight line are as far apart as the assumption says', () => {
    const turn = (18 * Math.PI) / 180;
    expect(Math.round(1000 * (turn / (2 * Math.sin(turn / 2)) - 1))).toBe(4);
  });

  test('holds every point of its stretches, and comes back', () => {
    const within = { float: [0.1, 15], arm: [20, 80], 'short-arm': [3, 20] } as const;
    expectEnclosed(
      lever,
      'needle',
      within,
      (of) => ((of.float ?? 0) * (of['short-arm'] ?? 0)) / (of.arm ?? 1),
    );
    expectThereAndBack(lever, 'needle', 'float', within);
  });
});

describe('a shaft in its bore', () => {
  test('what is left, and what it takes', () => {
    expect(middle(clearance, 'clearance', { bore: 12.75, shaft: 12.7 })).toBeCloseTo(0.05, 12);
    expect(middle(clearance, 'bore', { clearance: 0.05, shaft: 12.7 })).toBeCloseTo(12.75, 12);
    expect(middle(clearance, 'shaft', { bore: 12.75, clearance: 0.05 })).toBeCloseTo(12.7, 12);
  });

  test('sizes that may be alike leave nothing or more, never less', () => {
    expect(work(clearance, 'clearance', { bore: [12.69, 12.71], shaft: [12.69, 12.71] }).lo).toBe(
      0,
    );
    expect(work(clearance, 'clearance', { bore: [12.6, 12.7], shaft: [12.7, 12.8] }).lo).toBe(0);
  });

  test('a shaft that is surely too thick, or a clearance beyond its bore, is refused', () => {
    expect(refusal(clearance, 'clearance', { bore: [12.6, 12.69], shaft: [12.7, 12.8] })).toBe(
      'a shaft of {shaft} does not go into a bore of {bore}',
    );
    expect(refusal(clearance, 'shaft', { bore: 12.7, clearance: 127 })).toContain('{clearance}');
  });
});
