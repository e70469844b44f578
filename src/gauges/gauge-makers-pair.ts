import type { Rational } from '../quantity/model.ts';

/** A fixed pair to be made for two limits, and what its maker may take of them. */
export interface MadePair {
  /** From the lower limit up: the go gauge at its smallest and largest. */
  readonly go: { readonly low: Rational; readonly high: Rational };
  /** From the upper limit down: the no-go gauge at its smallest and largest. */
  readonly noGo: { readonly low: Rational; readonly high: Rational };
}

/**
 * The pair that a gauge maker makes for a gap, in mm: a tenth of the band goes to the gauges, half
 * of it to each, always into the band, so that no gap passes that the limits refuse. The 10 % rule
 * is cited to ASME B89.1.5:1998: for .250 to .254 in, go .2500 +.0002 and no-go .2540 -.0002.
 * Null where the limits leave no band.
 */
export function gaugeMakersPair(lowMm: Rational, highMm: Rational): MadePair | null {
  if (lowMm.compare(highMm) >= 0) return null;
  const share = highMm.sub(lowMm).div(20);
  return {
    go: { low: lowMm, high: lowMm.add(share) },
    noGo: { low: highMm.sub(share), high: highMm },
  };
}
