import { defineRelation, refuse } from './define-relation.ts';
import { divide, multiply, subtract } from './interval.ts';
import type { Interval, Relation, Unworkable } from './model.ts';
import { point } from './squares.ts';

const HUNDRED = point(100);
const ONE = point(1);
/** The share that is left at the least: beyond it one instrument does not draw at all. */
const LEAST = 1e-6;

interface PairFlow {
  readonly id: string;
  readonly title: string;
  /** What the meter tells: a volume of air over a time, or a weight. */
  readonly dimension: 'flow' | 'mass-flow';
}

/** How far instruments that draw together are out of balance, by their flows. */
export function definePairFlow({ dimension, ...told }: PairFlow): Relation {
  return defineRelation({
    ...told,
    formula: 'out = 100 % × (strongest − weakest) ÷ strongest',
    quantities: {
      out: { label: 'out of balance', symbol: 'out', dimension: 'percent' },
      strongest: { label: 'flow of the strongest', symbol: 'strongest', dimension },
      weakest: { label: 'flow of the weakest', symbol: 'weakest', dimension },
    },
    source: 'definition of a share',
    assumptions: [
      'The flows are read with one meter at one speed of the engine, one after the other.',
    ],
    range: 'weakest ≤ strongest, strongest > 0; out below 100 %',
    solutions: [
      {
        for: 'out',
        from: ['strongest', 'weakest'],
        above: ['strongest'],
        told: '{weakest} beside {strongest} is {worked} out of balance',
        solve: ({ strongest, weakest }) =>
          pairRefused(strongest, weakest) ?? outOfBalance(divide(weakest, strongest)),
      },
      {
        for: 'weakest',
        from: ['strongest', 'out'],
        told: '{out} below {strongest} is {worked}',
        solve: ({ strongest, out }) => multiply(strongest, shareLeft(out)),
      },
      {
        for: 'strongest',
        from: ['weakest', 'out'],
        told: '{weakest} is {out} below {worked}',
        solve: ({ weakest, out }) => divide(weakest, shareLeft(out)),
      },
    ],
  });
}

/** A refusal where the one that is called the weakest reads the most; null where it does not. */
export function pairRefused(strongest: Interval, weakest: Interval): Unworkable | null {
  return weakest.lo > strongest.hi
    ? refuse(
        '{weakest} is more than {strongest}, and called the weakest',
        'exchange the two, or correct the one that is wrong',
        'weakest',
        'strongest',
      )
    : null;
}

/** Percent out of balance, of the share that the weakest draws of the strongest. */
export function outOfBalance(share: Interval): Interval {
  const out = multiply(subtract(ONE, share), HUNDRED);
  return { lo: Math.max(0, out.lo), hi: Math.min(100, out.hi) };
}

/** The share that the weakest draws, of percent out of balance; a millionth at the least. */
export function shareLeft(out: Interval): Interval {
  const share = subtract(ONE, divide(out, HUNDRED));
  return { lo: Math.max(LEAST, share.lo), hi: Math.max(LEAST, share.hi) };
}
