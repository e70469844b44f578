import { knownSize } from './known-size.ts';
import type { Known, Unworkable } from './model.ts';
import { HIGHEST_MM, LOWEST_MM } from './standard-atmosphere.ts';

/** The refusal of heights of which no part is in the lowest layer of the standard atmosphere; else null. */
export function outsideLayer(known: Known, names: readonly string[]): Unworkable | null {
  const bad = names.find((name) => {
    const height = knownSize(known, name);
    return height.hi < LOWEST_MM || height.lo > HIGHEST_MM;
  });
  if (bad === undefined) return null;
  return {
    unworkable: {
      message: `the formula for the barometer holds from 5000 m below the sea to 11000 m above it, and {${bad}} is outside`,
      fix: `correct {${bad}}`,
      of: [bad],
    },
  };
}
