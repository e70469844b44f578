import { defineRelation, refuse } from '../define-relation.ts';
import { add, fromNothing, subtract } from '../interval.ts';

/** The play of a shaft in its bore. */
export default defineRelation({
  id: 'wear-clearance',
  title: 'Shaft in its bore',
  formula: 'clearance = bore − shaft',
  quantities: {
    bore: { label: 'bore', symbol: 'bore', dimension: 'length' },
    shaft: { label: 'shaft', symbol: 'shaft', dimension: 'length' },
    clearance: { label: 'clearance', symbol: 'clearance', dimension: 'length' },
  },
  source: 'by definition',
  assumptions: [
    'Both are diameters, measured where the wear is greatest.',
    'A bushing that closes when it is pressed in is measured in its place.',
  ],
  range: 'shaft ≤ bore',
  solutions: [
    {
      for: 'clearance',
      from: ['bore', 'shaft'],
      above: ['bore', 'shaft'],
      told: '{shaft} in {bore} leaves {worked}',
      solve({ bore, shaft }) {
        if (shaft.lo > bore.hi) {
          return refuse(
            'a shaft of {shaft} does not go into a bore of {bore}',
            'exchange the two, or correct the one that is wrong',
            'shaft',
            'bore',
          );
        }
        return fromNothing(subtract(bore, shaft));
      },
    },
    {
      for: 'bore',
      from: ['shaft', 'clearance'],
      offer: false,
      told: '{shaft} with {clearance} around it is {worked}',
      solve: ({ shaft, clearance }) => add(shaft, clearance),
    },
    {
      for: 'shaft',
      from: ['bore', 'clearance'],
      above: ['bore'],
      offer: false,
      told: '{bore} less {clearance} is {worked}',
      solve({ bore, clearance }) {
        if (clearance.lo > bore.hi) {
          return refuse(
            'a clearance of {clearance} is more than the bore of {bore}',
            'correct the clearance or the bore: a point may have slipped',
            'clearance',
            'bore',
          );
        }
        return fromNothing(subtract(bore, clearance));
      },
    },
  ],
});
