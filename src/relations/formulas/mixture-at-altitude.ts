import { monotone } from '../interval.ts';
import { knownPart } from '../known-size.ts';
import type { Interval, Known, Relation, Worked } from '../model.ts';
import { outsideLayer } from '../outside-layer.ts';
import { HIGHEST_MM, LOWEST_MM, relativeDensityAt, SEA_LEVEL } from '../standard-atmosphere.ts';

/** How much richer fixed jets run where the air is thinner, as the idealized figure it is. */
const relation: Relation = {
  id: 'mixture-at-altitude',
  title: 'Mixture of fixed jets at another altitude',
  formula: 'e = 100 % × ((ρ(H₁) / ρ(H₂))^½ − 1), ρ ∝ (1 − 0.0065 H / 288.15)^4.255876, H in meters',
  quantities: [
    {
      name: 'altitude',
      label: 'altitude the jets suit',
      symbol: 'H₁',
      dimension: 'length',
      unsaid: { value: SEA_LEVEL, words: 'jets that suit sea level' },
    },
    { name: 'here', label: 'altitude', symbol: 'H₂', dimension: 'length', unsaid: null },
    {
      name: 'enrichment',
      label: 'enrichment',
      symbol: 'e',
      dimension: 'percent',
      // The idealization is good for no more.
      places: 1,
      unsaid: null,
    },
  ],
  source:
    'derived: one depression draws both streams, each weight grows with the root of its density, so fuel to air goes as (ρ fuel / ρ air)^½; density of air after ISO 2533:1975',
  assumptions: [
    'Air and fuel are metered as if incompressible, by the same depression, with discharge coefficients that stay.',
    'The jets are fixed and nothing compensates for the barometer.',
    'The day is the standard one: heat and damp thin the air further.',
    'It is the idealized figure: bleeds, a choked passage and the lift to the nozzle are left out.',
  ],
  range: '−5000 m ≤ H ≤ 11000 m',
  solutions: [
    {
      for: 'enrichment',
      from: ['altitude', 'here'],
      hold: 'equals',
      offer: true,
      told: 'fixed jets at {here} are richer by {worked}, idealized',
      solve: (known) => enrichment(known),
    },
  ],
};

export default relation;

function enrichment(known: Known): Worked {
  return (
    outsideLayer(known, ['altitude', 'here']) ??
    richer(
      knownPart(known, 'altitude', LOWEST_MM, HIGHEST_MM),
      knownPart(known, 'here', LOWEST_MM, HIGHEST_MM),
    )
  );
}

function richer(suits: Interval, here: Interval): Interval {
  return monotone(
    [suits, here],
    [-1, 1],
    (from, to) => 100 * (Math.sqrt(relativeDensityAt(from) / relativeDensityAt(to)) - 1),
    200,
  );
}
