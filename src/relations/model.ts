import type { Dimension } from '../quantity/model.ts';

/**
 * A closed stretch of numbers, both ends finite, `lo` not above `hi`. Whatever is worked from a
 * stretch is rounded outward, so that no value inside it is ever lost.
 */
export interface Interval {
  readonly lo: number;
  readonly hi: number;
}

/**
 * What a relation's numbers are sizes of. In the base unit of the dimension (mm, degree, Pa ...),
 * `ratio` a plain number, `mass-flow` g/s, `force` N.
 */
export type RelationDimension = Dimension | 'ratio' | 'mass-flow' | 'force';

/** One of the quantities that a relation ties together. */
export interface RelationQuantity {
  /** kebab-case, as a kind's data binds it: `closed-angle`. */
  readonly name: string;
  /** In running text: `closed angle`. */
  readonly label: string;
  /** In the formula: `ψ₀`. */
  readonly symbol: string;
  readonly dimension: RelationDimension;
  /** Of a pressure: that it is counted from nothing, as a barometer's. All others are over or below ambient. */
  readonly absolute?: boolean;
  /**
   * The most decimal places that it is told to, in whatever unit, where the formula or the reader's
   * gauge is good for no more; absent where its inputs alone decide.
   */
  readonly places?: number;
  /**
   * What is taken where nothing is said of it, with the words that own up to it (`no shaft in the
   * bore`); null where the relation says nothing without it.
   */
  readonly unsaid: { readonly value: Interval; readonly words: string } | null;
}

/** The known quantities of a relation, by name. */
export type Known = ReadonlyMap<string, Interval>;

/** A formula that does not hold for the figures at hand, told in a restorer's words. */
export interface Unworkable {
  readonly unworkable: {
    /**
     * One sentence; `{name}` stands for a quantity's figure as the sheet has it: `{angle} is below
     * the {closed-angle} at which the plate closes`.
     */
    readonly message: string;
    /** How to mend it, with the same placeholders. */
    readonly fix: string;
    /** The quantities that take part, the one to look at first in front. */
    readonly of: readonly [string, ...string[]];
  };
}

export type Worked = Interval | Unworkable;

/**
 * How a stated figure stands to the worked one: `equals` (their stretches meet), `at-most` or
 * `at-least` (the worked one is a bound of it).
 */
export type Hold = 'equals' | 'at-most' | 'at-least';

/** One way to solve a relation: which quantity comes of which others. */
export interface Solution {
  readonly for: string;
  /** The quantities it needs; each is known, or has an `unsaid`. */
  readonly from: readonly string[];
  readonly hold: Hold;
  /** Whether the result is worth showing when nobody states it; a bound or a check alone is not. */
  readonly offer: boolean;
  /**
   * The figures and what they come to, in words: `{turns} of {pitch} is {worked}`, each name standing
   * for its figure as the sheet has it; without it the figures are listed. It may depend on the
   * point figures where a number that nobody wrote explains the result.
   */
  readonly told?: string | ((known: Known) => string);
  /**
   * Pure; never NaN, never throws for figures that the dimension allows. Where the figures leave the
   * formula's range it says so instead.
   */
  readonly solve: (known: Known) => Worked;
}

/** A relation between sizes: data about a formula, and the formula each way it can be turned. */
export interface Relation {
  /** kebab-case: `screw-travel`. */
  readonly id: string;
  readonly title: string;
  /** As it is printed, in symbols: `travel = turns × pitch`. */
  readonly formula: string;
  readonly quantities: readonly RelationQuantity[];
  /** Where the formula comes from. */
  readonly source: string;
  /** What must be so for it to hold, a sentence each. */
  readonly assumptions: readonly string[];
  /** Where it stops being valid, in words and symbols. */
  readonly range: string;
  readonly solutions: readonly Solution[];
}

/** Whether a result is no number but the reason why there is none. */
export function isUnworkable(worked: Worked): worked is Unworkable {
  return 'unworkable' in worked;
}
