import { monotone } from '../interval.ts';
import { knownPart, knownSize } from '../known-size.ts';
import type { Relation } from '../model.ts';
import { outsideLayer } from '../outside-layer.ts';
import {
  HIGHEST_MM,
  heightOf,
  LOWEST_MM,
  pressureAt,
  pressureOver,
} from '../standard-atmosphere.ts';

/** How high a barometer stands on the standard day, by the height above the sea. */
const relation: Relation = {
  id: 'barometer-at-altitude',
  title: 'Barometer at an altitude',
  formula: 'B = 101.325 kPa × (1 − 0.0065 H / 288.15)^5.255876, H in meters',
  quantities: [
    { name: 'altitude', label: 'altitude', symbol: 'H', dimension: 'length', unsaid: null },
    {
      name: 'barometer',
      label: 'barometer',
      symbol: 'B',
      dimension: 'pressure',
      absolute: true,
      unsaid: null,
    },
  ],
  source: 'ISO 2533:1975 and US Standard Atmosphere 1976, lowest layer',
  assumptions: [
    'The day is the standard one, 15 °C and 1013.25 mbar at the sea; weather moves the barometer by about a thirtieth either way.',
    'Altitude counts as geopotential height, which is less than one part in 500 lower up to 11000 m.',
  ],
  range: '−5000 m ≤ H ≤ 11000 m',
  solutions: [
    {
      for: 'barometer',
      from: ['altitude'],
      hold: 'equals',
      // The reader's own barometer tells the day's; this one only carries readings from place to place.
      offer: false,
      told: 'the standard barometer at {altitude} stands at {worked}',
      solve: (known) =>
        outsideLayer(known, ['altitude']) ??
        pressureOver(knownPart(known, 'altitude', LOWEST_MM, HIGHEST_MM)),
    },
    {
      for: 'altitude',
      from: ['barometer'],
      hold: 'equals',
      offer: false,
      told: 'the standard barometer stands at {barometer} at {worked}',
      solve(known) {
        const barometer = knownSize(known, 'barometer');
        const [least, most] = [pressureAt(HIGHEST_MM), pressureAt(LOWEST_MM)];
        if (barometer.hi < least || barometer.lo > most) {
          return {
            unworkable: {
              message:
                'no height from 5000 m below the sea to 11000 m above it has a barometer of {barometer}',
              fix: 'correct {barometer}',
              of: ['barometer'],
            },
          };
        }
        return monotone([knownPart(known, 'barometer', least, most)], [-1], heightOf, HIGHEST_MM);
      },
    },
  ],
};

export default relation;
