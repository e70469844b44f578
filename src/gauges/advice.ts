import type { Rational, Statement } from '../quantity/model.ts';
import { adviceWords } from './advice-words.ts';
import { chordError } from './bore-error.ts';
import { type Clearance, clearanceOf, isForRule } from './clearance.ts';
import { BETWEEN_FACES, fittingGauges, type GapPlace, gaugesBeside } from './fitting.ts';
import { pairOf } from './go-no-go.ts';
import { type Kit, type KitGauge, LEAF_WIDTH_MM } from './kit.ts';
import { type LeafStack, leafStack } from './leaf-stack.ts';

/** What of a kit can measure a gap. */
export interface GaugeAdvice {
  readonly clearance: Clearance;
  readonly place: GapPlace;
  readonly kit: Kit;
  /** Each alone can measure it; nearest to the nominal first. */
  readonly fits: readonly KitGauge[];
  /** The pair that proves stated limits on both sides; null where the kit has no two sizes in them. */
  readonly pair: { readonly go: KitGauge; readonly noGo: KitGauge } | null;
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
  const facts = {
    clearance,
    place,
    kit,
    fits,
    pair: clearance.stated && lowMm && highMm ? pairAmong(fits) : null,
    stack: none && !place.inBore ? leafStack(clearance, kit.gauges) : null,
    nearest: none ? gaugesBeside(clearance, kit, place) : { below: null, above: null },
    isForRule: isForRule(clearance),
    acrossMm: place.inBore ? (error?.low ?? null) : null,
  };
  return { ...facts, text: adviceWords(facts) };
}

/** The smallest and the largest, each by the name that is preferred for its size. */
function pairAmong(fits: readonly KitGauge[]): GaugeAdvice['pair'] {
  const bySize = [...fits].sort((a, b) => a.gauge.mm.compare(b.gauge.mm));
  const { go, noGo } = pairOf(bySize.map(({ gauge }) => gauge));
  const [small, large] = [go, noGo].map((gauge) => bySize.find((each) => each.gauge === gauge));
  return small && large ? { go: small, noGo: large } : null;
}
