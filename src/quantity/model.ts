import type Fraction from 'fraction.js';
import type { GaugeSystem } from '../generated/gauge-systems.ts';

/** An exact rational number. */
export type Rational = Fraction;

/**
 * What a size is a size of. `pressure` is over ambient or absolute, `vacuum` a depression below
 * ambient; the two are never converted into one another. `delivery` is volume per strokes.
 */
export type Dimension =
  | 'length'
  | 'turns'
  | 'angle'
  | 'speed'
  | 'vacuum'
  | 'pressure'
  | 'volume'
  | 'delivery'
  | 'flow'
  | 'mass-flow'
  | 'torque'
  | 'notches'
  | 'time'
  | 'mass'
  | 'force'
  | 'density'
  | 'temperature'
  | 'area'
  | 'percent'
  | 'capacitance'
  | 'resistance'
  | 'voltage'
  | 'current'
  | 'spring-rate'
  | 'sequence'
  | 'condition';

/**
 * The unit every exact value of a dimension is held in: length mm, turns turn, angle degree,
 * speed rpm, vacuum and pressure Pa, volume mL, delivery mL a stroke, flow mL/s, mass flow g/s,
 * torque N·m, time s, mass g, force N, density kg/m³, temperature °C, area mm², percent %,
 * capacitance µF, resistance ohm, voltage V, current A, spring rate N/mm. `notches` count rich as positive, lean as
 * negative. A condition has no number, and a sequence (a firing order) several in their order: its words
 * are the statement's `condition`.
 */
type BaseValue = Rational;

/** Which pressure is meant. `unstated` is settled by the setting that the size belongs to. */
export type PressureReference = 'gauge' | 'absolute' | 'depression' | 'unstated';

export type { GaugeSystem } from '../generated/gauge-systems.ts';

/** The name of a gauge, e.g. `{ system: 'number-drill', name: '29' }`. */
interface GaugeName {
  readonly system: GaugeSystem;
  /** Without the system's own words: `29`, `E`, `13/64`, `3.5 mm`, `4/0`, `0.026 in`. */
  readonly name: string;
}

/** A gauge whose size is known. */
export interface Gauge extends GaugeName {
  /** How a sheet writes it: `No. 29 drill`, `drill E`, `20 AWG`, `22 SWG imperial`. */
  readonly label: string;
  readonly mm: Rational;
  /** Decimal places of an inch or mm that its standard states; null where the name is exact. */
  readonly places: number | null;
  /** The unit that the standard states it in. */
  readonly unit: 'in' | 'mm';
  /** Where the size comes from. */
  readonly source: string;
}

/**
 * What the notation needs to know of gauges. `quantity` has no tables of its own: this arrives as
 * a value from `gauges`.
 */
export interface GaugeBook {
  /** The gauge of that name, or null where the system has no such gauge. */
  find(system: GaugeSystem, name: string): Gauge | null;
  /** All gauges of a system, ascending by size; empty for systems named by size (wire, leaf, pin). */
  all(system: GaugeSystem): readonly Gauge[];
}

/** One number with its unit, as it was written and as it is. */
export interface Amount {
  /** As written, unit included where the unit stood beside it. */
  readonly text: string;
  /** The written number, exactly, in the written unit. */
  readonly number: Rational;
  /** A unit's id in `units.ts`: `in`, `mm`, `thou`, `rpm`, `inHg` ... */
  readonly unit: string;
  /** Decimal places stated; null for a number that is exact (fraction, gauge, count of turns). */
  readonly places: number | null;
  readonly style: 'decimal' | 'integer' | 'fraction' | 'mixed' | 'gauge';
  /** The exact value in the dimension's base unit. */
  readonly base: BaseValue;
  /**
   * The closed stretch of base values that round to what is written; both ends equal `base` for
   * an exact number.
   */
  readonly could: { readonly low: BaseValue; readonly high: BaseValue };
  /** The gauge it was named by, if it was. */
  readonly gauge: Gauge | null;
}

/** One end of a statement's limits. */
export interface Limit {
  readonly base: BaseValue;
  /** The amount that states this limit or, for a tolerance, null: then it was computed. */
  readonly amount: Amount | null;
}

