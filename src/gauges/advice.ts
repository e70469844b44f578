import type { Rational, Statement } from '../quantity/model.ts';
import { adviceWords } from './advice-words.ts';
import { chordError } from './bore-error.ts';
import { type Clearance, clearanceOf, isForRule } from './clearance.ts';
import { BETWEEN_FACES, fittingGauges, type GapPlace, gaugesBeside } from './fitting.ts';
import { type GaugesToMake, gaugesToMake, pairOf } from './go-no-go.ts';
import { type Kit, type KitGauge, LEAF_WIDTH_MM } from './kit.ts';
import { type LeafStack, leafStack } from './leaf-stack.ts';

/** What of a kit can measure a gap. */
export interface GaugeAdvice {
  readonly clearance: Clearance;
  readonly place: GapPlace;
  readonly kit: Kit;
  /** Each alone can measure it; nearest to the nominal first. */
  readonly fits: readonly KitGauge[];
  /** The pair that proves stated limits on both sides; null where no two of the kit do. */
  readonly pair: { readonly go: KitGauge; readonly noGo: KitGauge } | null;
  /** What would have to be made to prove stated limits on both sides; null where a pair does. */
  readonly toMake: GaugesToMake | null;
  /** Leaves laid together; sought only where no gauge fits, and not in a bore. */
  readonly stack: LeafStack | null;
  /** On either side of the limits, where no gauge fits. */
  readonly nearest: { readonly below: KitGauge | null; readonly above: KitGauge | null };
  /** Whether a steel rule can tell the limits, so that no gauge is missed. */
  readonly isForRule: boolean;
  /** In a bore of known width: what half an inch, the width of an ordinary leaf, reads too little across it. */
  readonly acrossMm: Rational | null;
  /** One line for a card: `0.035 in wire; go 0.034 in wire, no-go 0.036 in wire`. */
  readonly text: string;
}

/**
 * What of a kit can measure the gap that a statement asks for; null where it asks for none.
 * For `0.0185 in` of the ordinary kit the text is `0.016 in and 0.0025 in leaves together`.
 */
export function gaugeAdvice(
  statement: Statement,
  kit: Kit,
  place: GapPlace = BETWEEN_FACES,
): GaugeAdvice | null {
  const clearance = clearanceOf(statement);
  if (clearance === null) return null;
  const { lowMm, highMm } = clearance;
  const fits = fittingGauges(clearance, kit, place);
  const none = fits.length === 0;
  const error = place.boreMm === null ? null : chordError(place.boreMm, LEAF_WIDTH_MM);
  const pair = clearance.stated && lowMm && highMm ? pairAmong(fits, lowMm, highMm, place) : null;
  const facts = {
    clearance,
    place,
    kit,
    fits,
    pair,
    toMake:
      pair === null && clearance.stated && lowMm && highMm ? gaugesToMake(lowMm, highMm) : null,
    stack: none && !place.inBore ? leafStack(clearance, kit.gauges) : null,
    nearest: none ? gaugesBeside(clearance, kit, place) : { below: null, above: null },
    isForRule: isForRule(clearance),
    acrossMm: place.inBore ? (error?.low ?? null) : null,
  };
  return { ...facts, text: adviceWords(facts) };
}

/**
 * The smallest and the largest that prove the limits, each by the name that is preferred for its size. In a
 * bore a leaf reads too little by what nobody knows exactly, so no leaf is of a pair there.
 */
function pairAmong(
  fits: readonly KitGauge[],
  lowMm: Rational,
  highMm: Rational,
  place: GapPlace,
): GaugeAdvice['pair'] {
  const bySize = fits
    .filter(({ widthMm }) => widthMm === null || !place.inBore)
    .sort((a, b) => a.gauge.mm.compare(b.gauge.mm));
  const { go, noGo } = pairOf(
    bySize.map(({ gauge }) => gauge),
    lowMm,
    highMm,
  );
  const [small, large] = [go, noGo].map((gauge) => bySize.find((each) => each.gauge === gauge));
  return small && large ? { go: small, noGo: large } : null;
}
