import { defineRelation } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';

/** A volume caught in a time, and the flow that it tells. */
export default defineRelation({
  id: 'timed-flow',
  title: 'Timed flow',
  formula: 'flow = volume ÷ time',
  quantities: {
    volume: { label: 'volume', symbol: 'volume', dimension: 'volume' },
    time: { label: 'time', symbol: 'time', dimension: 'time' },
    flow: { label: 'flow', symbol: 'flow', dimension: 'flow' },
  },
  source: 'by definition; an hour is 3600 s',
  assumptions: ['The flow is steady from the first drop to the last.'],
  range: 'time > 0, flow > 0',
  solutions: [
    {
      for: 'flow',
      from: ['volume', 'time'],
      above: ['time'],
      told: '{volume} in {time} is {worked}',
      solve: ({ volume, time }) => divide(volume, time),
    },
    {
      for: 'time',
      from: ['volume', 'flow'],
      above: ['flow'],
      told: '{volume} at {flow} takes {worked}',
      solve: ({ volume, flow }) => divide(volume, flow),
    },
    {
      for: 'volume',
      from: ['flow', 'time'],
      told: '{flow} through {time} gives {worked}',
      solve: ({ flow, time }) => multiply(flow, time),
    },
  ],
});
