import { describe, expect, it } from 'vitest';
import equalFlow from '../../../src/relations/formulas/equal-flow.ts';
import equalGap from '../../../src/relations/formulas/equal-gap.ts';
import area from '../../../src/relations/formulas/throttle-area.ts';
import { expectEnclosed, middle, refusal, work } from '../sampling.ts';

const one = { barrels: 1, 'other-barrels': 1 };
const bare = { shaft: 0, 'other-shaft': 0 };

/** Without a shaft the area is π/4 D² (1 - k), so π/2 D gap: in proportion to bore and gap. */
describe('one wire on two bores', () => {
  it('opens them as their bores are, without shafts', () => {
    const figures = { ...one, ...bare, gap: 0.8, bore: 36, 'other-bore': 27 };
    expect(middle(equalGap, 'share', figures)).toBeCloseTo(75, 9);
    expect(middle(equalGap, 'share', { ...figures, 'other-barrels': 2 })).toBeCloseTo(150, 9);
  });

  it('opens one unit as itself', () => {
    const figures = { ...one, gap: 0.8, bore: 36, shaft: 8, 'other-bore': 36, 'other-shaft': 8 };
    expect(middle(equalGap, 'share', figures)).toBeCloseTo(100, 9);
  });

  it('holds whatever lies within limits', () => {
    const within = {
      gap: [0.2, 4],
      bore: [20, 40],
      shaft: [0, 10],
      barrels: [1, 2],
      'other-bore': [20, 40],
      'other-shaft': [0, 10],
      'other-barrels': [1, 2],
    } as const;
    expectEnclosed(
      equalGap,
      'share',
      within,
      (at) =>
        (100 *
          (at['other-barrels'] ?? 0) *
          (open(at, 'other-bore', 'other-shaft') / open(at, 'bore', 'shaft'))) /
        (at.barrels ?? 0),
      1e-9,
    );
  });

  it.each([
    [
      { gap: 19, bore: 36, 'other-bore': 40 },
      '{gap} is more than half of a bore of {bore}, and no plate opens so far',
    ],
    [
      { gap: 15, bore: 36, 'other-bore': 20 },
      '{gap} is more than half of the other unit’s bore of {other-bore}, and no plate opens so far',
    ],
    [
      { gap: 0, bore: 36, 'other-bore': 20 },
      'the throttle gap, {gap}, is too close to nothing to work with',
    ],
    [
      { gap: 1, bore: 36, 'other-bore': 20, 'other-shaft': 20 },
      'a throttle shaft of {other-shaft} fills a bore of {other-bore}: nothing is left open',
    ],
  ])('refuses %o', (figures, message) => {
    expect(refusal(equalGap, 'share', { ...one, ...bare, ...figures })).toBe(message);
  });
});

describe('one open area on two bores', () => {
  it('wants gaps that go as the bores do, without shafts', () => {
    const figures = { ...one, ...bare, gap: 0.9, bore: 36, 'other-bore': 27 };
    expect(middle(equalFlow, 'other-gap', figures)).toBeCloseTo(1.2, 9);
    expect(middle(equalFlow, 'other-gap', { ...figures, 'other-barrels': 2 })).toBeCloseTo(0.6, 9);
  });

  it('comes to the same area on both', () => {
    // references.md, "Throttle plate": 20° on 36 mm with a shaft of 8 mm leaves 46.393230 mm².
    const gap = 18 * (1 - Math.cos(Math.PI / 9) / Math.cos(Math.PI / 18));
    const units = { ...one, gap, bore: 36, shaft: 8, 'other-bore': 30, 'other-shaft': 7 };
    const other = work(equalFlow, 'other-gap', units);
    expect(other.lo).toBeGreaterThan(gap);
    const open = work(area, 'area', { gap: [other.lo, other.hi], bore: 30, shaft: 7 });
    expect((open.lo + open.hi) / 2).toBeCloseTo(46.39323, 6);
  });

  it('holds whatever lies within limits', () => {
    const within = {
      gap: [0, 2],
      bore: [20, 40],
      shaft: [0, 8],
      barrels: [1, 2],
      'other-bore': [30, 40],
      'other-shaft': [0, 8],
      'other-barrels': [1, 2],
    } as const;
    const solved = (at: Readonly<Record<string, number>>) => {
      const wanted = ((at.barrels ?? 0) * open(at, 'bore', 'shaft')) / (at['other-barrels'] ?? 1);
      let [low, high] = [0, 0.49 * (at['other-bore'] ?? 0)];
      if (open({ ...at, gap: high }, 'other-bore', 'other-shaft') <= wanted) return null;
      for (let i = 0; i < 80; i++) {
        const gap = (low + high) / 2;
        if (open({ ...at, gap }, 'other-bore', 'other-shaft') < wanted) low = gap;
        else high = gap;
      }
      return high;
    };
    expectEnclosed(equalFlow, 'other-gap', within, solved, 1e-9);
  });

  it.each([
    [
      { gap: 9, bore: 36, 'other-bore': 10 },
      'at {gap} this unit is open by more than a bore of {other-bore} ever is',
    ],
    [
      { gap: 19, bore: 36, 'other-bore': 40 },
      '{gap} is more than half of a bore of {bore}, and no plate opens so far',
    ],
    [
      { gap: 1, bore: 36, shaft: 36, 'other-bore': 40 },
      'a throttle shaft of {shaft} fills a bore of {bore}: nothing is left open',
    ],
    [
      { gap: 1, bore: 36, barrels: 0, 'other-bore': 40 },
      'the number of barrels, {barrels}, is too close to nothing to work with',
    ],
  ])('refuses %o', (figures, message) => {
    expect(refusal(equalFlow, 'other-gap', { ...one, ...bare, ...figures })).toBe(message);
  });
});

/** The bore beyond the strip of the shaft, less the plate beyond it: two segments and two of an ellipse. */
function open(at: Readonly<Record<string, number>>, boreName: string, shaftName: string): number {
  const [bore = 1, shaft = 0, gap = 0] = [at[boreName], at[shaftName], at.gap];
  const k = Math.max(0, 1 - (2 * gap) / bore);
  const a = shaft / bore;
  const strip = (half: number) =>
    half * Math.sqrt(Math.max(0, 1 - half * half)) + Math.asin(Math.min(1, half));
  const beyond = Math.PI - 2 * strip(a);
  const plate = k > a ? k * (Math.PI - 2 * strip(a / k)) : 0;
  return ((bore * bore) / 4) * (beyond - plate);
}
