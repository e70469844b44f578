import { defineRelation } from '../define-relation.ts';

/** The order of a metering rod's steps. */
export default defineRelation({
  id: 'rod-steps',
  title: 'Order of the rod’s steps',
  formula: 'power step ≤ economy step',
  source: 'what the steps are for: the thinner leaves more of the jet open',
  assumptions: ['The rod rises out of the jet as the load grows, thick step first.'],
  range: 'any two steps of one rod',
  quantities: {
    economy: { label: 'economy step', symbol: 'economy step', dimension: 'length' },
    power: { label: 'power step', symbol: 'power step', dimension: 'length' },
  },
  solutions: [
    {
      for: 'power',
      from: ['economy'],
      hold: 'at-most',
      offer: false,
      solve: ({ economy }) => economy,
    },
  ],
});
