import type { Dimension, Rational, Statement } from '../quantity/model.ts';
import type { PlacedSize, Setting, Source } from '../sheet/model.ts';

/** A stretch of numbers, in floating point: statistics prove nothing exactly. */
export interface Stretch {
  readonly low: number;
  readonly high: number;
}

/** What follows from some readings; all in their unit. */
export interface Statistics {
  readonly n: number;
  readonly least: Rational;
  readonly most: Rational;
  readonly mean: Rational;
  /** Of three readings or more; null of fewer, of which only the range says anything. */
  readonly spread: {
    /** s², the sum of squares over n - 1. */
    readonly variance: Rational;
    /** s, the standard deviation. */
    readonly deviation: number;
    /** s over the root of n, the standard uncertainty of the mean (JCGM 100:2008, 4.2.3). */
    readonly uncertainty: number;
    /** What the true mean can be: mean ∓ t u, 95 % (JCGM 100:2008, G.3.2). */
    readonly mean95: Stretch;
    /** What holds 90 % of all such units at 95 % confidence: mean ∓ k s (ISO 16269-6). */
    readonly units90: Stretch;
    /** Grubbs' test for one outlier, two-sided 5 % (ASTM E178); null below four, where it is nearly blind. */
    readonly grubbs: {
      readonly g: number;
      readonly critical: number;
      /** Which reading it takes for an outlier, from 0; null for none. */
      readonly outlier: number | null;
    } | null;
  } | null;
}

/** One reading that could be summed. */
export interface SampleReading {
  readonly size: PlacedSize;
  readonly statement: Statement;
  /** In the unit of the sample. */
  readonly number: Rational;
  /** Half of the last place that it is written to, in the unit of the sample; zero where it is exact. */
  readonly half: Rational;
  /** The bench record that it comes from, as the sheet names it; null for one of the sheet's own list. */
  readonly record: string | null;
}

/** Why a reading is not summed with its fellows. */
export interface UnlikeReading {
  readonly size: PlacedSize;
  /** `vague`: it is no single figure; `other`: it is told of something else than the first. */
  readonly why: 'vague' | 'other';
  readonly dimension: Dimension;
  readonly first: string | null;
}

/** What one source read of one setting. */
export interface Sample {
  readonly source: Source;
  /** As the source names it; the setting's id. */
  readonly name: string;
  readonly id: string;
  /** Null where the sheet states no such setting. */
  readonly setting: Setting | null;
  readonly dimension: Dimension;
  /** The id of the unit that most of its readings are written in. */
  readonly unit: string;
  /** The most decimal places that a reading states in it; null where all are exact. */
  readonly places: number | null;
  readonly readings: readonly SampleReading[];
  readonly unlike: readonly UnlikeReading[];
  readonly statistics: Statistics;
}

/** The sheet's own figure beside what was measured; numbers in the unit of the sample. */
export interface PrintedFigure {
  /** The figure, or the middle of two limits; null for one limit alone, words or nothing. */
  readonly value: Rational | null;
  readonly low: Rational | null;
  readonly high: Rational | null;
  readonly statement: Statement;
}
