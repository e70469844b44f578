import { describe, expect, it } from 'vitest';
import relation from '../../../src/relations/formulas/needle-area.ts';
import quarter from '../../../src/relations/formulas/needle-quarter-turn.ts';
import { expectEnclosed, expectThereAndBack, middle, refusal, work } from '../sampling.ts';

/** Whether the orifice alone meters at a lift. */
function isOut(lift: number, orifice: number, degrees: number): boolean {
  return printed(lift, orifice, degrees) > (Math.PI / 4) * orifice * orifice - 1e-9;
}

/** As references.md, "Metering", prints it, with the orifice as its limit. */
function printed(lift: number, orifice: number, degrees: number): number {
  const angle = (degrees * Math.PI) / 180;
  // The bracket has to stay above zero: beyond, the edge faces the point of the cone or nothing.
  const side = orifice - (lift / 2) * Math.sin(angle);
  const full = (Math.PI / 4) * orifice * orifice;
  const turning = lift >= orifice / Math.sin(angle);
  return turning ? full : Math.min(full, Math.PI * lift * Math.sin(angle / 2) * side);
}

describe('the area beside a conical needle', () => {
  it.each([
    [1, 10, 0.5, 0.1309606],
    [1, 60, 0.1, 0.1502779],
  ])('with an orifice of %s mm, %s° and %s mm of lift is %s mm²', (orifice, angle, lift, area) => {
    // references.md, "Metering".
    expect(middle(relation, 'area', { orifice, 'needle-angle': angle, lift })).toBeCloseTo(area, 7);
  });

  it('is nothing when seated, and the orifice at most', () => {
    const needle = { orifice: 1, 'needle-angle': 10 };
    expect(middle(relation, 'area', { ...needle, lift: 0 })).toBeCloseTo(0, 12);
    const full = middle(relation, 'full-lift', needle);
    expect(middle(relation, 'area', { ...needle, lift: full })).toBeCloseTo(Math.PI / 4, 12);
    // Solved by halving the printed form: 5.40 mm.
    let [low, high] = [0, 1 / Math.sin(Math.PI / 18)];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (printed(middle, 1, 10) < Math.PI / 4) low = middle;
      else high = middle;
    }
    expect(full).toBeCloseTo(high, 6);
    expect(work(relation, 'area', { ...needle, lift: [5, 8] }).hi).toBeCloseTo(Math.PI / 4, 12);
  });

  it('comes back to the lift', () => {
    expectThereAndBack(relation, 'area', 'lift', {
      orifice: [1, 3],
      'needle-angle': [5, 60],
      lift: [0, 0.25],
    });
  });

  it('holds whatever lies within limits', () => {
    const within = { orifice: [0.5, 3], 'needle-angle': [4, 175], lift: [0, 1] } as const;
    expectEnclosed(
      relation,
      'area',
      within,
      ({ orifice = 0, 'needle-angle': angle = 0, lift = 0 }) =>
        isOut(lift, orifice, angle) ? null : printed(lift, orifice, angle),
    );
    const slender = { orifice: [1, 3], 'needle-angle': [4, 40], area: [0, 0.6] } as const;
    expectEnclosed(
      relation,
      'lift',
      slender,
      ({ orifice = 0, 'needle-angle': angle = 0, area = 0 }) => {
        let [low, high] = [0, orifice / Math.sin((angle * Math.PI) / 180)];
        for (let i = 0; i < 80; i++) {
          const lift = (low + high) / 2;
          if (printed(lift, orifice, angle) < area) low = lift;
          else high = lift;
        }
        return high;
      },
      1e-9,
    );
  });

  it.each([
    [
      'area',
      { orifice: 1, 'needle-angle': 10, lift: 6 },
      'lifted by {lift}, a needle of {needle-angle} leaves an orifice of {orifice} wholly open and meters nothing',
    ],
    [
      'area',
      { orifice: 1, 'needle-angle': 180, lift: 0.1 },
      'a needle of {needle-angle} is no cone',
    ],
    [
      'area',
      { orifice: 1, 'needle-angle': 0, lift: 0.1 },
      'the angle of the needle, {needle-angle}, is too close to nothing to work with',
    ],
    [
      'area',
      { orifice: 0, 'needle-angle': 10, lift: 0.1 },
      'the idle orifice, {orifice}, is too close to nothing to work with',
    ],
    [
      'lift',
      { orifice: 1, 'needle-angle': 10, area: 0.8 },
      '{area} is more than an orifice of {orifice} has with the needle out',
    ],
    ['full-lift', { orifice: 1, 'needle-angle': 200 }, 'a needle of {needle-angle} is no cone'],
  ])('refuses the %s of %o', (wanted, figures, message) => {
    expect(refusal(relation, wanted, figures)).toBe(message);
  });
});

