import { defineRelation, refuse } from '../define-relation.ts';
import { add, divide, multiply, subtract } from '../interval.ts';
import type { Interval } from '../model.ts';
import { point, square, squareRoot, squaresApart } from '../squares.ts';

const HUNDRED = point(100);
/** Percent to which the result is cut where the roundings let an economy step fill its jet. */
const MOST = 1e9;

/** How much more of the jet the power step leaves open than the economy step. */
export default defineRelation({
  id: 'rod-enrichment',
  title: 'Enrichment by the rod’s power step',
  formula: 'enrichment = 100 % × (de² − dp²) ÷ (Dj² − de²)',
  source: 'follows from the areas that the two steps leave open in one jet',
  assumptions: [
    'Jet and rod are round, and both steps stand in the same jet.',
    'Areas stand for fuel only while the head is the same; a steady engine at another load sees another head.',
  ],
  range: 'dp ≤ Dj, de < Dj; less than 0 % where the power step is the thicker',
  quantities: {
    enrichment: { label: 'enrichment', symbol: 'enrichment', dimension: 'percent' },
    jet: { label: 'bore of the jet', symbol: 'Dj', dimension: 'length' },
    economy: { label: 'economy step', symbol: 'de', dimension: 'length' },
    power: { label: 'power step', symbol: 'dp', dimension: 'length' },
  },
  solutions: [
    {
      for: 'enrichment',
      from: ['jet', 'economy', 'power'],
      above: ['jet'],
      solve: ({ jet, economy, power }) => {
        if (economy.lo >= jet.hi) return economyTooThick();
        if (power.lo > jet.hi) return powerTooThick();
        // It falls with the jet while the power step is the thinner, and rises with it otherwise.
        const less = (p: number, e: number) => (p <= e ? jet.hi : jet.lo);
        const more = (p: number, e: number) => (p <= e ? jet.lo : jet.hi);
        const low = worked(less(power.hi, economy.lo), economy.lo, power.hi);
        const high = worked(more(power.lo, economy.hi), economy.hi, power.lo);
        return { lo: Math.min(MOST, Math.max(-100, low.lo)), hi: Math.min(MOST, high.hi) };
      },
    },
    {
      for: 'power',
      from: ['jet', 'economy', 'enrichment'],
      above: ['jet'],
      solve: ({ jet, economy, enrichment }) => {
        if (economy.lo >= jet.hi) return economyTooThick();
        const at = (j: number, e: number, percent: number): Interval =>
          subtract(square(point(e)), multiply(share(percent), squaresApart(point(j), point(e))));
        const lowest = Math.min(economy.lo, jet.hi);
        const highest = Math.min(economy.hi, jet.hi);
        const low = at(jet.hi, lowest, enrichment.hi);
        const high = at(Math.max(jet.lo, highest), highest, enrichment.lo);
        if (high.hi < 0) {
          return refuse(
            'no power step is thin enough for {enrichment} more in a jet of {jet}',
            'correct the enrichment, the jet or the economy step',
            'enrichment',
            'jet',
            'economy',
          );
        }
        return squareRoot({ lo: low.lo, hi: high.hi });
      },
    },
    {
      for: 'economy',
      from: ['jet', 'power', 'enrichment'],
      above: ['jet'],
      solve: ({ jet, power, enrichment }) => {
        if (power.lo > jet.hi) return powerTooThick();
        const at = (j: number, p: number, percent: number): Interval =>
          divide(
            add(square(point(p)), multiply(share(percent), square(point(j)))),
            add(point(1), share(percent)),
          );
        const thickest = Math.min(power.hi, jet.hi);
        const low = at(Math.max(jet.lo, power.lo), power.lo, enrichment.lo);
        const high = at(jet.hi, thickest, enrichment.hi);
        return squareRoot({ lo: low.lo, hi: high.hi });
      },
    },
    {
      for: 'jet',
      from: ['economy', 'power', 'enrichment'],
      above: ['enrichment'],
      solve: ({ economy, power, enrichment }) => {
        if (power.lo > economy.hi) {
          return refuse(
            'a power step of {power} is thicker than an economy step of {economy} and enriches nothing',
            'exchange the two, or correct the one that is wrong',
            'power',
            'economy',
          );
        }
        const at = (e: number, p: number, percent: number): Interval =>
          add(square(point(e)), divide(squaresApart(point(e), point(p)), share(percent)));
        const thinnest = Math.max(economy.lo, power.lo);
        const low = at(thinnest, Math.min(power.hi, thinnest), enrichment.hi);
        return squareRoot({ lo: low.lo, hi: at(economy.hi, power.lo, enrichment.lo).hi });
      },
    },
  ],
});

function worked(jet: number, economy: number, power: number): Interval {
  if (economy >= jet) return point(power > economy ? -100 : MOST);
  const step = point(economy);
  return multiply(
    divide(squaresApart(step, point(power)), squaresApart(point(jet), step)),
    HUNDRED,
  );
}

function share(percent: number): Interval {
  return divide(point(percent), HUNDRED);
}

function economyTooThick() {
  return refuse(
    'an economy step of {economy} shuts a jet of {jet}',
    'correct the step or the jet; the step is the thinner of the two',
    'economy',
    'jet',
  );
}

function powerTooThick() {
  return refuse(
    'a power step of {power} does not go into a jet of {jet}',
    'correct the step or the jet; the step is the thinner of the two',
    'power',
    'jet',
  );
}
