import { expect, test } from 'vitest';
import { FoldStrips } from '../../../src/press/pdf/fold-strips.ts';
import type { PartPage } from '../../../src/press/pdf/part.ts';
import type { PdfWriter } from '../../../src/press/pdf/write.ts';

function stripsOf(strip: readonly [number, number] | null) {
  const written: string[] = [];
  const writer = {
    add: (_: string, bytes: Uint8Array) => written.push(Buffer.from(bytes).toString('latin1')),
  } as unknown as PdfWriter;
  return { strips: new FoldStrips(strip, writer), written };
}

const page = { width: 400, height: 600 } as PartPage;

test('the fold is at the left of right pages and at the right of left ones', () => {
  const { strips, written } = stripsOf([20, 30]);
  // The first page is a right one. Even-odd: what lies in both rectangles is not drawn.
  expect(strips.take(0, page)).toEqual([1]);
  expect(written[0]).toBe('0 0 400 600 re 20 0 10 600 re W* n\n');
  expect(strips.take(1, page)).toEqual([2]);
  expect(written[1]).toBe('0 0 400 600 re 370 0 10 600 re W* n\n');
});

test('is written once for all pages of a side, and not at all without a strip', () => {
  const { strips, written } = stripsOf([20, 30]);
  for (let at = 0; at < 8; at++) strips.take(at, page);
  expect(written).toHaveLength(2);
  expect(stripsOf(null).strips.take(0, page)).toEqual([]);
});
