import { defineRelation } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';

/** What the needle, or the tang on it, moves when the float moves, and the other way about. */
export default defineRelation({
  id: 'float-lever',
  title: 'Float and needle on one lever',
  formula: 'at the needle = at the float × a ÷ A',
  quantities: {
    float: { label: 'movement at the float', symbol: 'at the float', dimension: 'length' },
    needle: { label: 'movement at the needle', symbol: 'at the needle', dimension: 'length' },
    arm: { label: 'arm from hinge to float', symbol: 'A', dimension: 'length' },
    'short-arm': { label: 'arm from hinge to needle', symbol: 'a', dimension: 'length' },
  },
  source: 'geometry: both turn about one hinge by one angle, and their arcs are as their arms',
  assumptions: [
    'Both arms are measured from the middle of the hinge pin, the long one to the point of the float where its level or drop is measured.',
    'The movements are small beside the arms, so that arc and straight line pass for one another: 0.4 % apart at 18°.',
    'Nothing in the arm bends but what is bent on purpose.',
  ],
  range: 'A > 0, a > 0',
  solutions: [
    {
      for: 'needle',
      from: ['float', 'arm', 'short-arm'],
      above: ['arm'],
      told: '{float} at {arm} is {worked} at {short-arm}',
      solve: (of) => divide(multiply(of.float, of['short-arm']), of.arm),
    },
    {
      for: 'float',
      from: ['needle', 'arm', 'short-arm'],
      above: ['short-arm'],
      told: '{needle} at {short-arm} is {worked} at {arm}',
      solve: (of) => divide(multiply(of.needle, of.arm), of['short-arm']),
    },
    {
      for: 'short-arm',
      from: ['needle', 'float', 'arm'],
      above: ['float'],
      offer: false,
      solve: ({ needle, float, arm }) => divide(multiply(needle, arm), float),
    },
    {
      for: 'arm',
      from: ['needle', 'float', 'short-arm'],
      above: ['needle'],
      offer: false,
      solve: (of) => divide(multiply(of.float, of['short-arm']), of.needle),
    },
  ],
});
