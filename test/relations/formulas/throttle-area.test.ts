import { describe, expect, it } from 'vitest';
import relation from '../../../src/relations/formulas/throttle-area.ts';
import { expectEnclosed, expectThereAndBack, middle, refusal, work } from '../sampling.ts';

// references.md, "Throttle plate": D = 36 mm, shaft 8 mm, closed angle 10°, in mm².
const unit = { bore: 36, shaft: 8, 'closed-angle': 10 };
const FULL = 732.264266;

/**
 * What is seen along the bore beside plate and shaft, by Simpson's rule over the width of the bore: a
 * second opinion that shares nothing with the closed form.
 */
function integrated(bore: number, shaft: number, k: number): number {
  const radius = bore / 2;
  const panels = 200_000;
  const open = (t: number) => {
    const edge = radius * Math.cos(t);
    return Math.max(0, edge - Math.max(k * edge, shaft / 2)) * radius * Math.cos(t);
  };
  const step = Math.PI / 2 / panels;
  let sum = open(0) + open(Math.PI / 2);
  for (let i = 1; i < panels; i++) sum += (i % 2 === 1 ? 4 : 2) * open(i * step);
  return (4 * sum * step) / 3;
}

/** The form that references.md prints, term by term. */
function printed(bore: number, shaft: number, closed: number, angle: number): number {
  const k = cos(angle) / cos(closed);
  const a = shaft / bore;
  const beside = a * Math.sqrt(1 - a * a) + Math.asin(a);
  if (k <= a) return ((Math.PI * bore * bore) / 4) * (1 - (2 / Math.PI) * beside);
  const root = Math.sqrt(Math.max(0, cos(angle) ** 2 - (a * cos(closed)) ** 2));
  return (
    ((Math.PI * bore * bore) / 4) *
    (1 - k + (2 / Math.PI) * ((a / cos(angle)) * root + k * Math.asin(a / k) - beside))
  );
}

const cos = (degrees: number) => Math.cos((degrees * Math.PI) / 180);

