import type { Comparison } from './model.ts';

/** What came of a second reading, counted. */
export interface Tally {
  readonly same: number;
  readonly otherwise: number;
  /** Of those that differ, what nobody has settled. */
  readonly open: number;
  readonly settled: number;
  readonly notThere: number;
  readonly unread: number;
  readonly more: number;
}

/** Counts the verdicts of a comparison; what was settled counts as that alone. */
export function tallyOf({ compared, reading, unasked }: Comparison): Tally {
  const count = (word: string, isSettled = false) =>
    compared.filter(({ verdict, settled }) => verdict === word && (settled !== null) === isSettled)
      .length;
  return {
    same: count('same'),
    otherwise: count('same, written otherwise'),
    open: count('differs'),
    settled: compared.filter(({ settled }) => settled !== null).length,
    notThere: count('not on that page'),
    unread: count('unread'),
    more: reading.found.length + unasked.length,
  };
}

/** Whether every figure was read and is the same, or somebody settled it. */
export function isAllSame({ open, notThere, unread }: Tally): boolean {
  return open + notThere + unread === 0;
}
