/** Something that stands in a column and is not broken. */
export interface Block {
  readonly px: number;
  /** Whether it may not be the last of a column: a heading. */
  readonly keep: boolean;
}

/** A side of a leaf: columns of blocks, each by its index. */
export type Side = readonly (readonly number[])[];

/** What sides have room for. */
export interface Room {
  readonly columns: number;
  /** The height of a column on the side at an index from 0, in pixels. */
  heightPx(side: number): number;
  /** What the foot of the last side takes of it. */
  readonly footPx: number;
}

/**
 * Lays blocks in columns, side by side, in their order and none broken; on the last side the columns are
 * as even as they can be, with room for the foot below. A block that is higher than a column has
 * one of its own and runs over.
 */
export function packed(blocks: readonly Block[], room: Room): readonly Side[] {
  const sides: number[][][] = [];
  let next = 0;
  while (next < blocks.length) {
    const { columns, end } = filled(blocks, next, room.columns, room.heightPx(sides.length));
    sides.push(columns);
    next = end;
  }
  const last = sides.pop();
  if (last === undefined) return [[[]]];
  const first = last[0]?.[0] ?? 0;
  const height = room.heightPx(sides.length);
  const even = evenly(blocks, first, room.columns, height - room.footPx);
  if (even !== null) return [...sides, even];
  // No room for the foot: it goes to the next side with what has to follow.
  const { columns, end } = filled(blocks, first, room.columns, height - room.footPx);
  const over = evenly(blocks, end, room.columns, room.heightPx(sides.length + 1) - room.footPx);
  return [...sides, columns, over ?? [[]]];
}

/** As many blocks from `from` on as columns of a height hold. */
function filled(
  blocks: readonly Block[],
  from: number,
  count: number,
  heightPx: number,
): { readonly columns: number[][]; readonly end: number } {
  const columns: number[][] = [];
  let next = from;
  for (let column = 0; column < count && next < blocks.length; column++) {
    const here: number[] = [];
    let used = 0;
    while (next < blocks.length) {
      const { px } = blocks[next] as Block;
      if (here.length > 0 && used + px > heightPx) break;
      here.push(next);
      used += px;
      next += 1;
    }
    // A heading goes with what it is the heading of.
    while (next < blocks.length && here.length > 1 && blocks[here.at(-1) ?? 0]?.keep) {
      here.pop();
      next -= 1;
    }
    columns.push(here);
  }
  return { columns, end: next };
}

/** All blocks from `from` on in columns that are as low as can be; null where they are higher than the most. */
function evenly(
  blocks: readonly Block[],
  from: number,
  count: number,
  mostPx: number,
): number[][] | null {
  const whole = blocks.slice(from).reduce((sum, { px }) => sum + px, 0);
  if (filled(blocks, from, count, mostPx).end < blocks.length) return null;
  let [low, high] = [whole / count, mostPx];
  while (high - low > 1) {
    const middle = (low + high) / 2;
    if (filled(blocks, from, count, middle).end < blocks.length) low = middle;
    else high = middle;
  }
  return filled(blocks, from, count, high).columns;
}
