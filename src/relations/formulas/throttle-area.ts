import { defineRelation } from '../define-relation.ts';
import { angleAt, areaAt, gapAt, gapForArea } from '../throttle-plate.ts';
import {
  areaRefused,
  closedAngleRefused,
  gapRefused,
  plateRefused,
  shaftRefused,
} from '../throttle-refusals.ts';

/** The open area of one barrel against the gap or the angle of its throttle plate. */
export default defineRelation({
  id: 'throttle-area',
  title: 'Open area beside a throttle plate',
  formula:
    '4A ÷ πD² = (1 − k) + 2/π × [a√(1 − a²/k²) + k asin(a/k) − a√(1 − a²) − asin a], k = cos ψ ÷ cos ψ₀ = 1 − 2 gap ÷ D, a = d ÷ D',
  source:
    'geometry of J. B. Heywood, Internal Combustion Engine Fundamentals, chapter 7; derived anew and checked against numerical integration',
  assumptions: [
    'The plate is thin, flat and an ellipse that closes all round without leakage; the area is that seen along the bore.',
    'The shaft is round and bare across the whole bore, through its middle.',
    'The area is of one barrel, without idle ports, screw heads or wear.',
  ],
  range:
    '0° ≤ ψ₀ < 90°, ψ₀ ≤ ψ ≤ 90°, d < D. For k ≤ a the shaft hides the plate and the area stays πD²/4 × [1 − 2/π × (a√(1 − a²) + asin a)]: an area that large leaves angle and gap open upward.',
  quantities: {
    area: { label: 'open area', symbol: 'A', dimension: 'area' },
    gap: { label: 'throttle gap', symbol: 'gap', dimension: 'length' },
    angle: { label: 'throttle angle', symbol: 'ψ', dimension: 'angle' },
    bore: { label: 'throttle bore', symbol: 'D', dimension: 'length' },
    'closed-angle': { label: 'closed angle', symbol: 'ψ₀', dimension: 'angle' },
    shaft: {
      label: 'throttle shaft',
      symbol: 'd',
      dimension: 'length',
    },
  },
  solutions: [
    {
      for: 'area',
      from: ['gap', 'bore', 'shaft'],
      above: ['bore'],
      solve: ({ gap, bore, shaft }) =>
        shaftRefused(shaft, bore) ?? gapRefused(gap, bore) ?? areaAt(gap, bore, shaft),
    },
    {
      for: 'area',
      from: ['angle', 'closed-angle', 'bore', 'shaft'],
      above: ['bore'],
      solve: ({ angle, 'closed-angle': closed, bore, shaft }) =>
        shaftRefused(shaft, bore) ??
        plateRefused(angle, closed) ??
        areaAt(gapAt(angle, closed, bore), bore, shaft),
    },
    {
      for: 'gap',
      from: ['area', 'bore', 'shaft'],
      above: ['bore'],
      solve: ({ area, bore, shaft }) =>
        shaftRefused(shaft, bore) ?? gapForArea(area, bore, shaft) ?? areaRefused(),
    },
    {
      for: 'angle',
      from: ['area', 'closed-angle', 'bore', 'shaft'],
      above: ['bore'],
      solve: ({ area, 'closed-angle': closed, bore, shaft }) => {
        const refused = shaftRefused(shaft, bore) ?? closedAngleRefused(closed);
        if (refused) return refused;
        const gap = gapForArea(area, bore, shaft);
        return gap ? angleAt(gap, closed, bore) : areaRefused();
      },
    },
  ],
});
