import { defineRelation } from '../define-relation.ts';
import { divide, interval } from '../interval.ts';

/** How far the lobes of a cam stand apart. */
export default defineRelation({
  id: 'even-lobes',
  title: 'Spacing of the lobes',
  formula: 's = 360° / n',
  quantities: {
    lobes: { label: 'number of lobes', symbol: 'n', dimension: 'ratio' },
    spacing: { label: 'spacing', symbol: 's', dimension: 'angle' },
  },
  source: 'the lobes divide one turn of the cam evenly',
  assumptions: ['The lobes are evenly spaced, which the cam of a V engine may not be.'],
  range: 'n ≥ 1',
  solutions: [
    {
      for: 'spacing',
      from: ['lobes'],
      above: ['lobes'],
      told: '{lobes} lobes stand {worked} apart',
      solve: ({ lobes }) => divide(interval(360), lobes),
    },
  ],
});
