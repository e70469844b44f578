import { defineRelation, refuse } from './define-relation.ts';
import { add, divide, fromNothing, multiply, subtract } from './interval.ts';
import type { Interval, Relation, Worked } from './model.ts';
import { point } from './squares.ts';

/** Newtons that one base unit of a load presses with: of a newton itself, and of a gram. */
const NEWTONS: Readonly<Record<'force' | 'mass', Interval>> = {
  force: point(1),
  mass: { lo: 0.00980665, hi: 0.00980665 },
};

interface SpringRate {
  readonly id: string;
  readonly title: string;
  /** What the loads are told as. */
  readonly dimension: 'force' | 'mass';
  readonly source: string;
}

/** The rate of a spring that two loads press to two lengths; by Hooke's law. */
export function defineSpringRate({ dimension, ...told }: SpringRate): Relation {
  const newtons = NEWTONS[dimension];
  return defineRelation({
    ...told,
    formula: 'rate = (P₂ − P₁) ÷ (L₁ − L₂)',
    quantities: {
      rate: { label: 'spring rate', symbol: 'rate', dimension: 'spring-rate' },
      load: { label: 'load at the first length', symbol: 'P₁', dimension },
      'more-load': { label: 'load at the shorter length', symbol: 'P₂', dimension },
      length: { label: 'first length', symbol: 'L₁', dimension: 'length' },
      'less-length': { label: 'shorter length', symbol: 'L₂', dimension: 'length' },
    },
    assumptions: [
      'The spring is one that is pressed, of one pitch, and no coils touch at either length.',
      'Both loads are read on one spring, on the way to the shorter length.',
    ],
    range: 'P₂ > P₁, L₂ < L₁',
    solutions: [
      {
        for: 'rate',
        from: ['load', 'more-load', 'length', 'less-length'],
        told: '{load} at {length} and {more-load} at {less-length} is {worked}',
        solve: (of) => {
          const shorter = subtract(of.length, of['less-length']);
          const more = subtract(of['more-load'], of.load);
          return (
            lengthsRefused(shorter) ??
            loadsRefused(of.load, of['more-load']) ??
            divide(multiply(fromNothing(more), newtons), shorter)
          );
        },
      },
      {
        for: 'more-load',
        from: ['rate', 'load', 'length', 'less-length'],
        told: '{load} at {length} is {worked} at {less-length}, at {rate}',
        solve: (of): Worked => {
          const shorter = subtract(of.length, of['less-length']);
          return (
            lengthsRefused(shorter) ?? add(of.load, divide(multiply(of.rate, shorter), newtons))
          );
        },
      },
      {
        for: 'load',
        from: ['rate', 'more-load', 'length', 'less-length'],
        told: '{more-load} at {less-length} is {worked} at {length}, at {rate}',
        solve: (of): Worked => {
          const shorter = subtract(of.length, of['less-length']);
          const load = subtract(of['more-load'], divide(multiply(of.rate, shorter), newtons));
          if (load.hi < 0) {
            return refuse(
              'a spring of {rate} that is pressed with {more-load} at {less-length} is loose before {length}',
              'correct the rate, the load or one of the lengths',
              'rate',
              'more-load',
              'length',
            );
          }
          return lengthsRefused(shorter) ?? fromNothing(load);
        },
      },
      {
        for: 'less-length',
        from: ['rate', 'load', 'more-load', 'length'],
        above: ['rate'],
        offer: false,
        solve: (of): Worked => {
          const more = subtract(of['more-load'], of.load);
          const left = subtract(of.length, divide(multiply(fromNothing(more), newtons), of.rate));
          if (left.hi < 0) {
            return refuse(
              'a spring of {rate} would have to be shorter than nothing to press with {more-load}',
              'correct the rate, a load or the length',
              'rate',
              'more-load',
              'length',
            );
          }
          return loadsRefused(of.load, of['more-load']) ?? fromNothing(left);
        },
      },
    ],
  });
}

function lengthsRefused(shorter: Interval) {
  return shorter.lo <= 0
    ? refuse(
        '{less-length} is not less than {length}, or no more than a rounding',
        'state two lengths that are well apart, the longer first',
        'less-length',
        'length',
      )
    : null;
}

function loadsRefused(load: Interval, more: Interval) {
  return more.hi <= load.lo
    ? refuse(
        '{more-load} at the shorter length is no more than {load}',
        'exchange the two loads, or correct the one that is wrong',
        'more-load',
        'load',
      )
    : null;
}
