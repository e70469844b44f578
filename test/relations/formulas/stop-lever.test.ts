import { describe, expect, it } from 'vitest';
import relation from '../../../src/relations/formulas/stop-lever.ts';
import { middle, refusal, work } from '../sampling.ts';

describe('a stop screw on its lever', () => {
  it('turns the lever by the arc over the arm', () => {
    // One turn of an 8-32 screw, 0.79375 mm (references.md, "Threads"), on an arm of 25.4 mm: 1/32 rad.
    expect(middle(relation, 'opening', { travel: 0.79375, arm: 25.4 })).toBeCloseTo(1.790493, 6);
  });

  it('comes back to travel and arm', () => {
    const opening = middle(relation, 'opening', { travel: 0.6, arm: 20 });
    expect(middle(relation, 'travel', { opening, arm: 20 })).toBeCloseTo(0.6, 12);
    expect(middle(relation, 'arm', { opening, travel: 0.6 })).toBeCloseTo(20, 12);
  });

  it('says of arc and chord what is so', () => {
    // s = 2 r sin(θ/2) along the chord, s = r tan θ along a straight line square to the arm.
    const arc = (10 * Math.PI) / 180;
    const chord = (2 * Math.asin(arc / 2)) / arc;
    expect((chord - 1) * 100).toBeCloseTo(0.1, 1);
    const far = (30 * Math.PI) / 180;
    expect(((2 * Math.asin(far / 2)) / far - 1) * 100).toBeCloseTo(1.2, 1);
    expect((1 - Math.atan(arc) / arc) * 100).toBeCloseTo(1, 1);
  });

  it('does not move with no travel, and stops at 30°', () => {
    expect(middle(relation, 'opening', { travel: 0, arm: 20 })).toBeCloseTo(0, 12);
    expect(work(relation, 'opening', { travel: [10, 11], arm: 20 }).hi).toBe(30);
  });

  it.each([
    [
      'opening',
      { travel: 1, arm: 0 },
      'the arm of the lever, {arm}, is too close to nothing to work with',
    ],
    [
      'opening',
      { travel: 11, arm: 20 },
      '{travel} on an arm of {arm} turns the lever past 30°, where travel over arm no longer tells the angle',
    ],
    [
      'travel',
      { opening: 31, arm: 20 },
      '{opening} is past 30°, where travel over arm no longer tells the angle',
    ],
    [
      'arm',
      { opening: 31, travel: 1 },
      '{opening} is past 30°, where travel over arm no longer tells the angle',
    ],
    [
      'arm',
      { opening: 0, travel: 1 },
      'the opening, {opening}, is too close to nothing to work with',
    ],
    [
      'opening',
      { travel: 1e12, arm: 20 },
      '{travel} is beyond anything that the travel of the screw can be',
    ],
  ])('refuses the %s of %o', (wanted, figures, message) => {
    expect(refusal(relation, wanted, figures)).toBe(message);
  });
});
