import { defineRelation } from '../../src/relations/define-relation.ts';
import { divide, multiply } from '../../src/relations/interval.ts';

/** How thick a pile of equal washers is, as below the seat of a float needle. */
export default defineRelation({
  id: 'washer-pile',
  title: 'Pile of washers',
  formula: 'pile = count × thickness',
  quantities: {
    count: { label: 'number of washers', symbol: 'count', dimension: 'ratio' },
    thickness: { label: 'thickness of one', symbol: 'thickness', dimension: 'length' },
    pile: { label: 'pile', symbol: 'pile', dimension: 'length' },
  },
  source: 'definition of a sum of equal parts',
  assumptions: ['All washers are of one thickness.', 'Nothing lies between them.'],
  range: 'thickness > 0',
  solutions: [
    {
      for: 'pile',
      from: ['count', 'thickness'],
      told: '{count} of {thickness} are {worked}',
      solve: ({ count, thickness }) => multiply(count, thickness),
    },
    {
      for: 'count',
      from: ['pile', 'thickness'],
      above: ['thickness'],
      told: '{pile} of {thickness} each is {worked}',
      solve: ({ pile, thickness }) => divide(pile, thickness),
    },
  ],
});
