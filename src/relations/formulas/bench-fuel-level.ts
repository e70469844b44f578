import { defineRelation, refuse } from '../define-relation.ts';
import { seatArea } from '../float-lift.ts';
import { add, divide, fromNothing, multiply, subtract } from '../interval.ts';
import type { Interval } from '../model.ts';
import { GRAVITY } from '../standard-gravity.ts';

const THOUSAND = { lo: 1000, hi: 1000 };
const ONE = { lo: 1, hi: 1 };

/** How a wet fuel level stands when it is set with a fluid of another density. */
export default defineRelation({
  id: 'bench-fuel-level',
  title: 'Wet fuel level with another fluid',
  formula: 'L₂ = L₁ + (M / S) (1/ρ₁ − 1/ρ₂), M = m + p (π d² / 4) (b / a) ÷ g, L below the rim',
  quantities: {
    level: { label: 'fuel level', symbol: 'L₁', dimension: 'length' },
    density: { label: 'density of the fuel', symbol: 'ρ₁', dimension: 'density' },
    'bench-density': { label: 'density of the bench fluid', symbol: 'ρ₂', dimension: 'density' },
    area: {
      label: 'area of the float where the fuel cuts it',
      symbol: 'S',
      dimension: 'area',
    },
    weight: { label: 'weight of the float', symbol: 'm', dimension: 'mass' },
    pressure: { label: 'fuel pressure', symbol: 'p', dimension: 'pressure' },
    seat: { label: 'bore of the seat', symbol: 'd', dimension: 'length' },
    arm: { label: 'arm of the float', symbol: 'a', dimension: 'length' },
    'short-arm': { label: 'arm of the needle', symbol: 'b', dimension: 'length' },
    'bench-level': { label: 'level with the bench fluid', symbol: 'L₂', dimension: 'length' },
  },
  source:
    'derived: the needle shuts at one place of the float, where it displaces one weight of any fluid; a lighter fluid has to cover more of it; g = 9.80665 m/s²',
  assumptions: [
    'The fluid is fed at one pressure both times, and the pressure acts on the bore of the seat.',
    'The sides of the float stand upright where the fluid cuts them, and the float is not wholly covered.',
    'The needle has no spring, and its own weight is left out.',
    'Both levels are measured down from one rim.',
  ],
  range: 'ρ₁ > 0, ρ₂ > 0, S > 0, a > 0, L₂ ≥ 0',
  solutions: [
    {
      for: 'bench-level',
      from: [
        'level',
        'density',
        'bench-density',
        'area',
        'weight',
        'pressure',
        'seat',
        'arm',
        'short-arm',
      ],
      above: ['density', 'bench-density', 'area', 'arm'],
      told: 'a float that shuts at {level} in fuel of {density} shuts at {worked} in fluid of {bench-density}',
      solve(known) {
        const height = divide(displaced(known), known.area);
        // Liters that a gram fills, the one less the other; a liter is a million cubic millimeters.
        const share = subtract(divide(ONE, known.density), divide(ONE, known['bench-density']));
        const rise = multiply(multiply(height, THOUSAND), multiply(share, THOUSAND));
        const level = add(known.level, rise);
        if (level.hi >= 0) return fromNothing(level);
        return refuse(
          'in fluid of {bench-density} the float shuts its needle only when the bowl runs over',
          'correct the densities or the sizes of the float',
          'bench-density',
          'density',
          'area',
        );
      },
    },
  ],
});

/** Grams that the float displaces when its needle just shuts. */
function displaced(
  known: Readonly<Record<'weight' | 'pressure' | 'seat' | 'arm' | 'short-arm', Interval>>,
): Interval {
  const load = multiply(known.pressure, seatArea(known.seat));
  const atFloat = divide(multiply(load, known['short-arm']), known.arm);
  return add(known.weight, divide(multiply(atFloat, THOUSAND), GRAVITY));
}
