import { defineRelation, refuse } from '../define-relation.ts';
import { add, fromNothing, subtract } from '../interval.ts';
import { closedAngleRefused, plateRefused } from '../throttle-refusals.ts';

/** The angle of a throttle plate, from the angle at which it closes. */
export default defineRelation({
  id: 'throttle-opening',
  title: 'Throttle angle from closed',
  formula: 'ψ = ψ₀ + opening',
  source: 'definition: both angles are measured from the plane square to the bore',
  assumptions: ['The opening is counted from the closed plate, and plate and lever turn as one.'],
  range: '0° ≤ ψ₀ ≤ ψ ≤ 90°',
  quantities: {
    angle: { label: 'throttle angle', symbol: 'ψ', dimension: 'angle' },
    'closed-angle': { label: 'closed angle', symbol: 'ψ₀', dimension: 'angle' },
    opening: { label: 'opening', symbol: 'opening', dimension: 'angle' },
  },
  solutions: [
    {
      for: 'angle',
      from: ['closed-angle', 'opening'],
      solve: ({ 'closed-angle': closed, opening }) => {
        const refused = closedAngleRefused(closed);
        if (refused) return refused;
        const angle = add(closed, opening);
        if (angle.lo > 90) {
          return refuse(
            '{opening} from a closed angle of {closed-angle} is past 90°, where the plate stands along the bore',
            'correct the opening or the closed angle',
            'opening',
            'closed-angle',
          );
        }
        return { lo: Math.max(0, angle.lo), hi: Math.min(90, angle.hi) };
      },
    },
    {
      for: 'opening',
      from: ['angle', 'closed-angle'],
      solve: ({ angle, 'closed-angle': closed }) => {
        const refused = plateRefused(angle, closed);
        if (refused) return refused;
        const opening = subtract(angle, closed);
        return fromNothing(opening);
      },
    },
    {
      for: 'closed-angle',
      from: ['angle', 'opening'],
      solve: ({ angle, opening }) => {
        const closed = subtract(angle, opening);
        if (angle.lo > 90) return plateRefused(angle, { lo: 0, hi: 0 }) ?? closed;
        if (closed.hi < 0) {
          return refuse(
            '{opening} of opening is more than the whole {angle}',
            'correct one of the two',
            'opening',
            'angle',
          );
        }
        return fromNothing(closed);
      },
    },
  ],
});
