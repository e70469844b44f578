import { defineRelation, refuse } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';
import { areaAt, gapForArea } from '../throttle-plate.ts';
import { gapRefused, shaftRefused } from '../throttle-refusals.ts';
import { quantitiesOfTwo } from '../two-throttles.ts';

/** The gap that opens another unit by the same area. */
export default defineRelation({
  id: 'equal-flow',
  title: 'One open area on two bores',
  formula: 'n₁ A(gap₁, D₁, d₁) = n₂ A(gap₂, D₂, d₂)',
  source: 'follows from the open area beside a throttle plate',
  assumptions: [
    'On both units the plate is thin, flat and closes all round, and its shaft is bare across the bore.',
    'Open areas stand for air only while both see the same pressures.',
  ],
  range: '0 ≤ gap ≤ D/2, d < D on both; the area is one that both can have',
  quantities: {
    gap: { label: 'throttle gap', symbol: 'gap₁', dimension: 'length' },
    'other-gap': { label: 'throttle gap of the other unit', symbol: 'gap₂', dimension: 'length' },
    ...quantitiesOfTwo,
  },
  solutions: [
    {
      for: 'other-gap',
      from: ['gap', 'bore', 'shaft', 'barrels', 'other-bore', 'other-shaft', 'other-barrels'],
      above: ['bore', 'barrels', 'other-bore', 'other-barrels'],
      solve: (of) => {
        const refused =
          shaftRefused(of.shaft, of.bore) ??
          shaftRefused(of['other-shaft'], of['other-bore'], 'other-shaft', 'other-bore') ??
          gapRefused(of.gap, of.bore);
        if (refused) return refused;
        const area = multiply(areaAt(of.gap, of.bore, of.shaft), of.barrels);
        return (
          gapForArea(divide(area, of['other-barrels']), of['other-bore'], of['other-shaft']) ??
          refuse(
            'at {gap} this unit is open by more than a bore of {other-bore} ever is',
            'compare the units at a smaller gap',
            'gap',
            'other-bore',
          )
        );
      },
    },
  ],
});
