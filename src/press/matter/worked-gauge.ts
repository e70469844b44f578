import {
  adviceWords,
  gaugeAdvice,
  type Kit,
  lengthWords,
  ordinaryKit,
} from '../../gauges/index.ts';
import { gapsOf } from '../../sheet/index.ts';
import type { Setting, Sheet } from '../../sheet/model.ts';

/** What a setting that names no gauge can be measured with: worked, and never the source's word. */
export interface WorkedGauge {
  /** The barrel or place that it is for; null where one value serves all. */
  readonly place: string | null;
  /** `0.035 in wire, held along the bore; go 0.034 in wire, no-go 0.036 in wire`. */
  readonly text: string;
  /**
   * In a bore of known width, what a straight gauge that lies across it would read too little:
   * `laid across the bore, 1/2 in of gauge reads 0.0449 in too little`; null elsewhere.
   */
  readonly caution: string | null;
}

/**
 * What to measure each gap of a setting with, out of the kit; of `gathered`, the gauges that a booklet
 * lists, where they can, so that a page names none that the list has not. Empty where the sheet names a gauge,
 * where the setting is no gap by its kind's word, and where a steel rule does.
 */
export function workedGauges(
  setting: Setting,
  sheet: Sheet,
  kit: Kit | null = null,
  gathered: Kit | null = null,
): readonly WorkedGauge[] {
  return gapsOf(setting, sheet).flatMap(({ statement, place, barrel, isGauged }) => {
    if (isGauged) return [];
    const listed = gathered === null ? null : gaugeAdvice(statement, gathered, place);
    const isListed = listed !== null && (listed.fits.length > 0 || listed.stack?.fits === true);
    const atHand = gaugeAdvice(statement, kit ?? ordinaryKit(), place);
    // A list is of the fewest gauges: nothing has to be made where the whole kit has a pair.
    const advice = isListed ? { ...listed, toMake: atHand?.toMake ?? null } : atHand;
    if (advice === null || (advice.isForRule && advice.fits.length === 0)) return [];
    const { acrossMm, clearance } = advice;
    const caution =
      acrossMm === null
        ? null
        : `laid across the bore, 1/2 in of gauge reads ${lengthWords(acrossMm, clearance.unit)} too little`;
    return [{ place: barrel, text: adviceWords(advice), caution }];
  });
}