/** Which way a screw, a notch or a timing mark goes from its datum. */
export type Sense = 'out' | 'in' | 'down' | 'up' | 'rich' | 'lean' | 'before' | 'after';

/** One setting as somebody wrote it: a nominal, limits, a sense and a datum, or a condition. */
export interface Statement {
  /** Exactly as written. */
  readonly text: string;
  readonly dimension: Dimension;
  readonly form: 'exact' | 'tolerance' | 'range' | 'min' | 'max' | 'condition';
  /** Null for a range, a one-sided limit stated alone, and a condition. */
  readonly nominal: Amount | null;
  readonly low: Limit | null;
  readonly high: Limit | null;
  /** Whether the writer said `about`, `approximately` or `~`. */
  readonly about: boolean;
  readonly sense: Sense | null;
  /** `seated`, `contact`, `flush` ...: where turns and flats are counted from; null if unsaid. */
  readonly datum: string | null;
  readonly reference: PressureReference | null;
  /** The condition's words in lower case: `parallel`, `just touches`; null for a number. */
  readonly condition: string | null;
  /** Words after a number that say of what it is: `dwell`, `BTDC`, `drill`; as written. */
  readonly qualifier: string | null;
  /** The other systems that a gauge's letters could mean, when more than one does (bare `SWG`). */
  readonly ambiguous: readonly Gauge[];
}

/** Why a text could not be read as a size. Spans are offsets into the text that was passed. */
export interface SizeProblem {
  readonly code:
    | 'empty'
    | 'bare-number'
    | 'no-unit'
    | 'no-such-gauge'
    | 'unknown-unit'
    | 'mixed-dimensions'
    | 'mixed-references'
    | 'zero-denominator'
    | 'too-long'
    | 'limits-inverted'
    | 'unreadable';
  /** One sentence in a restorer's words, with the figure that is wrong. */
  readonly message: string;
  /** How to mend it; null where nothing is known. */
  readonly fix: string | null;
  readonly start: number;
  readonly end: number;
  /** Candidate meanings of a bare number, or the nearest names of an unknown gauge or unit. */
  readonly candidates: readonly string[];
  /** How many of them `fix` names, from the first. */
  readonly offered: number;
}

/** What reading a text comes to: a statement, or the one problem that stands in the way. */
export type Reading =
  | { readonly ok: true; readonly statement: Statement }
  | { readonly ok: false; readonly problem: SizeProblem };

/** The one edit that would make a figure agree. */
export interface Misprint {
  readonly kind:
    | 'swapped-digits'
    | 'exchanged-digits'
    | 'upside-down'
    | 'slipped-point'
    | 'wrong-digit'
    | 'missing-digit'
    | 'extra-digit'
    | 'neighboring-gauge'
    | 'wrong-unit'
    | 'slipped-points'
    | 'missing-whole'
    | 'exchanged-tolerance'
    | 'reversed-fraction'
    | 'wrong-numerator'
    | 'wrong-denominator'
    | 'wrong-system';
  /** What it should probably have been, written as the wrong one was. */
  readonly suggestion: string;
  /** `two digits were swapped`, `the point slipped one place` ... */
  readonly because: string;
}

/** How two statements of one setting stand to one another. */
export type Agreement =
  | { readonly verdict: 'same' }
  | { readonly verdict: 'agrees' }
  /** One is the other with digits dropped instead of rounded; `expected` is the rounded one. */
  | { readonly verdict: 'chopped'; readonly expected: string; readonly which: 'first' | 'second' }
  /** Both could be roundings of one size, but neither is the other converted. */
  | { readonly verdict: 'loose'; readonly expected: string }
  | {
      readonly verdict: 'within-tolerance' | 'disagrees';
      /** The first's size in the second's unit (`0.1360 in`), and the second's figure as written. */
      readonly first: string;
      readonly second: string;
      /**
       * What they differ in: which way (the other sense, the other limit), where they are counted from, a
       * size or a limit of one, only limits beside one size, or words that are no figure.
       */
      readonly by: 'way' | 'datum' | 'size' | 'limits' | 'condition';
      /** The second less the first, e.g. `0.027 in more`; null where there is nothing to say of it. */
      readonly difference: string | null;
      readonly misprint: Misprint | null;
    }
  | { readonly verdict: 'incomparable'; readonly reason: string };
