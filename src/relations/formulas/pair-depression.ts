import { defineRelation } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';
import { outOfBalance, pairRefused, shareLeft } from '../pair-balance.ts';
import { square, squareRoot } from '../squares.ts';

/** How far the air of instruments that draw together is out of balance, by what a gauge in each throat reads. */
export default defineRelation({
  id: 'pair-depression',
  title: 'Balance by depression',
  formula: 'out = 100 % × (1 − √(weakest ÷ strongest))',
  quantities: {
    out: { label: 'out of balance', symbol: 'out', dimension: 'percent' },
    strongest: { label: 'depression in the strongest', symbol: 'strongest', dimension: 'vacuum' },
    weakest: { label: 'depression in the weakest', symbol: 'weakest', dimension: 'vacuum' },
  },
  source: 'Bernoulli: through one opening the flow of air is as the root of the depression',
  assumptions: [
    'The gauges read the throats, in front of the throttles, and all throats are of one bore.',
    'The air is not squeezed: the depression is small beside the barometer.',
    'Behind the throttles a manifold reads the other way about, and this says nothing.',
  ],
  range: 'weakest ≤ strongest, strongest > 0; out below 100 %',
  solutions: [
    {
      for: 'out',
      from: ['strongest', 'weakest'],
      above: ['strongest'],
      told: '{weakest} beside {strongest} is {worked} less air',
      solve: ({ strongest, weakest }) =>
        pairRefused(strongest, weakest) ?? outOfBalance(squareRoot(divide(weakest, strongest))),
    },
    {
      for: 'weakest',
      from: ['strongest', 'out'],
      told: '{out} less air than at {strongest} is {worked}',
      solve: ({ strongest, out }) => multiply(strongest, square(shareLeft(out))),
    },
    {
      for: 'strongest',
      from: ['weakest', 'out'],
      told: '{weakest} is {out} less air than at {worked}',
      solve: ({ weakest, out }) => divide(weakest, square(shareLeft(out))),
    },
  ],
});
