import { defineRelation } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';

/** What a screw moves along its axis. */
export default defineRelation({
  id: 'screw-travel',
  title: 'Travel of a screw',
  formula: 'travel = turns × pitch',
  quantities: {
    turns: { label: 'turns', symbol: 'turns', dimension: 'turns' },
    pitch: { label: 'thread', symbol: 'pitch', dimension: 'length' },
    travel: { label: 'travel', symbol: 'travel', dimension: 'length' },
  },
  source: 'definition of the pitch of a single-start thread; six flats of a hexagon make a turn',
  assumptions: ['The thread has one start.', 'The screw is not bent, and has no end play.'],
  range: 'any',
  solutions: [
    {
      for: 'travel',
      from: ['turns', 'pitch'],
      told: '{turns} of {pitch} is {worked}',
      solve: ({ turns, pitch }) => multiply(turns, pitch),
    },
    {
      for: 'turns',
      from: ['travel', 'pitch'],
      above: ['pitch'],
      told: '{travel} on a thread of {pitch} is {worked}',
      solve: ({ travel, pitch }) => divide(travel, pitch),
    },
  ],
});
