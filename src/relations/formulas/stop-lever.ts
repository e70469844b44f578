import { defineRelation, refuse } from '../define-relation.ts';
import { divide, fromNothing, multiply } from '../interval.ts';
import type { Interval } from '../model.ts';
import { PI } from '../squares.ts';

const DEGREES: Interval = divide({ lo: 180, hi: 180 }, PI);
/** Degrees past which arc, chord and straight screw are too far apart to pass for one another. */
const MOST = 30;

/** How far a screw that bears on the throttle lever opens the throttle. */
export default defineRelation({
  id: 'stop-lever',
  title: 'Stop screw on its lever',
  formula: 'opening = travel ÷ arm × 180°/π',
  source: 'geometry: an angle in radians is the arc over its radius',
  assumptions: [
    'The screw bears on the lever at the stated arm from the throttle shaft, square to the arm.',
    'The travel is taken along the arc of the lever. Along the chord the same travel opens 0.1 % more at 10° and 1.2 % more at 30°; a screw on a straight line square to the arm opens 1 % less at 10°.',
    'Nothing in the linkage bends or has play.',
  ],
  range: 'arm > 0; opening up to 30°',
  quantities: {
    opening: { label: 'opening', symbol: 'opening', dimension: 'angle' },
    travel: { label: 'travel of the screw', symbol: 'travel', dimension: 'length' },
    arm: { label: 'arm of the lever', symbol: 'arm', dimension: 'length' },
  },
  solutions: [
    {
      for: 'opening',
      from: ['travel', 'arm'],
      above: ['arm'],
      solve: ({ travel, arm }) => {
        const opening = multiply(divide(travel, arm), DEGREES);
        if (opening.lo > MOST) {
          return refuse(
            `{travel} on an arm of {arm} turns the lever past ${MOST}°, where travel over arm no longer tells the angle`,
            'correct the travel or the arm; a stop screw moves its lever by a few degrees',
            'travel',
            'arm',
          );
        }
        return { lo: Math.max(0, opening.lo), hi: Math.min(MOST, opening.hi) };
      },
    },
    {
      for: 'travel',
      from: ['opening', 'arm'],
      above: ['arm'],
      solve: ({ opening, arm }) => {
        if (opening.lo > MOST) return tooFar();
        const turned = { lo: opening.lo, hi: Math.min(MOST, opening.hi) };
        const travel = divide(multiply(turned, arm), DEGREES);
        return fromNothing(travel);
      },
    },
    {
      for: 'arm',
      from: ['opening', 'travel'],
      above: ['opening', 'travel'],
      solve: ({ opening, travel }) =>
        opening.lo > MOST
          ? tooFar()
          : multiply(divide(travel, { lo: opening.lo, hi: Math.min(MOST, opening.hi) }), DEGREES),
    },
  ],
});

function tooFar() {
  return refuse(
    `{opening} is past ${MOST}°, where travel over arm no longer tells the angle`,
    'correct the opening; a stop screw moves its lever by a few degrees',
    'opening',
  );
}
