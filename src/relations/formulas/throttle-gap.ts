import { defineRelation } from '../define-relation.ts';
import { angleAt, gapAt } from '../throttle-plate.ts';
import { closedAngleRefused, gapRefused, plateRefused } from '../throttle-refusals.ts';

/** The gap at a throttle plate's edge against its angle. */
export default defineRelation({
  id: 'throttle-gap',
  title: 'Throttle gap and angle',
  formula: 'gap = D/2 × (1 − cos ψ ÷ cos ψ₀)',
  source:
    'geometry of a flat plate in a round bore, as in J. B. Heywood, Internal Combustion Engine Fundamentals, chapter 7; derived anew',
  assumptions: [
    'The plate is thin, flat and an ellipse that closes all round at ψ₀; both angles are from the plane square to the bore.',
    'The gap is measured square to the bore’s wall, at the middle of the plate’s edge, farthest from the shaft.',
    'The shaft runs through the middle of the bore.',
  ],
  range: '0° ≤ ψ₀ < 90°, ψ₀ ≤ ψ ≤ 90°, 0 ≤ gap ≤ D/2',
  quantities: {
    gap: { label: 'throttle gap', symbol: 'gap', dimension: 'length' },
    angle: { label: 'throttle angle', symbol: 'ψ', dimension: 'angle' },
    bore: { label: 'throttle bore', symbol: 'D', dimension: 'length' },
    'closed-angle': { label: 'closed angle', symbol: 'ψ₀', dimension: 'angle' },
  },
  solutions: [
    {
      for: 'gap',
      from: ['angle', 'closed-angle', 'bore'],
      above: ['bore'],
      solve: ({ angle, 'closed-angle': closed, bore }) =>
        plateRefused(angle, closed) ?? gapAt(angle, closed, bore),
    },
    {
      for: 'angle',
      from: ['gap', 'closed-angle', 'bore'],
      above: ['bore'],
      solve: ({ gap, 'closed-angle': closed, bore }) =>
        closedAngleRefused(closed) ?? gapRefused(gap, bore) ?? angleAt(gap, closed, bore),
    },
  ],
});
