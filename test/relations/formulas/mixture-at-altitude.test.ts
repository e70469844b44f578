import { describe, expect, test } from 'vitest';
import mixture from '../../../src/relations/formulas/mixture-at-altitude.ts';
import { expectEnclosed, middle, refusal } from '../sampling.ts';

const FT = 304.8;
const coolness = (heightMm: number) => 1 - (0.0065 * (heightMm / 1000)) / 288.15;

describe('the mixture of fixed jets at another altitude', () => {
  // Density over that at sea level is pressure over temperature. In meters with the pressures of
  // references.md, in feet from the tables of the US Standard Atmosphere 1976, from memory.
  test.each([
    [0, 0, 1],
    [0, 1000 * 1000, (89.8746 / 101.325) * (288.15 / 281.65)],
    [0, 2000 * 1000, (79.4952 / 101.325) * (288.15 / 275.15)],
    [0, 5000 * FT, 0.8617],
    [0, 10000 * FT, 0.7385],
  ])('jets for %d mm, at %d mm: the air is %d as dense', (altitude, here, density) => {
    const worked = middle(mixture, 'enrichment', { altitude, here });
    expect((1 + worked / 100) ** -2).toBeCloseTo(density, 4);
  });

  test('a jet for 5000 ft is lean at the sea, by as much as it would be rich the other way', () => {
    const up = middle(mixture, 'enrichment', { altitude: 0, here: 5000 * FT });
    const down = middle(mixture, 'enrichment', { altitude: 5000 * FT, here: 0 });
    expect(up).toBeCloseTo(7.728, 2);
    expect(down).toBeLessThan(0);
    expect((1 + up / 100) * (1 + down / 100)).toBeCloseTo(1, 12);
  });

  test('holds every point of its stretches', () => {
    const heights = [-5_000_000, 11_000_000] as const;
    expectEnclosed(
      mixture,
      'enrichment',
      { altitude: heights, here: heights },
      // By pressure over temperature, not by the exponent of the density.
      ({ altitude = 0, here = 0 }) => {
        const density = (at: number) => coolness(at) ** 5.255876 / coolness(at);
        return 100 * (Math.sqrt(density(altitude) / density(here)) - 1);
      },
    );
  });

  test('an altitude outside of the layer is refused', () => {
    expect(refusal(mixture, 'enrichment', { altitude: 0, here: 11_000_001 })).toContain(
      '{here} is outside',
    );
  });
});
