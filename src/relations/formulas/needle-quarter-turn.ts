import { areaAdded } from '../conical-needle.ts';
import { defineRelation } from '../define-relation.ts';
import { needleRefused } from '../needle-refusals.ts';

/** What the next quarter turn out of an idle needle adds to its area. */
export default defineRelation({
  id: 'needle-quarter-turn',
  title: 'A quarter turn of the idle needle',
  formula: 'ΔA = A(h + p/4) − A(h)',
  source: 'follows from the area beside a conical needle',
  assumptions: [
    'What is said of the area beside a conical needle holds.',
    'The quarter turn is one further out from the lift that is stated.',
  ],
  range: 'as for the needle’s area; nothing is added once the orifice is wholly open',
  quantities: {
    worth: { label: 'area of a quarter turn', symbol: 'ΔA', dimension: 'area' },
    lift: { label: 'lift of the needle', symbol: 'h', dimension: 'length' },
    pitch: { label: 'thread', symbol: 'p', dimension: 'length' },
    orifice: { label: 'idle orifice', symbol: 'd₀', dimension: 'length' },
    'needle-angle': { label: 'angle of the needle', symbol: 'θ', dimension: 'angle' },
  },
  solutions: [
    {
      for: 'worth',
      from: ['lift', 'pitch', 'orifice', 'needle-angle'],
      above: ['pitch', 'orifice', 'needle-angle'],
      solve: ({ lift, pitch, orifice, 'needle-angle': needle }) =>
        needleRefused(lift, orifice, needle) ??
        areaAdded(lift, { lo: pitch.lo / 4, hi: pitch.hi / 4 }, orifice, needle),
    },
  ],
});
