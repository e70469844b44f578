import { defineRelation } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';

/** Volume that a pump gives in strokes that are counted. */
export default defineRelation({
  id: 'pump-strokes',
  title: 'Pump strokes counted',
  formula: 'volume = strokes × delivery in a stroke',
  source: 'definition',
  assumptions: ['Every stroke is a full one, and the pump is primed before the first is counted.'],
  range: 'strokes ≥ 1',
  quantities: {
    volume: { label: 'volume of all strokes', symbol: 'volume', dimension: 'volume' },
    strokes: { label: 'number of strokes', symbol: 'strokes', dimension: 'ratio' },
    delivery: { label: 'delivery in a stroke', symbol: 'delivery', dimension: 'delivery' },
  },
  solutions: [
    {
      for: 'volume',
      from: ['strokes', 'delivery'],
      above: ['strokes'],
      solve: ({ strokes, delivery }) => multiply(strokes, delivery),
    },
    {
      for: 'delivery',
      from: ['volume', 'strokes'],
      above: ['strokes'],
      solve: ({ volume, strokes }) => divide(volume, strokes),
    },
    {
      for: 'strokes',
      from: ['volume', 'delivery'],
      above: ['delivery'],
      solve: ({ volume, delivery }) => divide(volume, delivery),
    },
  ],
});
