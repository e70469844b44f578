import { describe, expect, test } from 'vitest';
import bench from '../../../src/relations/formulas/bench-fuel-level.ts';
import { expectEnclosed, middle, refusal } from '../sampling.ts';

const G = 9.80665;
const SIZES = {
  level: 18.5,
  density: 740,
  area: 950,
  weight: 11,
  pressure: 20_000,
  seat: 1.5,
  arm: 36,
  'short-arm': 9,
};

/**
 * The fluid's surface found by halving, from the moments about the hinge alone: a float with upright
 * sides whose bottom hangs at `bottomMm` below the rim, in the place where its needle shuts.
 */
function surface(at: Readonly<Record<string, number>>, density: number, bottomMm: number): number {
  const { area = 0, weight: grams = 0, pressure = 0, seat = 0 } = at;
  const { arm = 0, 'short-arm': needleArm = 0 } = at;
  const shutting = (levelMm: number) => {
    const cubicMeters = area * 1e-6 * ((bottomMm - levelMm) / 1000);
    const up = (density * cubicMeters - grams / 1000) * G * (arm / 1000);
    const down = pressure * Math.PI * (seat / 2000) ** 2 * (needleArm / 1000);
    return up - down;
  };
  let [covered, bare] = [-1e6, bottomMm];
  for (let i = 0; i < 200; i++) {
    const between = (covered + bare) / 2;
    if (shutting(between) > 0) covered = between;
    else bare = between;
  }
  return (covered + bare) / 2;
}

describe('the wet level with another fluid', () => {
  test.each([
    [740, 780],
    [740, 700],
    [720, 775],
    [740, 740],
  ])('set for %d kg/m³, on the bench with %d', (density, other) => {
    const sizes = { ...SIZES, density };
    // The bottom of the float is wherever it has to be for the stated level.
    const bottom = 18.5 - surface(sizes, density, 0);
    expect(surface(sizes, density, bottom)).toBeCloseTo(18.5, 9);
    const worked = middle(bench, 'bench-level', { ...sizes, 'bench-density': other });
    expect(worked).toBeCloseTo(surface(sizes, other, bottom), 8);
  });

  test('a denser fluid stands lower, a lighter one higher', () => {
    const at = (other: number) =>
      middle(bench, 'bench-level', { ...SIZES, 'bench-density': other });
    expect(at(780)).toBeGreaterThan(18.5);
    expect(at(740)).toBeCloseTo(18.5, 12);
    expect(at(700)).toBeLessThan(18.5);
  });

  test('holds every point of its stretches', () => {
    expectEnclosed(
      bench,
      'bench-level',
      {
        level: [10, 40],
        density: [690, 790],
        'bench-density': [690, 850],
        area: [500, 1500],
        weight: [5, 25],
        pressure: [0, 40_000],
        seat: [1, 3],
        arm: [15, 50],
        'short-arm': [4, 12],
      },
      (at) => {
        const { density = 1, 'bench-density': other = 1, level = 0 } = at;
        const bottom = level - surface(at, density, 0);
        const worked = surface(at, other, bottom);
        return worked < 0 ? null : worked;
      },
    );
  });

  test('no density and a float of no area are refused; so is a bowl that runs over', () => {
    const whole = { ...SIZES, 'bench-density': 700 };
    for (const name of ['density', 'bench-density', 'area', 'arm']) {
      expect(refusal(bench, 'bench-level', { ...whole, [name]: 0 })).toContain(`{${name}}`);
    }
    expect(refusal(bench, 'bench-level', { ...whole, level: 1, area: 100 })).toBe(
      'in fluid of {bench-density} the float shuts its needle only when the bowl runs over',
    );
  });
});
