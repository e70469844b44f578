import { defineRelation, refuse } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';

/** Degrees of the distributor a second for each rpm of the crank: half of 360 over 60. */
const DEGREES_A_SECOND = { lo: 3, hi: 3 };

/** For how long the points are shut on each lobe, at an engine speed. */
export default defineRelation({
  id: 'closed-time',
  title: 'Time that the points are shut',
  formula: 't = dwell / (3 n), n the speed of the crank in rpm',
  quantities: {
    dwell: { label: 'dwell', symbol: 'dwell', dimension: 'angle' },
    speed: { label: 'engine speed', symbol: 'n', dimension: 'speed' },
    time: { label: 'time shut', symbol: 't', dimension: 'time' },
  },
  source:
    'derived: the distributor turns at half the speed of the crank, so through n / 2 × 360 / 60 = 3 n degrees a second',
  assumptions: [
    'Dwell is in degrees of the distributor, speed is that of the crank of a four-stroke engine.',
    'The points do not bounce.',
  ],
  range: 'dwell < 360°, n > 0',
  solutions: [
    {
      for: 'time',
      from: ['dwell', 'speed'],
      told: '{dwell} of the distributor at {speed} of the crank lasts {worked}',
      above: ['speed'],
      solve({ dwell, speed }) {
        if (dwell.lo < 360) {
          const shut = { lo: dwell.lo, hi: Math.min(dwell.hi, 360) };
          return divide(shut, multiply(DEGREES_A_SECOND, speed));
        }
        return refuse(
          '{dwell} is a whole turn of the distributor or more: the points would never open',
          'correct {dwell}',
          'dwell',
        );
      },
    },
    {
      for: 'dwell',
      from: ['time', 'speed'],
      above: ['time', 'speed'],
      told: '{time} at {speed} of the crank is {worked} of the distributor',
      offer: false,
      solve: ({ time, speed }) => multiply(multiply(DEGREES_A_SECOND, speed), time),
    },
    {
      for: 'speed',
      from: ['dwell', 'time'],
      told: '{dwell} of the distributor lasts {time} at {worked} of the crank',
      above: ['time'],
      offer: false,
      solve: ({ dwell, time }) => divide(dwell, multiply(DEGREES_A_SECOND, time)),
    },
  ],
});
