import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chordError } from '../../src/gauges/index.ts';
import { rational } from '../../src/quantity/index.ts';

/**
 * A section across the bore, worked with points and without the formula: the wall is a circle of
 * radius `r`, the plate's edge an ellipse with half axes `r` along the shaft and `b` across it. The
 * gap is on the line square to the shaft: r - b.
 */
const STEPS = 4000;

/** The thickest flat leaf that goes between the two: where the wall is least far, the edge farthest. */
function thickestLeaf(r: number, b: number, width: number): number {
  let wall = Number.POSITIVE_INFINITY;
  let edge = 0;
  for (let i = 0; i <= STEPS; i++) {
    const y = -width / 2 + (width * i) / STEPS;
    wall = Math.min(wall, Math.sqrt(r * r - y * y));
    edge = Math.max(edge, b * Math.sqrt(1 - (y * y) / (r * r)));
  }
  return wall - edge;
}

/** The thickest round wire along the bore that goes between the two, its center on the line of the gap. */
function thickestWire(r: number, b: number): number {
  const room = (center: number): number => {
    let least = r - center;
    for (let i = 0; i <= STEPS; i++) {
      const turn = -Math.PI / 2 + (Math.PI * i) / STEPS;
      least = Math.min(least, Math.hypot(b * Math.cos(turn) - center, r * Math.sin(turn)));
    }
    return least;
  };
  let [low, high] = [b, r];
  for (let i = 0; i < 60; i++) {
    const [one, other] = [low + (high - low) / 3, high - (high - low) / 3];
    if (room(one) < room(other)) low = one;
    else high = other;
  }
  return 2 * room((low + high) / 2);
}

describe('the error of a gauge in a bore, against geometry worked with points', () => {
  test.each([
    [36, 0.7, 12.7],
    [36.5125, 0.4, 3.175],
    [22.2, 1.5, 6.35],
    [45, 0.2, 20],
  ])('bore %d mm, gap %d mm, leaf %d mm wide', (bore, gap, width) => {
    const r = bore / 2;
    const error = chordError(rational(String(bore)), rational(String(width)));
    const reads = thickestLeaf(r, r - gap, width);
    expect(gap - reads).toBeCloseTo(error?.low.valueOf() ?? Number.NaN, 6);
    // A wire along the bore reads the gap itself.
    expect(thickestWire(r, r - gap)).toBeCloseTo(gap, 4);
  });
});

test('a leaf half an inch wide in a bore of 1-7/16 in reads 0.0464 in less', () => {
  // .71875 - sqrt(.71875² - .25²) = .71875 - sqrt(.4541016) = .71875 - .6738705 in, worked by hand.
  const error = chordError(rational('36.5125'), rational('12.7'));
  expect((error?.low.valueOf() ?? 0) / 25.4).toBeCloseTo(0.71875 - 0.6738706, 6);
});

test('a chord as long as the bore is wide reads its radius less; a longer one does not go in', () => {
  expect(chordError(rational(36), rational(36))).toEqual({ low: rational(18), high: rational(18) });
  expect(chordError(rational(36), rational('36.0001'))).toBeNull();
  expect(chordError(rational(10), rational(6))).toEqual({ low: rational(1), high: rational(1) });
});

test('both ends hold the true error, a billionth of a millimeter apart at most', () => {
  const size = fc.integer({ min: 1, max: 200_000 });
  fc.assert(
    fc.property(size, size, (one, other) => {
      const bore = rational(Math.max(one, other), 1000);
      const chord = rational(Math.min(one, other), 1000);
      const error = chordError(bore, chord);
      if (error === null) throw new Error('no chord');
      expect(error.high.sub(error.low).compare(rational(1, 1_000_000_000))).toBeLessThanOrEqual(0);
      // R - e is the root: its square lies on either side of R² - c²/4, exactly.
      const radius = bore.div(2);
      const square = radius.mul(radius).sub(chord.mul(chord).div(4));
      const [over, under] = [radius.sub(error.low), radius.sub(error.high)];
      expect(under.mul(under).compare(square)).toBeLessThanOrEqual(0);
      expect(over.mul(over).compare(square)).toBeGreaterThanOrEqual(0);
    }),
  );
});
