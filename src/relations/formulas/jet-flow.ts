import { defineRelation } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';
import type { Interval } from '../model.ts';
import { point, QUARTER_PI, square, squareRoot } from '../squares.ts';

/** Twice the standard acceleration of free fall, in mm/s². */
const TWICE_G = point(2 * 9806.65);
/** Cubic millimeters of a milliliter. */
const CUBIC_MM = point(1000);

/** The most that a jet of a bore can pass under a head, whatever its shape. */
export default defineRelation({
  id: 'jet-flow',
  title: 'Measured flow of a jet',
  formula: 'flow ≤ π/4 × d² × √(2 g × head)',
  source: 'Torricelli’s law, with the standard acceleration of 9.80665 m/s²',
  assumptions: [
    'The head is that of the fluid itself, on the rig on which the flow was measured.',
    'A real jet passes less, by a share that its shape decides and no formula gives: the bore is bounded, not worked.',
  ],
  range: 'd > 0, head > 0; without the head a flow says nothing of the bore',
  quantities: {
    flow: { label: 'measured flow', symbol: 'flow', dimension: 'flow' },
    bore: { label: 'bore of the jet', symbol: 'd', dimension: 'length' },
    head: { label: 'head of the test rig', symbol: 'head', dimension: 'length' },
  },
  solutions: [
    {
      for: 'flow',
      from: ['bore', 'head'],
      above: ['bore', 'head'],
      hold: 'at-most',
      offer: false,
      solve: ({ bore, head }) =>
        divide(multiply(multiply(QUARTER_PI, square(bore)), speed(head)), CUBIC_MM),
    },
    {
      for: 'bore',
      from: ['flow', 'head'],
      above: ['flow', 'head'],
      hold: 'at-least',
      offer: false,
      solve: ({ flow, head }) =>
        squareRoot(divide(multiply(flow, CUBIC_MM), multiply(QUARTER_PI, speed(head)))),
    },
  ],
});

/** mm/s at which a fluid leaves under a head. */
function speed(head: Interval): Interval {
  return squareRoot(multiply(TWICE_G, head));
}
