import type { Rational } from '../quantity/model.ts';

/**
 * Which rule decides. `guarded`: accepted only where the reading and the gauge's uncertainty
 * together lie inside the limits, a guard band as wide as the expanded uncertainty, w = U (JCGM
 * 106:2012, guarded acceptance). `simple`: the reading alone decides (same guide, simple acceptance).
 */
export type AcceptanceRule = 'guarded' | 'simple';

/** Limits in the unit of the reading; null where that side has none. Both ends conform. */
export interface Limits {
  readonly low: Rational | null;
  readonly high: Rational | null;
}

/**
 * What a gauge told, in one unit. A measured size has two equal ends. Of gauges that go in or do
 * not, the true size lies above `low` and below `high`, neither itself; null is no bound.
 */
export interface ReadingRange {
  readonly low: Rational | null;
  readonly high: Rational | null;
  /** Whether the ends themselves are left out, as they are of go and no-go. */
  readonly open: boolean;
}

/** How far each end of a reading is to be trusted (k = 2): go and no-go may be gauges of two kinds. */
export interface EndUncertainty {
  readonly low: Rational;
  readonly high: Rational;
}

export type Verdict = 'conforms' | 'does not conform' | 'unproven';

/** A reading held against limits. */
export interface Judgment {
  readonly verdict: Verdict;
  /** The limits drawn in by the guard band: a reading from `low` to `high` is accepted. */
  readonly accepted: Limits;
  /** Whether the uncertainty leaves no acceptable reading at all between the two limits. */
  readonly hopeless: boolean;
}

/** Where a measured size stands to the limit that matters to it. */
export interface NearestLimit {
  readonly side: 'low' | 'high';
  readonly limit: Rational;
  /** How far outside of that limit; negative or zero by how much it is inside. */
  readonly beyond: Rational;
}
