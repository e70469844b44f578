import { defineRelation } from '../define-relation.ts';

/** That a wider gap of the points never goes with more dwell: a direction, and no number. */
export default defineRelation({
  id: 'gap-and-dwell',
  title: 'Points gap and dwell',
  formula: 'dwell at the widest gap ≤ dwell ≤ dwell at the narrowest gap',
  quantities: {
    dwell: { label: 'dwell', symbol: 'dwell', dimension: 'angle' },
    'at-widest': {
      label: 'dwell at the widest gap',
      symbol: 'dwell at the widest gap',
      dimension: 'angle',
    },
    'at-narrowest': {
      label: 'dwell at the narrowest gap',
      symbol: 'dwell at the narrowest gap',
      dimension: 'angle',
    },
  },
  source:
    'common practice: points set wide open earlier on the lobe and shut later; no closed formula is published, and none is used',
  assumptions: ['One cam, one contact set and one rubbing block at all gaps.'],
  range: 'a direction only: it says which dwell is the larger, and never by how much',
  solutions: [
    {
      for: 'at-widest',
      from: ['at-narrowest'],
      hold: 'at-most',
      offer: false,
      told: 'with {at-narrowest} at the narrowest gap, a wider one gives {worked}',
      solve: ({ 'at-narrowest': most }) => most,
    },
    {
      for: 'dwell',
      from: ['at-narrowest'],
      hold: 'at-most',
      offer: false,
      told: 'with {at-narrowest} at the narrowest gap, a wider one gives {worked}',
      solve: ({ 'at-narrowest': most }) => most,
    },
    {
      for: 'dwell',
      from: ['at-widest'],
      hold: 'at-least',
      offer: false,
      told: 'with {at-widest} at the widest gap, a narrower one gives {worked}',
      solve: ({ 'at-widest': least }) => least,
    },
  ],
});
