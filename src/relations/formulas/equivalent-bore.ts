import { defineRelation } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';
import { QUARTER_PI, square, squareRoot } from '../squares.ts';

/** The plain round hole that has the same area. */
export default defineRelation({
  id: 'equivalent-bore',
  title: 'Equivalent bore',
  formula: 'equivalent bore = √(4A ÷ π)',
  source: 'geometry: the area of a circle',
  assumptions: [
    'Equal areas, and no more: a ring-shaped passage meters somewhat less than a round one of its area.',
  ],
  range: 'A ≥ 0',
  quantities: {
    'equivalent-bore': { label: 'equivalent bore', symbol: 'equivalent bore', dimension: 'length' },
    area: { label: 'open area', symbol: 'A', dimension: 'area' },
  },
  solutions: [
    {
      for: 'equivalent-bore',
      from: ['area'],
      solve: ({ area }) => squareRoot(divide(area, QUARTER_PI)),
    },
    {
      for: 'area',
      from: ['equivalent-bore'],
      solve: ({ 'equivalent-bore': bore }) => multiply(QUARTER_PI, square(bore)),
    },
  ],
});
