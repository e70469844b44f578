import { describe, expect, test } from 'vitest';
import barometer from '../../../src/relations/formulas/barometer-at-altitude.ts';
import { expectEnclosed, expectThereAndBack, middle, refusal, work } from '../sampling.ts';

const M = 1000;
const FT = 304.8;
/** Conventional inch of mercury, references.md. */
const IN_HG = 3386.38864;
const formula = (heightMm: number) =>
  101_325 * (1 - (0.0065 * (heightMm / 1000)) / 288.15) ** 5.255876;

describe('the barometer at an altitude', () => {
  // references.md, Atmosphere (ISO 2533 and US Standard Atmosphere 1976): kPa and inHg.
  test.each([
    [0, 101.325, 29.9213],
    [1000 * M, 89.8746, 26.5399],
    [2000 * M, 79.4952, 23.4749],
    [1000 * FT, 97.7166, 28.8557],
    [5000 * FT, 84.3073, 24.8959],
    [10000 * FT, 69.6817, 20.577],
  ])('%d mm: %d kPa, %d inHg', (altitude, kPa, inHg) => {
    const pascals = middle(barometer, 'barometer', { altitude });
    expect(pascals / 1000).toBeCloseTo(kPa, 4);
    expect(pascals / IN_HG).toBeCloseTo(inHg, 4);
  });

  // Tables of the US Standard Atmosphere 1976, geopotential heights, Pa, from memory.
  test.each([
    [-1000 * M, 113929],
    [3000 * M, 70108.5],
    [5000 * M, 54019.9],
    [10000 * M, 26436.3],
    [11000 * M, 22632.1],
  ])('%d mm: %d Pa', (altitude, pascals) => {
    expect(middle(barometer, 'barometer', { altitude }) / pascals).toBeCloseTo(1, 5);
  });

  // references.md: it falls 1.066 inHg in the first thousand feet, 1.005 a thousand to 5000, .934 to 10000.
  test('its fall a thousand feet', () => {
    const at = (ft: number) => middle(barometer, 'barometer', { altitude: ft * FT }) / IN_HG;
    expect(at(0) - at(1000)).toBeCloseTo(1.066, 3);
    expect((at(0) - at(5000)) / 5).toBeCloseTo(1.005, 3);
    expect((at(0) - at(10000)) / 10).toBeCloseTo(0.934, 3);
  });

  test('holds every point of a stretch of altitudes, and comes back to the altitude', () => {
    const within = { altitude: [-5000 * M, 11000 * M] } as const;
    expectEnclosed(barometer, 'barometer', within, ({ altitude = 0 }) => formula(altitude));
    expectThereAndBack(barometer, 'barometer', 'altitude', within);
  });

  test('ends where the layer does', () => {
    const low = work(barometer, 'barometer', { altitude: -5000 * M });
    const high = work(barometer, 'barometer', { altitude: 11000 * M });
    expect([Math.round(low.lo), Math.round(high.hi)]).toEqual([177_687, 22_632]);
    expect(work(barometer, 'barometer', { altitude: [11000 * M, 12000 * M] }).hi).toBe(high.hi);
    for (const altitude of [-5000 * M - 1, 11000 * M + 1]) {
      expect(refusal(barometer, 'barometer', { altitude })).toBe(
        'the formula for the barometer holds from 5000 m below the sea to 11000 m above it, and {altitude} is outside',
      );
    }
    for (const pascals of [22_600, 180_000, 0, -1]) {
      expect(refusal(barometer, 'altitude', { barometer: pascals })).toBe(
        'no height from 5000 m below the sea to 11000 m above it has a barometer of {barometer}',
      );
    }
  });
});
