import type { Dimension } from '../quantity/model.ts';
import type { SignalWord, Stage } from './model.ts';

/** Lists of names of which one at least is needed. */
export type Choices = readonly (readonly string[])[];

/** A kind of unit as its data file holds it, once `kind.schema.json` has passed it. */
export interface KindData {
  readonly 'gaugeleaf-kind': number;
  readonly kind: string;
  readonly title: string;
  /** `['thread']` for a named thread; otherwise dimensions. */
  readonly unit?: Readonly<Record<string, readonly string[]>>;
  readonly 'one-of'?: Choices;
  readonly always?: { readonly settings?: Choices; readonly operations?: Choices };
  readonly interchange?: {
    readonly unit?: readonly string[];
    readonly settings?: readonly string[];
  };
  /** By name of the count: features, each with the number that it says. */
  readonly counts?: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly relations?: readonly RelationData[];
  readonly orders?: readonly OrderData[];
  readonly features?: Readonly<Record<string, FeatureData>>;
  readonly settings: Readonly<Record<string, SettingData>>;
  readonly operations: Readonly<Record<string, OperationData>>;
  readonly hazards?: Readonly<Record<string, HazardData>>;
  readonly parts?: Readonly<Record<string, PartData>>;
  /** By part and condition: what holds there (`cam slow-notch`). */
  readonly states?: Readonly<Record<string, StateData>>;
  /** Why the work of each stage usually stands before that of the next. */
  readonly stages?: Readonly<Record<string, string>>;
  readonly 'in-passing'?: readonly string[];
  readonly 'seen-to'?: readonly string[];
  readonly verbs?: Readonly<Record<string, readonly string[]>>;
  readonly phrases?: Readonly<Record<string, readonly string[]>>;
  readonly 'not-parts'?: readonly string[];
  readonly 'tool-words'?: readonly string[];
  readonly 'increment-words'?: readonly string[];
}

/** A formula of the program, bound to places of a sheet. */
export interface RelationData {
  readonly relation: string;
  readonly of?: string;
  /** Settings that each have the relation for themselves, in place of `of`. */
  readonly each?: readonly string[];
  readonly 'if-feature'?: readonly string[];
  readonly 'unless-feature'?: readonly string[];
  readonly same?: readonly string[];
  readonly silent?: readonly string[];
  readonly quantities: Readonly<Record<string, PlaceData>>;
}

/** Two figures of which one is never more than the other. */
export interface OrderData {
  readonly less: PlaceData;
  readonly more: PlaceData;
  readonly dimension: string;
  readonly because: string;
  readonly strictly?: boolean;
  readonly usually?: boolean;
  readonly 'if-feature'?: readonly string[];
}

/** Where a quantity is said: one of `setting`, `unit`, `thread`, `count`, `edition`, `fixed`, `worked`. */
export interface PlaceData {
  readonly setting?: string;
  readonly key?: string;
  readonly 'at-place'?: string;
  readonly only?: readonly string[];
  readonly unless?: readonly string[];
  readonly unit?: string;
  readonly thread?: string;
  readonly count?: string;
  readonly edition?: string;
  readonly fixed?: string;
  readonly because?: string;
  readonly worked?: string;
}

export interface SettingData {
  readonly label: string;
  readonly aliases?: readonly string[];
  readonly explain: string;
  /** By the way that it is out. */
  readonly symptoms?: Readonly<Record<string, readonly string[]>>;
  readonly dimensions: readonly string[];
  readonly conditions?: readonly string[];
  readonly 'words-and-figure'?: boolean;
  readonly jet?: boolean;
  /** Lowest and highest, as sizes are written, by dimension. */
  readonly usual?: Readonly<Partial<Record<Dimension, readonly string[]>>>;
  readonly 'must-say'?: readonly string[];
  readonly 'said-by'?: Readonly<Record<string, readonly string[]>>;
  readonly thread?: string;
  readonly measured?: string;
  readonly bore?: string;
  readonly sense?: string;
  readonly 'without-feature'?: boolean;
  readonly 'per-barrel'?: boolean;
  readonly needs?: NeedsData;
  readonly 'counted-from'?: NeedsData;
  readonly 'says-state'?: string;
  readonly replaces?: readonly string[];
}

