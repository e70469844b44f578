import { fullLift, liftForArea, needleArea } from '../conical-needle.ts';
import { defineRelation, refuse } from '../define-relation.ts';
import { needleRefused } from '../needle-refusals.ts';

/** The area beside a conical idle needle against its lift. */
export default defineRelation({
  id: 'needle-area',
  title: 'Conical idle needle',
  formula: 'A = π h sin(θ/2) × (d₀ − h/2 × sin θ), at most π d₀²/4',
  source:
    'geometry: the shell of a cone between the seat’s edge and the needle; published and derived anew',
  assumptions: [
    'The needle is a plain cone that seats on the sharp edge of the orifice, and both are unworn.',
    'The lift is from lightly seated, along the needle; the angle is the full one, between the cone’s two sides.',
  ],
  range: '0 < θ < 180°, 0 ≤ h ≤ the lift at which A = π d₀²/4; past that the orifice alone meters',
  quantities: {
    area: { label: 'open area', symbol: 'A', dimension: 'area' },
    lift: { label: 'lift of the needle', symbol: 'h', dimension: 'length' },
    orifice: { label: 'idle orifice', symbol: 'd₀', dimension: 'length' },
    'needle-angle': { label: 'angle of the needle', symbol: 'θ', dimension: 'angle' },
    'full-lift': {
      label: 'lift at full orifice',
      symbol: 'h full',
      dimension: 'length',
    },
  },
  solutions: [
    {
      for: 'area',
      from: ['lift', 'orifice', 'needle-angle'],
      above: ['orifice', 'needle-angle'],
      solve: ({ lift, orifice, 'needle-angle': needle }) =>
        needleRefused(lift, orifice, needle) ?? needleArea(lift, orifice, needle),
    },
    {
      for: 'lift',
      from: ['area', 'orifice', 'needle-angle'],
      above: ['orifice', 'needle-angle'],
      solve: ({ area, orifice, 'needle-angle': needle }) =>
        needleRefused(null, orifice, needle) ??
        liftForArea(area, orifice, needle) ??
        refuse(
          '{area} is more than an orifice of {orifice} has with the needle out',
          'correct the area or the orifice',
          'area',
          'orifice',
        ),
    },
    {
      for: 'full-lift',
      from: ['orifice', 'needle-angle'],
      above: ['orifice', 'needle-angle'],
      solve: ({ orifice, 'needle-angle': needle }) =>
        needleRefused(null, orifice, needle) ?? fullLift(orifice, needle),
    },
  ],
});
