import { describe, expect, test } from 'vitest';
import vacuum from '../../../src/relations/formulas/idle-vacuum-at-altitude.ts';
import { expectEnclosed, expectThereAndBack, middle, refusal, work } from '../sampling.ts';

const FT = 304.8;
/** Conventional inch of mercury, references.md. */
const IN_HG = 3386.38864;
const barometer = (heightMm: number) =>
  101_325 * (1 - (0.0065 * (heightMm / 1000)) / 288.15) ** 5.255876;
const expected = (inHg: number, from: number, to: number) =>
  middle(vacuum, 'expected', { reading: inHg * IN_HG, altitude: from * FT, here: to * FT }) / IN_HG;

describe('manifold vacuum at another altitude', () => {
  // References.md, Atmosphere: 29.9213, 28.8557, 24.8959 and 20.5770 inHg at 0, 1000, 5000, 10000 ft.
  test.each([
    [19, 0, 1000, 19 - (29.9213 - 28.8557)],
    [19, 0, 5000, 19 - (29.9213 - 24.8959)],
    [18.5, 1000, 5000, 18.5 - (28.8557 - 24.8959)],
    [12, 10000, 0, 12 + (29.9213 - 20.577)],
    [19, 1350, 1350, 19],
  ])('%d inHg at %d ft reads at %d ft: %d', (inHg, from, to, worked) => {
    expect(expected(inHg, from, to)).toBeCloseTo(worked, 3);
  });

  test('holds every point of its stretches, and comes back to the reading', () => {
    const within = {
      reading: [0, 60_000],
      altitude: [-400_000, 2_000_000],
      here: [-400_000, 3_000_000],
    } as const;
    expectEnclosed(vacuum, 'expected', within, ({ reading = 0, altitude = 0, here = 0 }) => {
      const worked = reading - (barometer(altitude) - barometer(here));
      return worked > 0 ? worked : null;
    });
    expectThereAndBack(vacuum, 'expected', 'reading', {
      ...within,
      reading: [40_000, 60_000],
    });
  });

  test('a reading beyond the barometer, or below nothing, is refused', () => {
    const at = { altitude: 0, here: 1350 * FT };
    expect(refusal(vacuum, 'expected', { ...at, reading: 30 * IN_HG })).toBe(
      '{reading} is more than the whole barometer, and no vacuum goes below nothing',
    );
    expect(work(vacuum, 'expected', { ...at, reading: 29.9 * IN_HG }).lo).toBeGreaterThan(0);
    expect(refusal(vacuum, 'expected', { ...at, reading: -1 })).toBe(
      '{reading} is below zero: the manifold would stand above ambient',
    );
  });

  test('a stretch is cut to the part that can be', () => {
    const at = { altitude: 0, here: 0 };
    const whole = work(vacuum, 'expected', { ...at, reading: [-10, 200_000] });
    expect(whole.lo).toBeCloseTo(0, 6);
    expect(whole.hi).toBeCloseTo(101_325, 6);
  });

  test('where the climb takes more than the reading, none is left', () => {
    expect(refusal(vacuum, 'expected', { reading: 4 * IN_HG, altitude: 0, here: 5000 * FT })).toBe(
      'the barometer falls by more than {reading} between the two altitudes, so no vacuum is left',
    );
  });

  test('an altitude outside of the layer is refused by name', () => {
    expect(
      refusal(vacuum, 'expected', { reading: 60_000, altitude: 0, here: 12_000_000 }),
    ).toContain('{here} is outside');
    expect(
      refusal(vacuum, 'expected', { reading: 60_000, altitude: -6_000_000, here: 0 }),
    ).toContain('{altitude} is outside');
  });
});
