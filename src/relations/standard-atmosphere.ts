import { monotone } from './interval.ts';
import type { Interval } from './model.ts';

/*
 * The lowest layer of the standard atmosphere: ISO 2533:1975 and the US Standard Atmosphere 1976,
 * which agree there. The air cools by 6.5 K a kilometer of geopotential height from 15 °C at the
 * level of the sea, where the barometer stands at 1013.25 mbar.
 */

const SEA_LEVEL_PA = 101_325;
const SEA_LEVEL_K = 288.15;
const LAPSE_K_PER_M = 0.0065;
/** Standard gravity times molar mass over gas constant and lapse: 9.80665 × 28.9644 / (8314.32 × 0.0065). */
const EXPONENT = 5.255876;

/** The height of the sea's level, and what a height is where nothing is said. */
export const SEA_LEVEL: Interval = { lo: 0, hi: 0 };

/** The lowest height the tables of 1976 begin at, in mm. */
export const LOWEST_MM = -5_000_000;

/** Where the layer ends, in mm: above it the air no longer cools. */
export const HIGHEST_MM = 11_000_000;

/** Temperature at a height over that at sea level; 1 at sea level. */
function coolness(heightMm: number): number {
  return 1 - (LAPSE_K_PER_M * heightMm) / 1000 / SEA_LEVEL_K;
}

/** Barometer in Pa at a geopotential height in mm; the height lies within the layer. */
export function pressureAt(heightMm: number): number {
  return SEA_LEVEL_PA * coolness(heightMm) ** EXPONENT;
}

/** Density of the air over that at sea level, at a geopotential height in mm within the layer. */
export function relativeDensityAt(heightMm: number): number {
  return coolness(heightMm) ** (EXPONENT - 1);
}

/** Geopotential height in mm at which the standard barometer stands at so many Pa, above zero. */
export function heightOf(pressurePa: number): number {
  return ((1 - (pressurePa / SEA_LEVEL_PA) ** (1 / EXPONENT)) * SEA_LEVEL_K * 1000) / LAPSE_K_PER_M;
}

/** Barometer in Pa over a stretch of heights in mm, rounded outward. */
export function pressureOver(heightMm: Interval): Interval {
  return monotone([heightMm], [-1], pressureAt);
}