describe('the open area beside a throttle plate', () => {
  it.each([
    [10, 0],
    [15, 19.420921],
    [20, 46.39323],
    [45, 284.747749],
    [77.3587, FULL],
    [80, FULL],
    [90, FULL],
  ])('at %s° is %s mm²', (angle, area) => {
    expect(middle(relation, 'area', { ...unit, angle })).toBeCloseTo(area, 5);
  });

  it('is the same by numerical integration', () => {
    for (const [bore, shaft, closed] of [
      [36, 8, 10],
      [36.5125, 7.9375, 12],
      [22, 0, 0],
      [30, 29.9, 5],
      [50, 12, 45],
    ] as const) {
      for (const share of [0, 0.02, 0.2, 0.5, 0.8, 0.95, 1]) {
        const angle = closed + share * (90 - closed);
        const k = cos(angle) / cos(closed);
        const { lo, hi } = work(relation, 'area', { bore, shaft, 'closed-angle': closed, angle });
        const second = integrated(bore, shaft, k);
        expect((lo + hi) / 2).toBeCloseTo(second, 5);
      }
    }
  });

  it('follows from the gap as it does from the angle', () => {
    // The gap of 20° from references.md, to four places: half a unit of the last is 0.00005 mm.
    const { lo, hi } = work(relation, 'area', { bore: 36, shaft: 8, gap: [0.82455, 0.82465] });
    expect(lo).toBeLessThan(46.39323);
    expect(hi).toBeGreaterThan(46.39323);
    expect(hi - lo).toBeLessThan(0.01);
  });

  it('has the whole bore where no shaft is said', () => {
    expect(
      middle(relation, 'area', { bore: 36, shaft: 0, 'closed-angle': 10, angle: 90 }),
    ).toBeCloseTo(Math.PI * 18 * 18, 9);
  });

  it.each([10.001, 15, 20, 45, 70])('gives back %s° and its gap', (angle) => {
    const area = work(relation, 'area', { ...unit, angle });
    const given = { ...unit, area: [area.lo, area.hi] as const };
    const back = work(relation, 'angle', given);
    expect(back.lo).toBeLessThanOrEqual(angle);
    expect(back.hi).toBeGreaterThanOrEqual(angle);
    expect(back.hi - back.lo).toBeLessThan(1e-6);
    const gap = work(relation, 'gap', { bore: 36, shaft: 8, area: [area.lo, area.hi] });
    const fromGap = work(relation, 'area', { bore: 36, shaft: 8, gap: [gap.lo, gap.hi] });
    expect(fromGap.lo).toBeLessThanOrEqual(area.lo);
    expect(fromGap.hi).toBeGreaterThanOrEqual(area.hi);
  });

  it('leaves the angle open upward once the shaft hides the plate', () => {
    const full = work(relation, 'area', { ...unit, angle: 90 });
    const angle = work(relation, 'angle', { ...unit, area: [full.lo, full.hi] });
    // references.md: constant from 77.3587° on. The area hardly changes there, so the lower end is soft.
    expect(angle.lo).toBeGreaterThan(77.35);
    expect(angle.lo).toBeLessThan(77.3588);
    expect(angle.hi).toBe(90);
    const gap = work(relation, 'gap', { bore: 36, shaft: 8, area: [full.lo, full.hi] });
    expect(gap.hi).toBe(18);
    expect(gap.lo).toBeLessThanOrEqual(14);
    expect(gap.lo).toBeGreaterThan(13.99);
  });

  // Slender shafts and thick, plates closed at any angle, at any opening.
  const within = {
    bore: [20, 50],
    shaft: [0, 19],
    'closed-angle': [0, 30],
    angle: [30, 89],
  } as const;

  it('holds whatever lies within limits, from the angle', () => {
    expectEnclosed(
      relation,
      'area',
      within,
      ({ bore = 0, shaft = 0, 'closed-angle': closed = 0, angle = 0 }) =>
        printed(bore, shaft, closed, angle),
    );
  });

  it('holds whatever lies within limits, from the gap', () => {
    const gaps = { bore: [20, 50], shaft: [0, 19], gap: [0, 9.9] } as const;
    expectEnclosed(relation, 'area', gaps, ({ bore = 0, shaft = 0, gap = 0 }) =>
      printed(bore, shaft, 0, (Math.acos(1 - (2 * gap) / bore) * 180) / Math.PI),
    );
  });

  it('holds whatever lies within limits, back from the area', () => {
    // By halving the printed form, to a billionth of a degree.
    const areas = {
      bore: [30, 50],
      shaft: [0, 12],
      'closed-angle': [0, 30],
      area: [1, 300],
    } as const;
    const angleOf = (at: Readonly<Record<string, number>>) => {
      const { bore = 0, shaft = 0, 'closed-angle': closed = 0, area = 0 } = at;
      if (printed(bore, shaft, closed, 89.999) < area) return null;
      let [low, high] = [closed, 89.999];
      for (let i = 0; i < 80; i++) {
        const middle = (low + high) / 2;
        if (printed(bore, shaft, closed, middle) < area) low = middle;
        else high = middle;
      }
      return high;
    };
    expectEnclosed(relation, 'angle', areas, angleOf, 1e-9);
  });

  it('goes there and back', () => {
    const open = {
      bore: [20, 50],
      shaft: [0, 8],
      'closed-angle': [0, 30],
      angle: [31, 60],
    } as const;
    expectThereAndBack(relation, 'area', 'angle', open);
    expectThereAndBack(relation, 'area', 'gap', { bore: [20, 50], shaft: [0, 8], gap: [0, 5] });
  });

  it('shuts at no area', () => {
    expect(work(relation, 'angle', { ...unit, area: 0 }).lo).toBe(10);
    expect(work(relation, 'angle', { ...unit, area: 0 }).hi).toBeCloseTo(10, 9);
    expect(work(relation, 'gap', { bore: 36, shaft: 0, area: 0 }).hi).toBeLessThan(1e-12);
  });

  it.each([
    [
      { ...unit, shaft: 36, angle: 20 },
      'a throttle shaft of {shaft} fills a bore of {bore}: nothing is left open',
    ],
    [
      { ...unit, shaft: 40, angle: 20 },
      'a throttle shaft of {shaft} fills a bore of {bore}: nothing is left open',
    ],
    [{ ...unit, angle: 9.9 }, '{angle} is below the {closed-angle} at which the plate closes'],
    [
      { ...unit, 'closed-angle': 95, angle: 96 },
      'a plate can not close at {closed-angle}: at 90° it stands along the bore',
    ],
    [
      { bore: 36, shaft: 8, gap: 19 },
      '{gap} is more than half of a bore of {bore}, and no plate opens so far',
    ],
    [
      { ...unit, bore: 0, angle: 20 },
      'the throttle bore, {bore}, is too close to nothing to work with',
    ],
    [
      { ...unit, shaft: 1e300, angle: 20 },
      '{shaft} is beyond anything that the throttle shaft can be',
    ],
  ])('refuses %o', (figures, message) => {
    expect(refusal(relation, 'area', figures)).toBe(message);
  });

  it.each([
    ['angle', { ...unit, area: 732.2643 }],
    ['gap', { bore: 36, shaft: 8, area: 732.2643 }],
    ['angle', { ...unit, area: 1e9 }],
  ])('refuses the %s of an area that the bore has not got', (wanted, figures) => {
    expect(refusal(relation, wanted, figures)).toBe(
      '{area} is more than a bore of {bore} leaves open beside its shaft at full throttle',
    );
  });
});
