import { defineRelation, refuse } from '../define-relation.ts';
import { add, fromNothing, subtract } from '../interval.ts';

/** How far a float travels between its level and its drop. */
export default defineRelation({
  id: 'float-drop-travel',
  title: 'Float travel between level and drop',
  formula: 'travel = drop − level',
  quantities: {
    level: { label: 'float level', symbol: 'level', dimension: 'length' },
    drop: { label: 'float drop', symbol: 'drop', dimension: 'length' },
    travel: { label: 'travel', symbol: 'travel', dimension: 'length' },
  },
  source: 'both are lengths from one face to one point of the float: by definition',
  assumptions: [
    'Level and drop are measured from the same face to the same point of the float.',
    'The gasket lies on the cover for both, or for neither.',
  ],
  range: 'drop > level',
  solutions: [
    {
      for: 'travel',
      from: ['level', 'drop'],
      told: 'from {level} to {drop} is {worked} of travel',
      solve({ level, drop }) {
        if (drop.hi <= level.lo) {
          return refuse(
            'a drop of {drop} is no more than the level, {level}: the float has no way to fall',
            'correct the drop or the level, or say where each of them is measured',
            'drop',
            'level',
          );
        }
        const travel = subtract(drop, level);
        return fromNothing(travel);
      },
    },
    {
      for: 'drop',
      from: ['level', 'travel'],
      told: '{travel} below {level} is {worked}',
      solve: ({ level, travel }) => add(level, travel),
    },
    {
      for: 'level',
      from: ['drop', 'travel'],
      told: '{travel} above {drop} is {worked}',
      solve({ drop, travel }) {
        if (drop.hi < travel.lo) {
          return refuse(
            'a float that drops to {drop} cannot have fallen by {travel}',
            'correct the drop or the travel, or say where each of them is measured',
            'drop',
            'travel',
          );
        }
        const level = subtract(drop, travel);
        return fromNothing(level);
      },
    },
  ],
});