describe('a quarter turn of an idle needle', () => {
  const needle = { orifice: 1.5, 'needle-angle': 10, pitch: 0.79375 };

  it('is worth what the area grows by', () => {
    const at = (lift: number) => printed(lift, 1.5, 10);
    for (const lift of [0, 0.8, 2, 7]) {
      const worth = middle(quarter, 'worth', { ...needle, lift });
      expect(worth).toBeCloseTo(at(lift + 0.79375 / 4) - at(lift), 9);
    }
  });

  it('is worth less the farther the needle is out, and ends with the orifice', () => {
    const worth = [0, 1, 2, 4, 8].map((lift) => middle(quarter, 'worth', { ...needle, lift }));
    expect(worth).toEqual([...worth].sort((a, b) => b - a));
    const full = middle(relation, 'full-lift', { orifice: 1.5, 'needle-angle': 10 });
    expect(middle(quarter, 'worth', { ...needle, lift: full - 1e-9 })).toBeCloseTo(0, 8);
  });

  it('holds whatever lies within limits, though it may rise or fall with the angle', () => {
    const within = {
      orifice: [0.5, 3],
      'needle-angle': [4, 175],
      lift: [0, 2],
      pitch: [0.5, 1.2],
    } as const;
    expectEnclosed(
      quarter,
      'worth',
      within,
      ({ orifice = 0, 'needle-angle': angle = 0, lift = 0, pitch = 0 }) =>
        isOut(lift, orifice, angle)
          ? null
          : printed(lift + pitch / 4, orifice, angle) - printed(lift, orifice, angle),
    );
  });

  it('stays narrow within the rounding of an angle', () => {
    const exact = middle(quarter, 'worth', { ...needle, lift: 1 });
    const rounded = work(quarter, 'worth', { ...needle, lift: 1, 'needle-angle': [9.5, 10.5] });
    const ends = [9.5, 10.5].map((angle) =>
      middle(quarter, 'worth', { ...needle, lift: 1, 'needle-angle': angle }),
    );
    expect(rounded.lo).toBeLessThanOrEqual(Math.min(...ends));
    expect(rounded.hi).toBeGreaterThanOrEqual(Math.max(...ends));
    expect(rounded.hi - rounded.lo).toBeLessThan(1.02 * Math.abs((ends[1] ?? 0) - (ends[0] ?? 0)));
    expect(rounded.lo).toBeLessThan(exact);
  });

  it.each([
    [
      { ...needle, lift: 9 },
      'lifted by {lift}, a needle of {needle-angle} leaves an orifice of {orifice} wholly open and meters nothing',
    ],
    [{ ...needle, pitch: 0, lift: 1 }, 'the thread, {pitch}, is too close to nothing to work with'],
    [{ ...needle, 'needle-angle': 181, lift: 1 }, 'a needle of {needle-angle} is no cone'],
  ])('refuses %o', (figures, message) => {
    expect(refusal(quarter, 'worth', figures)).toBe(message);
  });
});
