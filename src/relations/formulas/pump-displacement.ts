import { defineRelation } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';
import { point, QUARTER_PI, square, squareRoot } from '../squares.ts';

/** Cubic millimeters of a milliliter. */
const CUBIC_MM = point(1000);

/** What a pump's plunger sweeps in one stroke, which bounds what it can deliver. */
export default defineRelation({
  id: 'pump-displacement',
  title: 'Displacement of the pump',
  formula: 'displacement = π/4 × d² × s; delivery ≤ displacement',
  source: 'geometry: the volume of a cylinder',
  assumptions: [
    'The stroke is the plunger’s own, from end to end, and the bore is that of its cylinder.',
    'Fuel does not stretch: what leaks past the plunger and the check valves only lessens the delivery.',
  ],
  range: 'd > 0, s > 0',
  quantities: {
    displacement: {
      label: 'displacement in a stroke',
      symbol: 'displacement',
      dimension: 'delivery',
    },
    delivery: { label: 'delivery in a stroke', symbol: 'delivery', dimension: 'delivery' },
    bore: { label: 'bore of the pump', symbol: 'd', dimension: 'length' },
    stroke: { label: 'stroke of the plunger', symbol: 's', dimension: 'length' },
  },
  solutions: [
    {
      for: 'displacement',
      from: ['bore', 'stroke'],
      above: ['bore', 'stroke'],
      solve: ({ bore, stroke }) =>
        divide(multiply(multiply(QUARTER_PI, square(bore)), stroke), CUBIC_MM),
    },
    {
      for: 'stroke',
      from: ['displacement', 'bore'],
      above: ['displacement', 'bore'],
      solve: ({ displacement, bore }) =>
        divide(multiply(displacement, CUBIC_MM), multiply(QUARTER_PI, square(bore))),
    },
    {
      for: 'bore',
      from: ['displacement', 'stroke'],
      above: ['displacement', 'stroke'],
      solve: ({ displacement, stroke }) =>
        squareRoot(divide(multiply(displacement, CUBIC_MM), multiply(QUARTER_PI, stroke))),
    },
    {
      for: 'delivery',
      from: ['displacement'],
      hold: 'at-most',
      told: 'the plunger displaces {worked}',
      offer: false,
      solve: ({ displacement }) => displacement,
    },
  ],
});
