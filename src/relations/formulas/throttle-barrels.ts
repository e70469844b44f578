import { defineRelation } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';

/** The open area of all barrels that one throttle shaft opens alike. */
export default defineRelation({
  id: 'throttle-barrels',
  title: 'Open area of the barrels together',
  formula: 'A together = n × A',
  source: 'definition',
  assumptions: ['The barrels have one bore, and their plates stand at one angle.'],
  range: 'n ≥ 1',
  quantities: {
    'area-together': {
      label: 'area of the barrels together',
      symbol: 'A together',
      dimension: 'area',
    },
    area: { label: 'open area of one barrel', symbol: 'A', dimension: 'area' },
    barrels: { label: 'number of barrels', symbol: 'n', dimension: 'ratio' },
  },
  solutions: [
    {
      for: 'area-together',
      from: ['area', 'barrels'],
      above: ['barrels'],
      solve: ({ area, barrels }) => multiply(area, barrels),
    },
    {
      for: 'area',
      from: ['area-together', 'barrels'],
      above: ['barrels'],
      solve: ({ 'area-together': together, barrels }) => divide(together, barrels),
    },
  ],
});
