import { monotone } from '../interval.ts';
import { knownPart, knownSize } from '../known-size.ts';
import type { Interval, Known, Relation, Worked } from '../model.ts';
import { outsideLayer } from '../outside-layer.ts';
import {
  HIGHEST_MM,
  LOWEST_MM,
  pressureAt,
  pressureOver,
  SEA_LEVEL,
} from '../standard-atmosphere.ts';

/** The largest number met on the way, in Pa, for the slack of the subtraction. */
const SCALE_PA = 200_000;

/** A vacuum gauge on the same engine, carried from one altitude to another. */
const relation: Relation = {
  id: 'idle-vacuum-at-altitude',
  title: 'Manifold vacuum at another altitude',
  formula: 'V₂ = V₁ − (B(H₁) − B(H₂)), B the standard barometer',
  quantities: [
    {
      name: 'reading',
      label: 'reading',
      symbol: 'V₁',
      dimension: 'vacuum',
      places: 1,
      unsaid: null,
    },
    {
      name: 'altitude',
      label: 'altitude of the reading',
      symbol: 'H₁',
      dimension: 'length',
      unsaid: { value: SEA_LEVEL, words: 'reading taken at sea level' },
    },
    { name: 'here', label: 'altitude', symbol: 'H₂', dimension: 'length', unsaid: null },
    {
      name: 'expected',
      label: 'reading expected',
      symbol: 'V₂',
      dimension: 'vacuum',
      // Nobody reads a vacuum gauge finer than a tenth of an inch.
      places: 1,
      unsaid: null,
    },
  ],
  source:
    'a vacuum gauge shows ambient less absolute pressure; the barometer after ISO 2533:1975 and US Standard Atmosphere 1976',
  assumptions: [
    "The manifold's absolute pressure is the same at both altitudes.",
    'The day is the standard one at both; weather moves the reading as it moves the barometer.',
  ],
  range: '−5000 m ≤ H ≤ 11000 m, V below the barometer at its own altitude, and V₂ above zero',
  solutions: [
    {
      for: 'expected',
      from: ['reading', 'altitude', 'here'],
      hold: 'equals',
      offer: true,
      told: '{reading} with the same air in the manifold is {worked} at {here}',
      solve: (known) => carried(known, 'reading', 'altitude', 'here'),
    },
    {
      for: 'reading',
      from: ['expected', 'altitude', 'here'],
      hold: 'equals',
      offer: false,
      told: '{expected} at {here}, with the same air in the manifold, comes from {worked}',
      solve: (known) => carried(known, 'expected', 'here', 'altitude'),
    },
  ],
};

export default relation;

/** A reading at one altitude as the same manifold gives it at another. */
function carried(known: Known, reading: string, at: string, to: string): Worked {
  const outside = outsideLayer(known, [at, to]);
  if (outside) return outside;
  const from = knownPart(known, at, LOWEST_MM, HIGHEST_MM);
  const other = knownPart(known, to, LOWEST_MM, HIGHEST_MM);
  const whole = pressureOver(from).hi;
  const stated = knownSize(known, reading);
  if (stated.hi < 0) {
    return refusal(`{${reading}} is below zero: the manifold would stand above ambient`, reading);
  }
  if (stated.lo > whole) {
    return refusal(
      `{${reading}} is more than the whole barometer, and no vacuum goes below nothing`,
      reading,
    );
  }
  const worked = carriedReading(knownPart(known, reading, 0, whole), from, other);
  if (worked.hi <= 0) {
    return refusal(
      `the barometer falls by more than {${reading}} between the two altitudes, so no vacuum is left`,
      reading,
      to,
    );
  }
  return worked;
}

/**
 * A vacuum reading in Pa from one height to another, in mm, both within the layer: as the barometer
 * falls so does the reading. Below zero where the manifold would stand above ambient.
 */
export function carriedReading(reading: Interval, from: Interval, to: Interval): Interval {
  return monotone(
    [reading, from, to],
    [1, 1, -1],
    (shown, low, high) => shown - (pressureAt(low) - pressureAt(high)),
    SCALE_PA,
  );
}

function refusal(message: string, first: string, ...others: readonly string[]): Worked {
  return { unworkable: { message, fix: `correct {${first}}`, of: [first, ...others] } };
}
