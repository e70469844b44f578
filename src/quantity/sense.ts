import type { Sense } from './model.ts';

/** The other way of counting from a datum; undefined for notches, whose ways are no opposites of one another. */
export const opposites: Readonly<Partial<Record<Sense, Sense>>> = {
  out: 'in',
  in: 'out',
  up: 'down',
  down: 'up',
  before: 'after',
  after: 'before',
};
