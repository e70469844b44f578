import { describe, expect, test } from 'vitest';
import { LineIndex } from '../../src/text/span.ts';

describe('lines and columns', () => {
  const lines = new LineIndex('ab\ncd\r\ne\rf😀g\n');

  test.each([
    [0, 1, 1],
    [2, 1, 3],
    [3, 2, 1],
    [5, 2, 3],
    [7, 3, 1],
    [9, 4, 1],
    [12, 4, 4],
    [14, 5, 1],
    [99, 5, 86],
  ])('offset %i is at %i:%i', (offset, line, column) => {
    expect(lines.place(offset)).toEqual({ line, column });
  });

  test('counts a last empty line', () => expect(lines.count).toBe(5));

  test('knows where a line starts; past the last, where the last does', () => {
    expect([1, 2, 3, 4, 5, 9, 0].map((line) => lines.lineStart(line))).toEqual([
      0, 3, 7, 9, 14, 14, 0,
    ]);
  });

  test('an empty text has one line', () => {
    expect(new LineIndex('').place(0)).toEqual({ line: 1, column: 1 });
  });
});
