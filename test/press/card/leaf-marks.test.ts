import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import { describe, expect, test } from 'vitest';
import { overLeaf } from '../../../src/press/card/leaf-marks.ts';
import type { LeafMarks } from '../../../src/press/orders/model.ts';
import { papers } from '../../../src/press/orders/paper.ts';
import { finishPdf } from '../../../src/press/pdf/index.ts';
import { flate } from '../../../src/project/flate.ts';

const hasPoppler = (() => {
  try {
    execFileSync('pdftoppm', ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
})();
if (!hasPoppler) console.warn('Marks on a leaf are not measured: pdftoppm is missing');

/** Two empty pages of A4. */
async function emptyLeaf(): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  for (let page = 0; page < 2; page++) document.addPage([595.276, 841.89]);
  return document.save();
}

const dpi = 600;

/** Whether a leaf is black at a place, in millimeters from the left and the top, within .1 mm. */
async function inkOn(marks: LeafMarks, page: number) {
  const folder = mkdtempSync(join(tmpdir(), 'leaf-'));
  const facts = { title: 'Leaf', author: null, language: 'en', over: overLeaf(papers.a4, marks) };
  const { pdf } = await finishPdf(await emptyLeaf(), facts, flate);
  writeFileSync(join(folder, 'a.pdf'), pdf);
  const range = ['-f', String(page), '-l', String(page), '-singlefile'];
  execFileSync('pdftoppm', ['-gray', '-r', String(dpi), ...range, 'a.pdf', 'a'], { cwd: folder });
  const bytes = readFileSync(join(folder, 'a.pgm'));
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'));
  const width = Number(head?.[1]);
  const start = head?.[0].length ?? 0;
  return (xMm: number, yMm: number): boolean => {
    const reach = Math.floor((0.1 / 25.4) * dpi);
    const [x, y] = [xMm, yMm].map((mm) => Math.round((mm / 25.4) * dpi)) as [number, number];
    for (let down = -reach; down <= reach; down++) {
      for (let across = -reach; across <= reach; across++) {
        if ((bytes[start + (y + down) * width + x + across] ?? 255) < 128) return true;
      }
    }
    return false;
  };
}

describe.skipIf(!hasPoppler)('marks on a leaf of A4', { timeout: 60_000 }, () => {
  const punch: LeafMarks = { punch: 'iso-838', trim: false };

  // ISO 838: holes of 6 mm, 80 mm apart about the middle of 297 mm, 12 mm from the edge.
  test('for two holes are at the left of the front', async () => {
    const ink = await inkOn(punch, 1);
    for (const y of [148.5 - 40, 148.5 + 40]) {
      expect(ink(12, y), `middle at ${y}`).toBe(true);
      for (const [x, down] of [
        [15, 0],
        [9, 0],
        [12, 3],
        [12, -3],
      ] as const) {
        expect(ink(x, y + down), `rim at ${x}, ${y + down}`).toBe(true);
      }
      expect(ink(13.8, y + 1), 'between middle and rim').toBe(false);
      expect(ink(15.4, y), 'outside the rim').toBe(false);
    }
    expect(ink(12, 148.5)).toBe(false);
  });

  test('for two holes are at the right of the back', async () => {
    const ink = await inkOn(punch, 2);
    expect(ink(210 - 12, 148.5 - 40)).toBe(true);
    expect(ink(12, 148.5 - 40)).toBe(false);
  });

  test('for three holes are 4-1/4 in apart and 1/2 in from the edge', async () => {
    const ink = await inkOn({ punch: 'three-hole', trim: false }, 1);
    for (const y of [148.5 - 107.95, 148.5, 148.5 + 107.95])
      expect(ink(12.7, y), `${y}`).toBe(true);
  });

  test('for trimming stand 5 mm in, outside what is kept', async () => {
    const ink = await inkOn({ punch: null, trim: true }, 1);
    for (const x of [5, 205]) expect(ink(x, 2.5), `at the top, ${x}`).toBe(true);
    for (const y of [5, 292]) expect(ink(2.5, y), `at the left, ${y}`).toBe(true);
    expect(ink(7, 5)).toBe(false);
    expect(ink(5, 7)).toBe(false);
  });

  // ISO 838: a hole of 6 mm whose middle is 12 mm from the edge.
  test('are the hole that it hangs by alone, where nobody asked for others', async () => {
    for (const page of [1, 2]) {
      const ink = await inkOn({ punch: null, trim: false }, page);
      for (const [x, y] of [
        [102, 12],
        [108, 12],
        [105, 9],
        [105, 15],
      ] as const) {
        expect(ink(x, y), `${x}, ${y} on ${page}`).toBe(true);
      }
      expect(ink(12, 148.5 - 40 - 3)).toBe(false);
    }
  });
});
