import { defineRelation } from '../define-relation.ts';
import { divide, interval, multiply } from '../interval.ts';

/** A share of the way from one lobe to the next, as a bound for what points are shut for. */
export default defineRelation({
  id: 'share-of-spacing',
  title: 'Share of the way between two lobes',
  formula: 'angle = share × 360° / n',
  quantities: {
    share: { label: 'share', symbol: 'share', dimension: 'percent' },
    lobes: { label: 'number of lobes', symbol: 'n', dimension: 'ratio' },
    angle: { label: 'angle', symbol: 'angle', dimension: 'angle' },
  },
  source: 'the lobes divide one turn of the cam evenly',
  assumptions: ['The lobes are evenly spaced.'],
  range: 'n ≥ 1; a bound that an order is held to, and nothing that is shown',
  solutions: [
    {
      for: 'angle',
      from: ['share', 'lobes'],
      above: ['lobes'],
      offer: false,
      solve: ({ share, lobes }) =>
        divide(multiply(share, interval(360)), multiply(lobes, interval(100))),
    },
  ],
});
