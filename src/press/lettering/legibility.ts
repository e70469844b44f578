/** Heights of capitals that can be read, by the angle that they take up at the eye. */

/** Heights in minutes of arc. */
export interface Angles {
  readonly least: number;
  readonly preferred: number;
}

/**
 * NUREG-0700: labels (words and figures read one by one) at least 15 minutes of arc and rather 20,
 * running text at least 16 and rather 20 to 22.
 */
export const labelAngles: Angles = { least: 15, preferred: 20 };
export const textAngles: Angles = { least: 16, preferred: 20 };

/** How far from the eye a card is read where the edition does not say, in millimeters. */
export const usualDistanceMm = 500;

/**
 * The height of capitals that take up so many minutes of arc, both lengths in millimeters:
 * 6.283 D MA / 21600 (NUREG-0700). At 500 mm, 20 minutes are 2.909 mm.
 */
export function capHeightMm(distanceMm: number, minutes: number): number {
  return (6.283 * distanceMm * minutes) / 21600;
}
