import { defineRelation } from '../define-relation.ts';
import { angleOfPlate, gapBesidePlate } from '../throttle-plate.ts';
import {
  closedAngleRefused,
  gapRefused,
  plateRefused,
  thicknessRefused,
} from '../throttle-refusals.ts';

/** The gap at a throttle plate's edge against its angle. */
export default defineRelation({
  id: 'throttle-gap',
  title: 'Throttle gap and angle',
  formula: 'gap = D/2 × (1 − cos ψ ÷ cos ψ₀) − t/2 × sin(ψ − ψ₀) ÷ cos ψ₀',
  source:
    'geometry of a flat plate in a round bore, as in J. B. Heywood, Internal Combustion Engine Fundamentals, chapter 7; derived anew, with the corner of a thick plate turned about the shaft',
  assumptions: [
    'The plate is flat and an ellipse that closes all round at ψ₀, with an edge that then lies along the bore; both angles are from the plane square to the bore.',
    'Where the thickness of the plate is not stated, it is taken as thin.',
    'The gap is measured square to the bore’s wall, at the middle of the plate’s edge, farthest from the shaft.',
    'The shaft runs through the middle of the bore.',
  ],
  range: '0° ≤ ψ₀ < 90°, ψ₀ ≤ ψ ≤ 90°, 0 ≤ gap ≤ D/2, t < D sin ψ₀ where it is stated',
  quantities: {
    gap: { label: 'throttle gap', symbol: 'gap', dimension: 'length' },
    angle: { label: 'throttle angle', symbol: 'ψ', dimension: 'angle' },
    bore: { label: 'throttle bore', symbol: 'D', dimension: 'length' },
    'closed-angle': { label: 'closed angle', symbol: 'ψ₀', dimension: 'angle' },
    plate: {
      label: 'plate thickness',
      symbol: 't',
      dimension: 'length',
      unsaid: { value: { lo: 0, hi: 0 }, words: 'a thin plate' },
    },
  },
  solutions: [
    {
      for: 'gap',
      from: ['angle', 'closed-angle', 'bore', 'plate'],
      above: ['bore'],
      solve: ({ angle, 'closed-angle': closed, bore, plate }) =>
        plateRefused(angle, closed) ??
        thicknessRefused(plate, closed, bore) ??
        gapBesidePlate(angle, closed, bore, plate),
    },
    {
      for: 'angle',
      from: ['gap', 'closed-angle', 'bore', 'plate'],
      above: ['bore'],
      solve: ({ gap, 'closed-angle': closed, bore, plate }) =>
        closedAngleRefused(closed) ??
        gapRefused(gap, bore) ??
        thicknessRefused(plate, closed, bore) ??
        angleOfPlate(gap, closed, bore, plate),
    },
  ],
});
