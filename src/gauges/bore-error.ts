import Fraction from 'fraction.js';
import type { Rational } from '../quantity/model.ts';

/** A stretch that surely holds a number which no ratio tells exactly; both ends inclusive. */
export interface Enclosure {
  readonly low: Rational;
  readonly high: Rational;
}

/** Square roots are worked to a billionth of a millimeter, and the ends rounded outward. */
const SCALE = 1_000_000_000n;

/**
 * How much less than the true gap a straight gauge reads that spans a chord of the bore, in mm:
 * R - √(R² - c²/4), for the bore's radius R and the chord c. Null where the chord is longer than the
 * bore is wide: the gauge does not go in.
 *
 * Derivation. Let the gap g be from the plate's edge to the wall, on the line square to the shaft:
 * the edge stands at R - g from the bore's axis. A flat leaf of width c, passed down between them,
 * cannot follow the hollow of the wall: its two borders touch it, each c/2 to the side, where the
 * wall stands at √(R² - (c/2)²) from the plane through the axis. Its other face meets the edge of
 * the plate, which is round the other way, in the middle. The thickest leaf that passes is therefore
 * √(R² - c²/4) - (R - g), less than g by R - √(R² - c²/4). Outside of the bore nothing depends on
 * the plate's angle or on the gap. A thin leaf bends, and is then somewhere between this and no
 * error: whoever asks for safety takes the whole stretch.
 *
 * A round wire or drill spans no chord while it lies along the bore: it touches the wall in one line
 * and the plate's edge at one point, both on the line square to the shaft, and so reads g itself,
 * for any plate that is nowhere hollow and any wire that is thinner than the bore. Leaned in the gap
 * by an angle τ, a length l of it spans the chord l sin τ; laid across the bore, the chord l.
 */
export function chordError(boreMm: Rational, chordMm: Rational): Enclosure | null {
  const radius = boreMm.div(2);
  const half = chordMm.div(2);
  if (half.compare(radius) > 0) return null;
  const root = rootOf(radius.mul(radius).sub(half.mul(half)));
  return { low: radius.sub(root.high), high: radius.sub(root.low) };
}

/** The square root of a number that is not below zero. */
function rootOf(square: Rational): Enclosure {
  const scaled = (square.n * SCALE * SCALE) / square.d;
  const below = integerRoot(scaled);
  const isExact = below * below * square.d === square.n * SCALE * SCALE;
  return {
    low: new Fraction(below, SCALE),
    high: new Fraction(isExact ? below : below + 1n, SCALE),
  };
}

/** The largest integer whose square is not above the number, by Newton's steps from above. */
function integerRoot(number: bigint): bigint {
  if (number < 2n) return number;
  let root = 1n << BigInt((number.toString(2).length + 1) >> 1);
  for (;;) {
    const next = (root + number / root) >> 1n;
    if (next >= root) return root;
    root = next;
  }
}
