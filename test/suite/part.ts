/** Whether this run is of `npm run test:quick`, which is to be over in a minute. */
export const isQuick = process.env.GAUGELEAF_TESTS === 'quick';

/**
 * Of many cases that are much alike, those that this run tries: all of them, and in the quick part every
 * `every`th. A rate that has to be reached is reached by these, too.
 */
export function casesToTry<T>(cases: Iterable<T>, every = 8): readonly T[] {
  const all = [...cases];
  return isQuick ? all.filter((_, index) => index % every === 0) : all;
}

/** How often a property is tried: as often as is said, and an eighth of it in the quick part. */
export function runs(count: number): number {
  return isQuick ? Math.ceil(count / 8) : count;
}
