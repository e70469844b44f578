import type { KindSetting } from '../../kinds/model.ts';
import { formatDecimal, rational, roundTo } from '../../quantity/index.ts';
import type { Rational } from '../../quantity/model.ts';

/** Base values of a setting's limits, in millimeters; null for a side that has none. */
export interface LengthLimits {
  readonly low: Rational | null;
  readonly high: Rational | null;
}

/** What a paper gauge of a setting is cut to, or why there is none. */
export type PaperVerdict =
  | {
      readonly ok: true;
      /** The end that has to pass; null where the setting has no lower limit. */
      readonly goMm: Rational | null;
      /** The end that must not; null where it has no upper limit. */
      readonly noGoMm: Rational | null;
      readonly errorMm: Rational;
    }
  | {
      readonly ok: false;
      /** In a restorer's words, without the setting's name: settings with the same reason share it. */
      readonly why: string;
    };

/** Two cuts with a knife along a steel rule, each within 1/8 mm of its line; common practice, no source. */
const cutMm = rational('0.25');
/** Paper's own growth and shrinking with the damp of a workshop, along or across; common practice, no source. */
const dampShare = rational('0.002');
/** What a steel rule leaves unseen of the printer's scale: 0.25 mm in the proof bar of 100 mm. */
const scaleShare = rational('0.0025');
/** The least that must be left to hit: what can be told against the light between an edge and a part. */
const leftMm = rational('0.2');
/** Smaller tabs of paper can't be cut and held. */
const leastMm = rational(3);
/** Longer ones bend. */
const mostMm = rational(120);

/**
 * How far a paper gauge may be from the size it was drawn at, in millimeters: the cuts, whatever its
 * size, and of its size what damp and the printer's scale can make of it, added up and not squared:
 * e = 0.25 + (0.002 + 0.0025) L, so 0.27 mm at 5 mm and 0.36 mm at 25 mm. The printer's scale counts with
 * what is left of it once the proof bars were measured and found right.
 */
export function paperErrorMm(sizeMm: Rational): Rational {
  return cutMm.add(sizeMm.mul(dampShare.add(scaleShare)));
}

/**
 * Whether paper will do for a setting, and to what a gauge is then cut. Each end is drawn the whole
 * error e inside its limit, to the hundredth of a millimeter that lies further in, so that a gauge that is
 * as wrong as it can be still lets through nothing that the limits refuse. For 0.2 mm to be left
 * between the two, the limits must be 2 e + 0.2 mm apart: 0.75 mm at 5 mm, 0.93 mm at 25 mm.
 */
export function judgePaper(
  { low, high }: LengthLimits,
  measured: KindSetting['measured'],
): PaperVerdict {
  if (measured === null) return no('no flat gauge goes there');
  if (measured === 'in-bore') {
    return no('a flat gauge that lies across a bore reads too little');
  }
  const most = high ?? low;
  if (most === null) return no('no limits are stated');
  const errorMm = paperErrorMm(most);
  if (low !== null && high !== null) {
    const least = errorMm.mul(2).add(leftMm);
    if (high.sub(low).compare(least) < 0) {
      return no(
        `limits ${formatDecimal(high.sub(low), 2)} mm apart, and paper of that size needs ${formatDecimal(least, 2, 'up')} mm`,
      );
    }
  }
  const goMm = low === null ? null : roundTo(low.add(errorMm), 2, 'up');
  const noGoMm = high === null ? null : roundTo(high.sub(errorMm), 2, 'down');
  const shortest = goMm ?? noGoMm;
  if (shortest !== null && shortest.compare(leastMm) < 0) {
    return no('less than 3 mm of paper cannot be cut and held');
  }
  if (most.compare(mostMm) > 0) return no('more than 120 mm of paper bends');
  return { ok: true, goMm, noGoMm, errorMm };
}

function no(why: string): PaperVerdict {
  return { ok: false, why };
}
