import { describe, expect, test } from 'vitest';
import { packed } from '../../../src/press/card/pack.ts';

const room = (heightPx: number, footPx = 0, columns = 2) => ({
  columns,
  heightPx: () => heightPx,
  footPx,
});
const blocks = (...heights: readonly number[]) => heights.map((px) => ({ px, keep: false }));

describe('blocks in columns', () => {
  test('keep their order, and none is broken', () => {
    const sides = packed(blocks(60, 60, 60, 60, 60), room(100));
    expect(sides.flat(2)).toEqual([0, 1, 2, 3, 4]);
    for (const column of sides.flat()) expect(column.length).toBeLessThanOrEqual(1);
  });

  test('fill a column to its very height', () => {
    expect(packed(blocks(50, 50, 50, 50), room(100))).toEqual([
      [
        [0, 1],
        [2, 3],
      ],
    ]);
    expect(packed(blocks(50, 51, 50, 50, 50), room(100))[0]?.[0]).toEqual([0]);
  });

  test('are as even as can be on the last side', () => {
    expect(packed(blocks(20, 20, 20, 20), room(100))).toEqual([
      [
        [0, 1],
        [2, 3],
      ],
    ]);
  });

  test('leave room for the foot, on a further side where there is none', () => {
    expect(packed(blocks(50, 50, 50, 50), room(100, 10))).toEqual([
      [[0], [1]],
      [[2], [3]],
    ]);
  });

  test('never leave a heading at the end of a column', () => {
    const heights = [
      { px: 60, keep: false },
      { px: 20, keep: true },
      { px: 60, keep: false },
    ];
    expect(packed(heights, room(100))).toEqual([[[0], [1, 2]]]);
  });

  test('that are higher than a column have one of their own', () => {
    expect(packed(blocks(10, 300, 10), room(100)).flat(2)).toEqual([0, 1, 2]);
  });

  test('that are none still have a side for the foot', () => {
    expect(packed([], room(100, 10))).toEqual([[[]]]);
  });
});
