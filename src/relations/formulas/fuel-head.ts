import { defineRelation } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';
import { GRAVITY } from '../standard-gravity.ts';

/** Millimeters in a meter. */
const THOUSAND = { lo: 1000, hi: 1000 };

/** What a column of fuel weighs on what lies under it, or costs to be lifted. */
export default defineRelation({
  id: 'fuel-head',
  title: 'Head of fuel',
  formula: 'p = ρ g h',
  quantities: {
    height: { label: 'height of the fuel', symbol: 'h', dimension: 'length' },
    density: { label: 'density of the fuel', symbol: 'ρ', dimension: 'density' },
    head: { label: 'head', symbol: 'p', dimension: 'pressure' },
  },
  source: 'hydrostatics; g = 9.80665 m/s² by definition of standard gravity',
  assumptions: [
    'The fuel is at rest and holds no vapor.',
    'The density is that of the fuel at its own temperature: gasoline swells by about a thousandth a degree Celsius.',
  ],
  range: 'ρ > 0, h > 0',
  solutions: [
    {
      for: 'head',
      from: ['height', 'density'],
      told: '{height} of fuel of {density} is a head of {worked}',
      above: ['density'],
      solve: ({ height, density }) =>
        divide(multiply(multiply(density, GRAVITY), height), THOUSAND),
    },
    {
      for: 'height',
      from: ['head', 'density'],
      told: 'a head of {head} is {worked} of fuel of {density}',
      above: ['density'],
      solve: ({ head, density }) => divide(multiply(head, THOUSAND), multiply(density, GRAVITY)),
    },
    {
      for: 'density',
      from: ['head', 'height'],
      told: 'a head of {head} from {height} of fuel asks for {worked}',
      above: ['height'],
      offer: false,
      solve: ({ head, height }) => divide(multiply(head, THOUSAND), multiply(height, GRAVITY)),
    },
  ],
});
