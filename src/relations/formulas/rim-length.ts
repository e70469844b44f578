import { defineRelation } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';
import { PI, point } from '../squares.ts';

const FULL_TURN = point(360);

/** How far a mark on a rim moves while the shaft turns by an angle. */
export default defineRelation({
  id: 'rim-length',
  title: 'Degrees on a rim',
  formula: 'length = π D × angle ÷ 360°',
  quantities: {
    angle: { label: 'angle', symbol: 'angle', dimension: 'angle' },
    diameter: { label: 'diameter of the rim', symbol: 'D', dimension: 'length' },
    length: { label: 'length along the rim', symbol: 'length', dimension: 'length' },
  },
  source: 'geometry: the arc is that part of the circumference that the angle is of a full turn',
  assumptions: [
    'The length is laid along the curve, as a strip of paper is, and not straight across.',
    'The diameter is that of the rim the mark stands on, and the rim turns with the shaft that the angle is told of.',
  ],
  range: 'D > 0',
  solutions: [
    {
      for: 'length',
      from: ['angle', 'diameter'],
      above: ['diameter'],
      told: '{angle} on a rim of {diameter} is {worked}',
      solve: ({ angle, diameter }) => divide(multiply(multiply(PI, diameter), angle), FULL_TURN),
    },
    {
      for: 'angle',
      from: ['length', 'diameter'],
      above: ['diameter'],
      told: '{length} on a rim of {diameter} is {worked}',
      solve: ({ length, diameter }) => divide(multiply(length, FULL_TURN), multiply(PI, diameter)),
    },
    {
      for: 'diameter',
      from: ['length', 'angle'],
      above: ['length', 'angle'],
      offer: false,
      told: '{length} to {angle} is a rim of {worked}',
      solve: ({ length, angle }) => divide(multiply(length, FULL_TURN), multiply(PI, angle)),
    },
  ],
});
