import { expect, test } from 'vitest';
import {
  heightOf,
  pressureAt,
  relativeDensityAt,
} from '../../src/relations/standard-atmosphere.ts';

test('the exponent is gravity and molar mass over gas constant and lapse', () => {
  // Constants of the US Standard Atmosphere 1976, from memory; references.md rounds to 5.255876.
  const exponent = (9.80665 * 28.9644) / (8314.32 * 0.0065);
  expect(exponent).toBeCloseTo(5.255876, 6);
  const share = 1 - (0.0065 * 1000) / 288.15;
  expect(pressureAt(1_000_000) / 101_325).toBeCloseTo(share ** exponent, 7);
  expect(relativeDensityAt(1_000_000)).toBeCloseTo(share ** exponent / share, 7);
});

test('a height there and back', () => {
  for (const height of [-5_000_000, 0, 411_480, 11_000_000]) {
    expect(heightOf(pressureAt(height))).toBeCloseTo(height, 4);
  }
});
