import type { Dimension } from '../../quantity/model.ts';
import type { SignalWord, Stage, Strength } from '../model.ts';

/** What every entry of a kind's vocabulary has. Plain data throughout, fit for JSON. */
export interface Entry {
  readonly name: string;
  readonly label: string;
  /** Other names that a sheet may call it by. */
  readonly aliases: readonly string[];
}

/** A rule of the order of work, told. */
export interface ToldRule {
  /** The rule behind the thing it is of: `needs the bowl cover off`. */
  readonly says: string;
  readonly strength: Strength;
  readonly because: string;
}

/** What moves a setting: an operation, or a part that comes into a condition. */
export interface Disturber {
  /** The operation's name; null for a part. */
  readonly operation: string | null;
  /** In words, with what the steps have to say for it where that matters. */
  readonly says: string;
  readonly strength: Strength;
  readonly because: string;
}

/** A drawing that stands beside an operation's steps, with the slots that its figures come from. */
export interface ToldDrawing {
  readonly shows: string;
  readonly operation: string;
  /** Names of settings and of sizes of the unit. */
  readonly from: readonly string[];
}

/** Gauges of one family whose own sizes lie within what is usual. */
export interface GaugeRange {
  readonly family: string;
  readonly from: string;
  readonly to: string;
}

export interface SettingEntry extends Entry {
  readonly section: 'setting';
  readonly explain: string;
  readonly dimensions: readonly Dimension[];
  /** Words that it may be stated in. */
  readonly conditions: readonly string[];
  /** Each end inclusive, as written in the kind. */
  readonly usual: readonly {
    readonly dimension: Dimension;
    readonly low: string;
    readonly high: string;
  }[];
  /** Keys that must be said beside the value. */
  readonly mustSay: readonly string[];
  /** Keys besides that formulas of the kind read. */
  readonly maySay: readonly string[];
  /** Words that say a key where they stand behind the value: `of` is said by `crank`. */
  readonly saidBy: readonly { readonly key: string; readonly words: readonly string[] }[];
  readonly symptoms: readonly { readonly way: string; readonly noticed: readonly string[] }[];
  readonly measured: 'gap' | 'in-bore' | 'travel' | null;
  /** Keys of `unit:` that it is worked with. */
  readonly thread: string | null;
  readonly bore: string | null;
  /** Empty where no gauge is put to it, or no range of lengths is usual. */
  readonly gauges: readonly GaugeRange[];
  /** Operations that make it, and that measure it besides. */
  readonly setBy: readonly string[];
  readonly measuredBy: readonly string[];
  readonly needs: readonly ToldRule[];
  readonly disturbedBy: readonly Disturber[];
  /** Features that ask for it, alone or as one of several. */
  readonly askedBy: readonly string[];
  /** Whether every unit of the kind is asked for it, alone or as one of several. */
  readonly always: boolean;
  readonly drawings: readonly ToldDrawing[];
}

export interface OperationEntry extends Entry {
  readonly section: 'operation';
  readonly explain: string;
  readonly stage: Stage;
  readonly settings: readonly string[];
  readonly measures: readonly string[];
  readonly hazards: readonly string[];
  readonly rules: readonly ToldRule[];
  /** States that it leaves by its nature: `throttle on-idle-stop`. */
  readonly leaves: readonly string[];
  /** Model steps, with `:value[...]` and `:state[...]` as a sheet has them. */
  readonly steps: readonly string[];
  readonly drawings: readonly ToldDrawing[];
  readonly askedBy: readonly string[];
  readonly always: boolean;
}

interface ConditionEntry {
  readonly name: string;
  readonly aliases: readonly string[];
  /** Behind the part's label: `on its highest step`. */
  readonly says: string;
  /** The instruction that brings it about; null where only the state can be named. */
  readonly instruction: string | null;
}

export interface PartEntry extends Entry {
  readonly section: 'part';
  readonly conditions: readonly ConditionEntry[];
  /** The condition before the first step; null where nothing can be said. */
  readonly starts: string | null;
  /** Features of which the unit needs one to have it; empty for any unit. */
  readonly ifFeature: readonly string[];
  /** Where it must be at the end; empty for anywhere. */
  readonly home: readonly string[];
  /** Operations that need it in some condition. */
  readonly neededBy: readonly string[];
}

export interface HazardEntry extends Entry {
  readonly section: 'hazard';
  readonly signal: SignalWord;
  readonly message: {
    readonly hazard: string;
    readonly consequence: string;
    readonly avoid: string;
  };
  /** Operations whose steps meet it. */
  readonly metBy: readonly string[];
}

export interface FeatureEntry extends Entry {
  readonly section: 'feature';
  readonly explain: string;
  readonly excludes: readonly string[];
  /** Each entry a list of which one at least must be on the sheet. */
  readonly settings: readonly (readonly string[])[];
  readonly operations: readonly (readonly string[])[];
  /** Parts that are there only with it, or with another of their features. */
  readonly parts: readonly string[];
}

/** A key of `unit:` that carries a size or names a thread. */
export interface UnitEntry {
  readonly section: 'unit';
  readonly name: string;
  readonly dimensions: readonly string[];
  readonly usual: { readonly low: string; readonly high: string } | null;
}

export type KindEntry =
  | SettingEntry
  | OperationEntry
  | PartEntry
  | HazardEntry
  | FeatureEntry
  | UnitEntry;

/** Everything that a kind of unit knows, for whoever writes a sheet of it. */
export interface KindReference {
  readonly kind: string;
  readonly title: string;
  readonly settings: readonly SettingEntry[];
  /** In working order. */
  readonly operations: readonly OperationEntry[];
  readonly parts: readonly PartEntry[];
  readonly hazards: readonly HazardEntry[];
  readonly features: readonly FeatureEntry[];
  /** Features of which each unit has one of each list. */
  readonly oneOf: readonly (readonly string[])[];
  /** What every sheet of the kind has, each entry a list of which one is enough. */
  readonly always: {
    readonly settings: readonly (readonly string[])[];
    readonly operations: readonly (readonly string[])[];
  };
  readonly unit: readonly UnitEntry[];
}