/** What is absent comes from the setting of the same name. */
export interface OperationData {
  readonly label?: string;
  readonly aliases?: readonly string[];
  readonly explain?: string;
  readonly stage: Stage | (string & {});
  readonly settings?: readonly string[];
  readonly 'also-measures'?: readonly string[];
  readonly optional?: boolean;
  readonly hazards?: readonly string[];
  readonly after?: Reasons;
  readonly needs?: NeedsData;
  readonly 'needs-said'?: Readonly<Record<string, string>>;
  readonly leaves?: StatesData;
  readonly disturbs?: Reasons;
  /** The same kinds of rule, where only custom asks for them. */
  readonly usual?: {
    readonly after?: Reasons;
    readonly needs?: NeedsData;
    readonly disturbs?: Reasons;
  };
  readonly steps?: readonly string[];
  readonly drawings?: readonly DrawingData[];
}

/** A drawing and what feeds it, by slot. */
export interface DrawingData {
  readonly shows: string;
  readonly sizes?: Readonly<Record<string, string>>;
  readonly threads?: Readonly<Record<string, string>>;
  readonly choices?: Readonly<Record<string, ChoiceData>>;
  readonly labels?: Readonly<Record<string, string>>;
}

/** Which form of a drawing is taken. */
export interface ChoiceData {
  readonly by?: string;
  readonly when?: Readonly<Record<string, readonly string[]>>;
  readonly otherwise?: string;
}

export interface HazardData {
  readonly label: string;
  readonly aliases?: readonly string[];
  readonly signal: SignalWord | (string & {});
  readonly message: {
    readonly hazard: string;
    readonly consequence: string;
    readonly avoid: string;
  };
}

export interface FeatureData {
  readonly label: string;
  readonly aliases?: readonly string[];
  readonly explain: string;
  readonly excludes?: readonly string[];
  readonly settings?: Choices;
  readonly operations?: Choices;
}

/** By the operation or setting that a rule is about: its reason. */
export type Reasons = Readonly<Record<string, string>>;

/** Parts, each with what it must be, or must not be, and why. */
export type NeedsData = Readonly<Record<string, NeedData>>;

export interface NeedData {
  readonly is?: string | readonly string[];
  readonly not?: string | readonly string[];
  readonly because: string;
  readonly likely?: boolean;
  readonly unless?: StatesData;
  readonly while?: StatesData;
  readonly 'if-said'?: Readonly<Record<string, readonly string[]>>;
  readonly 'unless-stated'?: readonly string[];
  readonly from?: readonly string[];
  readonly again?: boolean;
  readonly 'if-feature'?: readonly string[];
}

/** What holds of a part in one of its conditions. */
export interface StateData {
  readonly says?: string;
  readonly do?: string;
  readonly needs?: NeedsData;
  readonly after?: Reasons;
  readonly disturbs?: Reasons;
  readonly follows?: NeedsData;
  readonly bars?: NeedsData;
  readonly 'comes-from'?: NeedData;
  readonly 'starts-up'?: boolean;
}

/** Parts, each with a condition or a list of which any will do. */
export type StatesData = Readonly<Record<string, string | readonly string[]>>;

export interface PartData {
  readonly label: string;
  readonly aliases?: readonly string[];
  readonly starts?: string;
  readonly 'if-feature'?: readonly string[];
  readonly 'only-if-named'?: boolean;
  readonly home?: readonly string[];
  readonly 'home-at-start'?: boolean;
  readonly reads?: Readonly<Record<string, string>>;
  readonly conditions: Readonly<Record<string, ConditionData>>;
}

export interface ConditionData {
  readonly aliases?: readonly string[];
  readonly 'counts-as'?: readonly string[];
}
