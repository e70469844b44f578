import { defineRelation, refuse } from '../define-relation.ts';
import { add, divide, fromNothing, multiply, subtract } from '../interval.ts';
import { QUARTER_PI, square, squareRoot, squaresApart } from '../squares.ts';

/** The area that a metering rod leaves open in its jet. */
export default defineRelation({
  id: 'rod-area',
  title: 'Metering rod in its jet',
  formula: 'A = π/4 × (Dj² − dr²)',
  source: 'geometry: the area between two circles',
  assumptions: [
    'Jet and rod are round where the rod stands in the jet; the rod hangs free, centered or not.',
    'Areas stand for fuel only while the head is the same and both meter alike.',
  ],
  range: '0 ≤ dr ≤ Dj',
  quantities: {
    area: { label: 'open area', symbol: 'A', dimension: 'area' },
    jet: { label: 'bore of the jet', symbol: 'Dj', dimension: 'length' },
    rod: { label: 'diameter of the rod', symbol: 'dr', dimension: 'length' },
  },
  solutions: [
    {
      for: 'area',
      from: ['jet', 'rod'],
      above: ['jet'],
      solve: ({ jet, rod }) => {
        if (rod.lo > jet.hi) {
          return refuse(
            'a rod of {rod} does not go into a jet of {jet}',
            'correct the rod or the jet; the rod is the thinner of the two',
            'rod',
            'jet',
          );
        }
        const area = multiply(QUARTER_PI, squaresApart(jet, rod));
        return fromNothing(area);
      },
    },
    {
      for: 'rod',
      from: ['jet', 'area'],
      above: ['jet'],
      solve: ({ jet, area }) => {
        const left = subtract(square(jet), divide(area, QUARTER_PI));
        if (left.hi < 0) {
          return refuse(
            '{area} is more than a jet of {jet} has without any rod',
            'correct the area or the jet',
            'area',
            'jet',
          );
        }
        return squareRoot(left);
      },
    },
    {
      for: 'jet',
      from: ['rod', 'area'],
      solve: ({ rod, area }) => squareRoot(add(square(rod), divide(area, QUARTER_PI))),
    },
  ],
});
