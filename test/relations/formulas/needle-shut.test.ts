import { describe, expect, test } from 'vitest';
import needle from '../../../src/relations/formulas/needle-shut.ts';
import { expectEnclosed, middle, refusal, work } from '../sampling.ts';

const G = 9.80665;
const FLOAT = {
  volume: 30,
  weight: 10,
  density: 740,
  arm: 36,
  'short-arm': 9,
};

/** By moments about the hinge, in SI throughout. */
function held(at: Readonly<Record<string, number>>): number | null {
  const { volume: mL = 0, weight: g = 0, density = 0 } = at;
  const { arm = 0, 'short-arm': needleArm = 1, seat = 1 } = at;
  const newtons = density * (mL * 1e-6) * G - (g / 1000) * G;
  if (newtons <= 0) return null;
  const atNeedle = (newtons * (arm / 1000)) / (needleArm / 1000);
  return atNeedle / (Math.PI * (seat / 2000) ** 2);
}

const WITHIN = {
  volume: [20, 60],
  weight: [5, 25],
  density: [650, 850],
  arm: [15, 50],
  'short-arm': [4, 12],
  seat: [1, 4],
} as const;

describe('the float against the pressure of the fuel', () => {
  test('a float worked by hand', () => {
    // 30 mL of 740 kg/m³ is 22.2 g, less 10 g: 12.2 g; four times that at the needle, 0.47856 N,
    // on a bore of 2 mm, 3.14159 mm²: 152.33 kPa.
    const holds = middle(needle, 'holds', { ...FLOAT, seat: 2 });
    expect(holds / 1000).toBeCloseTo(152.332, 2);
    expect(middle(needle, 'margin', { ...FLOAT, seat: 2, pressure: holds / 2 })).toBeCloseTo(
      100,
      6,
    );
    expect(middle(needle, 'margin', { ...FLOAT, seat: 2, pressure: holds * 2 })).toBeCloseTo(
      -50,
      6,
    );
    expect(middle(needle, 'seat', { ...FLOAT, pressure: holds })).toBeCloseTo(2, 9);
  });

  test('twice the bore holds a quarter of the pressure', () => {
    const one = middle(needle, 'pressure', { ...FLOAT, seat: 2 });
    expect(middle(needle, 'pressure', { ...FLOAT, seat: 4 })).toBeCloseTo(one / 4, 6);
  });

  test('the pressure and the bore are bounds, what is held is not', () => {
    const holds = needle.solutions.map(({ for: what, hold }) => [what, hold]);
    expect(holds).toEqual([
      ['holds', 'equals'],
      ['margin', 'equals'],
      ['pressure', 'at-most'],
      ['seat', 'at-most'],
    ]);
  });

  test('holds every point of its stretches', () => {
    expectEnclosed(needle, 'holds', WITHIN, held);
    expectEnclosed(needle, 'margin', { ...WITHIN, pressure: [5000, 60_000] }, (at) => {
      const most = held(at);
      return most === null ? null : 100 * (most / (at.pressure ?? 1) - 1);
    });
    const { seat: _, ...float } = WITHIN;
    expectEnclosed(needle, 'seat', { ...float, pressure: [5000, 60_000] }, (at) => {
      const force = held({ ...at, seat: 2 });
      return force === null ? null : 2 * Math.sqrt(force / (at.pressure ?? 1));
    });
  });

  test('a float that sinks is refused, also at the limit', () => {
    const words =
      'a float of {volume} that weighs {weight} sinks in fuel of {density}, and shuts nothing';
    expect(refusal(needle, 'holds', { ...FLOAT, seat: 2, weight: 22.3 })).toBe(words);
    expect(refusal(needle, 'margin', { ...FLOAT, seat: 2, pressure: 1, volume: 0 })).toBe(words);
    expect(work(needle, 'holds', { ...FLOAT, seat: 2, weight: [20, 23] }).lo).toBe(0);
  });

  test('no bore, no pressure and no arm are refused by name', () => {
    expect(refusal(needle, 'holds', { ...FLOAT, seat: 0 })).toContain('{seat}');
    expect(refusal(needle, 'margin', { ...FLOAT, seat: 2, pressure: 0 })).toContain('{pressure}');
    expect(refusal(needle, 'holds', { ...FLOAT, seat: 2, 'short-arm': 0 })).toContain(
      '{short-arm}',
    );
    expect(refusal(needle, 'holds', { ...FLOAT, seat: 2, density: 0 })).toContain('{density}');
  });
});
