import { refuse } from './define-relation.ts';
import type { Interval, RelationQuantity, Unworkable } from './model.ts';

const noShaft = { value: { lo: 0, hi: 0 }, words: 'no shaft, as none is said' };
const oneBarrel = { value: { lo: 1, hi: 1 }, words: 'one barrel' };

type Described = Omit<RelationQuantity, 'name'>;

/** Names of what `quantitiesOfTwo` describes. */
export type OfTwo = 'bore' | 'shaft' | 'barrels' | 'other-bore' | 'other-shaft' | 'other-barrels';

/** Bore, shaft and barrels of two units that are compared. */
export const quantitiesOfTwo: Readonly<Record<OfTwo, Described>> = {
  bore: { label: 'throttle bore', symbol: 'D₁', dimension: 'length', unsaid: null },
  shaft: { label: 'throttle shaft', symbol: 'd₁', dimension: 'length', unsaid: noShaft },
  barrels: { label: 'number of barrels', symbol: 'n₁', dimension: 'ratio', unsaid: oneBarrel },
  'other-bore': {
    label: 'throttle bore of the other unit',
    symbol: 'D₂',
    dimension: 'length',
    unsaid: null,
  },
  'other-shaft': {
    label: 'throttle shaft of the other unit',
    symbol: 'd₂',
    dimension: 'length',
    unsaid: noShaft,
  },
  'other-barrels': {
    label: 'number of barrels of the other unit',
    symbol: 'n₂',
    dimension: 'ratio',
    unsaid: oneBarrel,
  },
};

/** Why the other unit's plate can't leave so wide a gap; null where it can. Names `gap`. */
export function otherGapRefused(gap: Interval, bore: Interval): Unworkable | null {
  if (gap.lo <= bore.hi / 2) return null;
  return refuse(
    '{gap} is more than half of the other unit’s bore of {other-bore}, and no plate opens so far',
    'compare the units at a gap that both can have',
    'gap',
    'other-bore',
  );
}
