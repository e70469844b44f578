import { describe, expect, it } from 'vitest';
import relation from '../../../src/relations/formulas/throttle-gap.ts';
import { expectEnclosed, expectThereAndBack, middle, refusal, work } from '../sampling.ts';

// references.md, "Throttle plate": computed there twice; D = 36 mm, closed angle 10°.
const unit = { bore: 36, 'closed-angle': 10 };

describe('the gap beside a throttle plate', () => {
  it.each([
    [10, 0],
    [15, 0.3451],
    [20, 0.8246],
    [45, 5.0757],
  ])('at %s° is %s mm', (angle, gap) => {
    expect(middle(relation, 'gap', { ...unit, angle })).toBeCloseTo(gap, 4);
  });

  it.each([
    // The corner of the plate turned about the shaft, by coordinates: no formula of the program's.
    [20, 1.5],
    [45, 2.0],
    [12, 0.8],
    [80, 1.6],
  ])('takes off at %s° what a plate of %s mm stands nearer', (angle, plate) => {
    const closed = (10 * Math.PI) / 180;
    const by = ((angle - 10) * Math.PI) / 180;
    const reach = [-1, 1].map((face) => {
      const along = 18 * Math.tan(closed) + (face * plate) / (2 * Math.cos(closed));
      return 18 * Math.cos(by) - along * Math.sin(by);
    });
    const gap = middle(relation, 'gap', { ...unit, angle, plate });
    expect(gap).toBeCloseTo(18 - Math.max(...reach), 9);
    expect(middle(relation, 'angle', { ...unit, gap, plate })).toBeCloseTo(angle, 6);
  });

  it('refuses a plate that would jam', () => {
    expect(refusal(relation, 'gap', { ...unit, angle: 20, plate: 7 })).toContain('would jam');
  });

  it('gives the angle of a gap', () => {
    // references.md, "Throttle plate": inverse.
    expect(middle(relation, 'angle', { ...unit, gap: 1 })).toBeCloseTo(21.55018, 5);
  });

  it.each([0, 1e-6, 10, 45, 70, 89.9])(
    'comes back to the angle from a plate closed at %s°',
    (closed) => {
      for (const share of [0, 1e-6, 0.01, 0.5, 0.99, 1]) {
        const angle = closed + share * (90 - closed);
        const gap = work(relation, 'gap', { bore: 36, 'closed-angle': closed, angle });
        const back = work(relation, 'angle', {
          bore: 36,
          'closed-angle': closed,
          gap: [gap.lo, gap.hi],
        });
        expect(back.lo).toBeLessThanOrEqual(angle);
        expect(back.hi).toBeGreaterThanOrEqual(angle);
        // Near the closed plate of no angle the gap hardly tells the angle, so the stretch may be wider.
        expect(back.hi - back.lo).toBeLessThan(1e-5);
      }
    },
  );

  it('is half of the bore with the plate along it, whatever the closed angle', () => {
    for (const closed of [0, 10, 80]) {
      expect(middle(relation, 'gap', { bore: 36, 'closed-angle': closed, angle: 90 })).toBeCloseTo(
        18,
        12,
      );
    }
    expect(middle(relation, 'angle', { ...unit, gap: 18 })).toBeCloseTo(90, 9);
  });

  it('cuts roundings to the part that a plate can have', () => {
    // 10° may be 9.5° beside a closed angle of 10.5°: that plate is shut, and no gap is negative.
    const shut = work(relation, 'gap', {
      bore: 36,
      angle: [9.5, 10.5],
      'closed-angle': [9.5, 10.5],
    });
    expect(shut.lo).toBe(0);
    expect(shut.hi).toBeCloseTo(
      middle(relation, 'gap', { bore: 36, angle: 10.5, 'closed-angle': 9.5 }),
      9,
    );
    expect(work(relation, 'gap', { ...unit, angle: [89.5, 90.5] }).hi).toBeCloseTo(18, 12);
    expect(work(relation, 'angle', { ...unit, gap: [17, 19] }).hi).toBe(90);
  });

  it('holds whatever lies within limits', () => {
    const cos = (degrees: number) => Math.cos((degrees * Math.PI) / 180);
    const turned = { bore: [10, 60], 'closed-angle': [0, 60], angle: [0, 90] } as const;
    expectEnclosed(
      relation,
      'gap',
      turned,
      ({ bore = 0, 'closed-angle': closed = 0, angle = 0 }) =>
        angle < closed ? null : (bore / 2) * (1 - cos(angle) / cos(closed)),
    );
    // The arc cosine of the plain formula has too few places beside a plate closed near 0°.
    const gaps = { bore: [10, 60], 'closed-angle': [5, 80], gap: [0, 8] } as const;
    expectEnclosed(relation, 'angle', gaps, ({ bore = 0, 'closed-angle': closed = 0, gap = 0 }) =>
      gap > bore / 2 ? null : (Math.acos(cos(closed) * (1 - (2 * gap) / bore)) * 180) / Math.PI,
    );
    expectThereAndBack(relation, 'gap', 'angle', { ...turned, angle: [61, 90] });
  });

  it.each([
    [{ ...unit, angle: 9 }, '{angle} is below the {closed-angle} at which the plate closes'],
    [{ ...unit, angle: 91 }, '{angle} is past 90°, where the plate stands along the bore'],
    [
      { bore: 36, 'closed-angle': 90, angle: 90 },
      'a plate can not close at {closed-angle}: at 90° it stands along the bore',
    ],
    [
      { ...unit, 'closed-angle': 120, angle: 130 },
      'a plate can not close at {closed-angle}: at 90° it stands along the bore',
    ],
    [
      { ...unit, bore: 0, angle: 20 },
      'the throttle bore, {bore}, is too close to nothing to work with',
    ],
    [{ ...unit, angle: -20 }, 'the throttle angle, {angle}, is less than nothing'],
    [{ ...unit, bore: 1e12, angle: 20 }, '{bore} is beyond anything that the throttle bore can be'],
  ])('refuses %o', (figures, message) => {
    expect(refusal(relation, 'gap', figures)).toBe(message);
  });

  it.each([
    [
      { ...unit, gap: 18.001 },
      '{gap} is more than half of a bore of {bore}, and no plate opens so far',
    ],
    [
      { bore: 36, gap: 1, 'closed-angle': 90 },
      'a plate can not close at {closed-angle}: at 90° it stands along the bore',
    ],
  ])('refuses the angle of %o', (figures, message) => {
    expect(refusal(relation, 'angle', figures)).toBe(message);
  });
});
