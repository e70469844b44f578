import { defineRelation } from './define-relation.ts';
import { divide, interval, multiply } from './interval.ts';
import type { Relation } from './model.ts';

/**
 * A relation between a figure at a shaft that turns once while the crank turns twice and the same
 * figure at the crank: crank = 2 × shaft.
 */
export function halfSpeed(
  of: Pick<Relation, 'id' | 'title' | 'formula'> & { readonly dimension: 'angle' | 'speed' },
): Relation {
  const { dimension, ...words } = of;
  const twice = interval(2);
  return defineRelation({
    ...words,
    quantities: {
      shaft: { label: 'figure at the shaft', symbol: 'shaft', dimension },
      crank: { label: 'figure at the crank', symbol: 'crank', dimension },
    },
    source:
      'the camshaft of a four-stroke engine, and what it drives, turns once in two of the crank',
    assumptions: ['The engine is a four-stroke one.', 'The shaft turns with the camshaft.'],
    range: 'any',
    solutions: [
      {
        for: 'crank',
        from: ['shaft'],
        told: '{shaft} is {worked} at the crank',
        solve: ({ shaft }) => multiply(shaft, twice),
      },
      {
        for: 'shaft',
        from: ['crank'],
        told: '{crank} at the crank is {worked} at the shaft',
        solve: ({ crank }) => divide(crank, twice),
      },
    ],
  });
}
