import { n, type Point } from './pen.ts';

/** From line to line of a hatching, in mm: wide enough that a copy of a copy keeps them apart. */
const PITCH = 1.9;

/**
 * Hatching of cut metal: lines at 45 degrees across an outline, as SVG path data. `lean` tells parts
 * that touch from one another. One outline after another counts as holes in the first. Lines hang on
 * the drawing's own grid, so that parts cut apart by a bore are hatched as one piece.
 */
export function hatching(outlines: readonly (readonly Point[])[], lean: 'right' | 'left'): string {
  const sign = lean === 'right' ? 1 : -1;
  const half = Math.SQRT1_2;
  // Along the lines and across them.
  const across = ({ x, y }: Point) => (x + sign * y) * half;
  const along = ({ x, y }: Point) => (x - sign * y) * half;
  const all = outlines.flat().map(across);
  const lines: string[] = [];
  const first = Math.ceil((Math.min(...all) + 0.3) / PITCH);
  const last = Math.floor((Math.max(...all) - 0.3) / PITCH);
  for (let at = first; at <= last; at++) {
    const level = at * PITCH;
    const crossings: number[] = [];
    for (const outline of outlines) {
      for (let i = 1; i < outline.length; i++) {
        const a = outline[i - 1];
        const b = outline[i];
        if (!a || !b) continue;
        const [from, to] = [across(a) - level, across(b) - level];
        if (from < 0 === to < 0) continue;
        crossings.push(along(a) + ((along(b) - along(a)) * from) / (from - to));
      }
    }
    crossings.sort((a, b) => a - b);
    for (let i = 1; i < crossings.length; i += 2) {
      const [from = 0, to = 0] = [crossings[i - 1], crossings[i]];
      if (to - from < 0.5) continue;
      const point = (s: number) => `${n((level + s) * half)} ${n(sign * (level - s) * half)}`;
      lines.push(`M${point(from)}L${point(to)}`);
    }
  }
  return lines.join('');
}
