import { defineRelation } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';
import { point } from '../squares.ts';

const HUNDRED = point(100);

/** What one jet passes of what another does, both measured on one rig. */
export default defineRelation({
  id: 'jet-ratio',
  title: 'Two jets measured on one rig',
  formula: 'share = 100 % × flow ÷ other flow',
  quantities: {
    share: { label: 'share of the other jet’s flow', symbol: 'share', dimension: 'percent' },
    flow: { label: 'measured flow', symbol: 'flow', dimension: 'flow' },
    other: { label: 'measured flow of the other jet', symbol: 'other flow', dimension: 'flow' },
  },
  source: 'definition of a ratio',
  assumptions: [
    'Both flows were measured on one rig, with one fluid, head and temperature: flow numbers of two makers are no ratio.',
    'In the engine jets keep to their ratio only while both see the same head.',
  ],
  range: 'other flow > 0',
  solutions: [
    {
      for: 'share',
      from: ['flow', 'other'],
      above: ['other'],
      told: '{flow} beside {other} is {worked}',
      solve: ({ flow, other }) => multiply(divide(flow, other), HUNDRED),
    },
    {
      for: 'flow',
      from: ['share', 'other'],
      told: '{share} of {other} is {worked}',
      solve: ({ share, other }) => divide(multiply(share, other), HUNDRED),
    },
    {
      for: 'other',
      from: ['flow', 'share'],
      above: ['share'],
      told: '{flow} is {share} of {worked}',
      solve: ({ flow, share }) => divide(multiply(flow, HUNDRED), share),
    },
  ],
});
