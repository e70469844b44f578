import { defineRelation, refuse } from '../define-relation.ts';
import { divide, fromNothing, hull, multiply } from '../interval.ts';
import type { Interval } from '../model.ts';
import { areaAt } from '../throttle-plate.ts';
import { gapRefused, shaftRefused } from '../throttle-refusals.ts';
import { type OfTwo, otherGapRefused, quantitiesOfTwo } from '../two-throttles.ts';

/** How the open areas of two units compare when one wire sets both. */
export default defineRelation({
  id: 'equal-gap',
  title: 'One gap on two bores',
  formula: 'share = 100 % × n₂ A(gap, D₂, d₂) ÷ n₁ A(gap, D₁, d₁)',
  source: 'follows from the open area beside a throttle plate',
  assumptions: [
    'On both units the plate is thin, flat and closes all round, and its shaft is bare across the bore.',
    'Open areas stand for air only while both see the same pressures.',
  ],
  range: '0 < gap ≤ D/2, d < D on both',
  quantities: {
    share: {
      label: 'open area of the other unit in percent of the first',
      symbol: 'share',
      dimension: 'percent',
    },
    gap: { label: 'throttle gap', symbol: 'gap', dimension: 'length' },
    ...quantitiesOfTwo,
  },
  solutions: [
    {
      for: 'share',
      from: ['gap', 'bore', 'shaft', 'barrels', 'other-bore', 'other-shaft', 'other-barrels'],
      above: ['gap', 'bore', 'barrels', 'other-bore', 'other-barrels'],
      solve: (of) => {
        const refused =
          shaftRefused(of.shaft, of.bore) ??
          shaftRefused(of['other-shaft'], of['other-bore'], 'other-shaft', 'other-bore') ??
          gapRefused(of.gap, of.bore) ??
          otherGapRefused(of.gap, of['other-bore']);
        if (refused) return refused;
        return shareAt(of) ?? gapTooSmall();
      },
    },
  ],
});

/** Pieces that the gap is worked in: both areas grow with it, so their quotient in one go is wide. */
const PIECES = 64;
/** Share of the bore below which a gap is too narrow for the areas to be told from nothing. */
const LEAST = 1e-7;

function shareAt(of: Readonly<Record<OfTwo | 'gap', Interval>>): Interval | null {
  const least = Math.max(of.gap.lo, of.bore.hi * LEAST);
  if (least > of.gap.hi) return null;
  const width = (of.gap.hi - least) / PIECES;
  let share: Interval | null = null;
  for (let i = 0; i < (width > 0 ? PIECES : 1); i++) {
    const gap = {
      lo: least + i * width,
      hi: i === PIECES - 1 ? of.gap.hi : least + (i + 1) * width,
    };
    const own = multiply(areaAt(gap, of.bore, of.shaft), of.barrels);
    if (own.lo <= 0) return null;
    const other = multiply(areaAt(gap, of['other-bore'], of['other-shaft']), of['other-barrels']);
    const piece = multiply(divide(other, own), { lo: 100, hi: 100 });
    share = share ? hull(share, piece) : piece;
  }
  return share && fromNothing(share);
}

function gapTooSmall() {
  return refuse(
    '{gap} leaves too little open for two areas to be compared',
    'compare the units at a wider gap',
    'gap',
  );
}
