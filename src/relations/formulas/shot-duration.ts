import { defineRelation } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';
import type { Interval } from '../model.ts';
import { point, QUARTER_PI, square, squareRoot } from '../squares.ts';

/** Cubic millimeters of a milliliter, and millimeters of a meter. */
const THOUSAND = point(1000);
const TWO = point(2);

/** The least time in which a pump can press its shot through its nozzle. */
export default defineRelation({
  id: 'shot-duration',
  title: 'Duration of a pump shot',
  formula: 'time ≥ volume ÷ (π/4 × d² × √(2 p ÷ ρ))',
  quantities: {
    time: { label: 'duration of the shot', symbol: 'time', dimension: 'time' },
    volume: { label: 'volume of one stroke', symbol: 'volume', dimension: 'volume' },
    bore: { label: 'bore of the nozzle', symbol: 'd', dimension: 'length' },
    pressure: { label: 'pressure below the plunger', symbol: 'p', dimension: 'pressure' },
    density: { label: 'density of the fuel', symbol: 'ρ', dimension: 'density' },
  },
  source: 'Torricelli’s law, with the pressure in place of the head',
  assumptions: [
    'One nozzle; a second one shares the volume.',
    'The pressure stays what it is stated to be: that of the pump’s spring at mid stroke.',
    'A real nozzle passes less, by a share that its shape decides and no formula gives: the time is bounded, not worked.',
  ],
  range: 'd > 0, p > 0, ρ > 0',
  solutions: [
    {
      for: 'time',
      from: ['volume', 'bore', 'pressure', 'density'],
      above: ['bore', 'pressure', 'density'],
      hold: 'at-least',
      told: '{volume} through {bore} at {pressure} takes at least {worked}',
      solve: ({ volume, bore, pressure, density }) =>
        divide(multiply(volume, THOUSAND), multiply(area(bore), speed(pressure, density))),
    },
    {
      for: 'volume',
      from: ['time', 'bore', 'pressure', 'density'],
      above: ['bore', 'pressure', 'density'],
      hold: 'at-most',
      offer: false,
      solve: ({ time, bore, pressure, density }) =>
        divide(multiply(multiply(area(bore), speed(pressure, density)), time), THOUSAND),
    },
    {
      for: 'bore',
      from: ['time', 'volume', 'pressure', 'density'],
      above: ['time', 'pressure', 'density'],
      hold: 'at-least',
      offer: false,
      solve: ({ time, volume, pressure, density }) =>
        squareRoot(
          divide(
            multiply(volume, THOUSAND),
            multiply(multiply(QUARTER_PI, speed(pressure, density)), time),
          ),
        ),
    },
  ],
});

function area(bore: Interval): Interval {
  return multiply(QUARTER_PI, square(bore));
}

/** mm/s at which a fluid leaves under a pressure: Pa over kg/m³ is m²/s². */
function speed(pressure: Interval, density: Interval): Interval {
  return multiply(squareRoot(divide(multiply(TWO, pressure), density)), THOUSAND);
}
