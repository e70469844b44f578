/** Something in a row that keeps its place in the row's order: its middle and its breadth. */
export interface RowItem {
  readonly x: number;
  readonly width: number;
  /** The space it keeps to a neighbor, half from each of the two. */
  readonly gap: number;
}

/** The least breadth that a row needs. */
export function leastBreadth(row: readonly RowItem[]): number {
  const steps = row.slice(1).map((item, index) => apart(row[index], item));
  const ends = ((row[0]?.width ?? 0) + (row.at(-1)?.width ?? 0)) / 2;
  return steps.reduce((sum, step) => sum + step, ends);
}

/**
 * New middles for a row's items, from 0 to `breadth`: as near to the old ones as can be (least
 * squares) in the order of the row, with nothing closer than it may be.
 * Where even the least breadth is too much, the gaps shrink; only items broader than `breadth` all
 * together overlap.
 */
export function squeezed(row: readonly RowItem[], breadth: number): readonly number[] {
  const bare = leastBreadth(row.map((item) => ({ ...item, gap: 0 })));
  const full = leastBreadth(row);
  const share = full <= breadth ? 1 : Math.max(0, (breadth - bare) / Math.max(full - bare, 1e-9));
  // Measured from where each would be in a row pushed together, order and distance are one
  // condition: no item less than the one before it. Pooling neighbors that break it is the least
  // squares answer (isotonic regression by pool-adjacent-violators: Barlow et al. 1972, from memory).
  const offsets: number[] = [];
  row.forEach((item, index) => {
    const before = row[index - 1];
    offsets.push(before ? (offsets[index - 1] ?? 0) + apart(before, item, share) : item.width / 2);
  });
  const pools: { sum: number; count: number }[] = [];
  row.forEach((item, index) => {
    let pool = { sum: item.x - (offsets[index] ?? 0), count: 1 };
    for (
      let last = pools.at(-1);
      last && last.sum / last.count > pool.sum / pool.count;
      last = pools.at(-1)
    ) {
      pools.pop();
      pool = { sum: last.sum + pool.sum, count: last.count + pool.count };
    }
    pools.push(pool);
  });
  const end = (offsets.at(-1) ?? 0) + (row.at(-1)?.width ?? 0) / 2;
  const room = Math.max(0, breadth - end);
  const shifts = pools.flatMap(({ sum, count }) =>
    new Array<number>(count).fill(Math.min(Math.max(sum / count, 0), room)),
  );
  return offsets.map((offset, index) => offset + (shifts[index] ?? 0));
}

function apart(one: RowItem | undefined, two: RowItem, share = 1): number {
  if (!one) return 0;
  return (one.width + two.width) / 2 + ((one.gap + two.gap) / 2) * share;
}
