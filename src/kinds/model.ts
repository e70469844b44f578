import type { Dimension, Rational, Sense, Statement } from '../quantity/model.ts';
import type { KindDrawing } from './drawings.ts';

/** ANSI Z535.6 signal words, in falling order of harm. */
export type SignalWord = 'danger' | 'warning' | 'caution' | 'notice';

/**
 * Where in the work an operation usually stands; nothing of a later stage before an earlier one.
 * `any` is for headings that are no work (how to tell the unit, gauges, notes) and stand anywhere.
 */
export type Stage = 'strip' | 'bench' | 'before-start' | 'running' | 'road' | 'any';

/** One setting in a kind's vocabulary. */
export interface KindSetting {
  readonly name: string;
  readonly label: string;
  readonly aliases: readonly string[];
  /** What it is and what goes wrong when it is out: hover text, `draft` and the booklet use it. */
  readonly explain: string;
  /** What is noticed when it is out, by the way that it is out (`too high`); empty for nothing known. */
  readonly symptoms: ReadonlyMap<string, readonly string[]>;
  /** The dimensions it may be stated in; `condition` where words are enough. */
  readonly dimensions: readonly Dimension[];
  /** The conditions it may be stated as, where `condition` is among the dimensions. */
  readonly conditions: readonly string[];
  /** Whether a condition and a figure belong together: a level told by a mark and by its depth. */
  readonly wordsAndFigure: boolean;
  /** Whether it is a jet, which its maker may name by a number alone. */
  readonly jet: boolean;
  /** The range that ordinary units keep to, each end inclusive; null where nothing is usual. */
  readonly usual: readonly UsualRange[];
  /** Keys that must be said beside the value (`at`, `gasket` ...), with what each may say. */
  readonly mustSay: readonly string[];
  /** Other words that say one of those keys: a pump link's `hole` says which link. */
  readonly saidBy: ReadonlyMap<string, readonly string[]>;
  /** The key of `unit:` that names the thread of its screw; null where no screw of the unit makes it. */
  readonly thread: string | null;
  /**
   * How a gauge is put to it: passed between faces, or between a plate's edge and a bore, or held beside
   * a travel; null where none is.
   */
  readonly measured: 'gap' | 'in-bore' | 'travel' | null;
  /** The key of `unit:` that says how wide the bore is; null where it is not in one, or in none that is told. */
  readonly bore: string | null;
  /** Which way it is counted from its datum; null where both ways are usual. */
  readonly sense: Sense | null;
  /** The state that it is measured in, whichever operation measures it. */
  readonly needs: readonly ReasonedNeed[];
  /** The conditions out of which parts come into where it is counted to: first contact, for a stop screw. */
  readonly countedFrom: readonly ReasonedNeed[];
  /** The part whose condition its own value names (`bottomed and clamped`); null for none. */
  readonly saysState: string | null;
  /** Settings that are of no more account once this one is made: static timing, once the engine is timed running. */
  readonly replaces: readonly string[];
  /** What its rows are, where it is a table of figures by station; null for a setting of one figure. */
  readonly curve: KindCurve | null;
  /** What its figure is the sum of; null for a figure of its own. */
  readonly sum: KindSum | null;
  /** Whether every barrel gets the same unless the sheet says otherwise. */
  readonly perBarrel: boolean;
  /** Whether a unit may have it that has none of the features which ask for it. */
  readonly withoutFeature: boolean;
}

/** Words by which a figure is told in another measure: crank degrees beside those of a distributor. */
export interface KindScale {
  readonly words: readonly string[];
  /** How many of that measure are one of this. */
  readonly times: Rational;
  /** Features with which both measures are one. */
  readonly unlessFeature: readonly string[];
}

/** A setting that states a point of a curve. */
interface CurvePoint {
  readonly setting: string;
  /** The key beside its value that says the station; null where `stationOf` does, or where it begins. */
  readonly key: string | null;
  readonly stationOf: string | null;
  /** Whether its value is the station at which the curve leaves nothing. */
  readonly begins: boolean;
}

/** A setting that is a table: what stands at each station, straight lines between. */
export interface KindCurve {
  /** The dimensions of a station. */
  readonly against: readonly Dimension[];
  /** What a station is, in running text. */
  readonly label: string;
  readonly course: 'rising' | 'falling' | 'any';
  /** What a station may be on any unit; null where nothing bounds it. */
  readonly within: UsualRange | null;
  readonly scale: KindScale | null;
  /** The setting that no row is more than, and why; null for none. */
  readonly below: { readonly setting: string; readonly because: string } | null;
  readonly points: readonly CurvePoint[];
}

/** What a figure is the sum of. */
export interface KindSum {
  readonly scale: KindScale | null;
  readonly parts: readonly {
    /** The first of these that the sheet has counts. */
    readonly settings: readonly string[];
    readonly times: Rational;
    /** The key that says the station of a curve; null for a setting of one figure. */
    readonly key: string | null;
    readonly stationTimes: Rational;
  }[];
}

/** An ordinary range of a setting, in one dimension. A statement's nominal and limits lie inside. */
export interface UsualRange {
  readonly dimension: Dimension;
  readonly low: Statement;
  readonly high: Statement;
}

/** One operation in a kind's vocabulary: what a `##` heading names. */
export interface KindOperation {
  readonly name: string;
  readonly label: string;
  readonly aliases: readonly string[];
  readonly explain: string;
  readonly stage: Stage;
  /** Settings that this operation makes. */
  readonly settings: readonly string[];
  /** Settings of others that it measures too, in a state of its own: the dwell, on a machine. */
  readonly alsoMeasures: readonly string[];
  /** Whether only some papers print its settings: no unit is drafted with it unless a setting of it is there. */
  readonly optional: boolean;
  /** Hazards met by its steps. */
  readonly hazards: readonly string[];
  /** Operations that it has to follow, hard rules before custom, without what follows from them. */
  readonly after: readonly OrderRule[];
  /** Every operation that comes before it where both are on the sheet, also by way of others. */
  readonly before: ReadonlyMap<string, OrderRule>;
  /** The state that must hold when its setting is measured, or at its last step if it has none. */
  readonly needs: readonly ReasonedNeed[];
  /** Parts whose needed condition the setting names under a key of another name than the part's. */
  readonly needsSaid: ReadonlyMap<string, string>;
  /** The state that it leaves by its nature; `own` where the sheet itself says so. */
  readonly leaves: readonly (StateTerm & { readonly own?: true })[];
  /** Settings that the work moves, so that each must be made or checked again. */
  readonly disturbs: readonly OrderRule[];
  /** By setting: words of which its steps hold one where the setting is moved; without them it is custom. */
  readonly disturbsSaid: ReadonlyMap<string, readonly string[]>;
  /** Parts of which the sheet says, with a reason, that nothing is needed of them here. */
  readonly without: ReadonlySet<string>;
  /**
   * Model steps that `draft` writes. `{setting}` stands for `:value[...]` of the operation's one
   * setting, `{idle-stop}` for that of a named one; a step that names a setting which the sheet
   * has no use for is left out.
   */
  readonly steps: readonly string[];
  /** Line drawings that stand beside its steps. */
  readonly drawings: readonly KindDrawing[];
}

export interface KindHazard {
  readonly name: string;
  readonly label: string;
  readonly aliases: readonly string[];
  readonly signal: SignalWord;
  /** Kind of hazard, consequence, how to avoid it: the three parts of a safety message, and the last of them in short. */
  readonly message: {
    readonly hazard: string;
    readonly consequence: string;
    readonly avoid: string;
    /** How to avoid it in one imperative of a few words. */
    readonly imperative: string;
  };
  /** Words of a step that meets it; empty where any step of its operations may. */
  readonly metBy: readonly string[];
}

export interface KindFeature {
  readonly name: string;
  readonly label: string;
  readonly aliases: readonly string[];
  readonly explain: string;
  /** Features that cannot stand beside it. */
  readonly excludes: readonly string[];
  /** Each entry is a list of settings of which one at least must be on the sheet. */
  readonly settings: readonly (readonly string[])[];
  /** Each entry is a list of operations of which one at least must be on the sheet. */
  readonly operations: readonly (readonly string[])[];
}

/** A part in a condition: `throttle shut`. */
export interface StateTerm {
  readonly part: string;
  readonly condition: string;
}

/** A part in any of some conditions. */
export interface StateNeed {
  readonly part: string;
  readonly anyOf: readonly string[];
}

/**
 * How strong a rule is. `hard`: a part in the way, a state that a measurement needs, a setting that is
 * moved. `likely`: so on nearly every unit; a warning at most. `usual`: custom; a note at most.
 */
export type Strength = 'hard' | 'likely' | 'usual';

/** A rule about another operation or setting, with its reason in words. */
export interface OrderRule {
  readonly name: string;
  readonly because: string;
  readonly strength: Strength;
  /** Whether the sheet itself says so: then it is kept whatever the walk finds. */
  readonly own?: true;
}

/** A need with its reason, and where it does not hold. */
export interface ReasonedNeed extends StateNeed {
  /** Conditions that do not do, though they count as one that would. */
  readonly noneOf: readonly string[];
  readonly because: string;
  readonly strength: Strength;
  /** States of which each lifts the need: an engine need not run while a machine turns the unit. */
  readonly unless: readonly StateNeed[];
  /** States in which alone the need holds; empty for always. A gear matters while the engine runs. */
  readonly whileIn: readonly StateNeed[];
  /** Keys beside the setting's value with words of which one must stand there for the need to hold; empty for always. */
  readonly ifSaid: ReadonlyMap<string, readonly string[]>;
  /** Measures that lift the need where the setting is stated in them: a height is read at rest. */
  readonly unlessStated: readonly Dimension[];
  /** Words of which the operation's steps must hold one for the need to hold; empty for always. */
  readonly ifWords: readonly string[];
  /** Whether what is measured begins in the state and goes on to another. */
  readonly begins: boolean;
}

/** A state that follows from another by itself. */
export interface Following extends StateTerm {
  /** Conditions of the part out of which it comes so; empty for any. */
  readonly from: readonly string[];
  /** Whether a mark brings it about even where its own part stands so already. */
  readonly again: boolean;
  /** Features of which the unit needs one; empty for any unit. */
  readonly ifFeature: readonly string[];
  readonly because: string;
}

export interface PartCondition {
  readonly name: string;
  readonly aliases: readonly string[];
  /** Conditions of the same part that it also meets. */
  readonly countsAs: readonly string[];
  /** How a sentence says it behind the part's label: `on its slow step`. */
  readonly says: string;
  /** The instruction that brings it about; null where only the state can be named. */
  readonly instruction: string | null;
  /** What must hold when the part comes into it. */
  readonly needs: readonly ReasonedNeed[];
  /** Operations done before the part comes into it, where the sheet has them. */
  readonly after: readonly OrderRule[];
  /** Conditions of its own part out of which it comes; null for any. */
  readonly comesFrom: ReasonedNeed | null;
  /** Settings lost by bringing the part into it. */
  readonly disturbs: readonly OrderRule[];
  /** States of other parts that follow by themselves. */
  readonly follows: readonly Following[];
  /** States of other parts that cannot be while it holds. */
  readonly bars: readonly ReasonedNeed[];
  /** Coming into it starts the engine: all parts must be home and nothing disturbed. */
  readonly startsUp: boolean;
}

/** Something whose condition the work changes. It is in one condition at a time. */
export interface KindPart {
  readonly name: string;
  readonly label: string;
  readonly aliases: readonly string[];
  /** Before the first step; null where nothing can be said. */
  readonly starts: string | null;
  /** The part is there only on a unit with one of these features; empty: always. */
  readonly ifFeature: readonly string[];
  /** Units have it or not, and no feature says so: it is there where the sheet speaks of it. */
  readonly onlyIfNamed: boolean;
  /** What words say of it counts where no mark of the sheet speaks of it. */
  readonly wordsCount: boolean;
  /** Where it must be when the engine is started and at the end; empty: anywhere. */
  readonly home: readonly string[];
  /** Whether it must be there when the engine is started, and not only at the end. */
  readonly homeAtStart: boolean | 'later';
  /** Verb group to the condition it leaves the part in. */
  readonly reads: ReadonlyMap<string, string>;
  readonly conditions: ReadonlyMap<string, PartCondition>;
}

/** Where a sheet says a quantity of a relation. */
export type BoundPlace =
  | {
      readonly is: 'setting';
      readonly setting: string;
      /** The key beside the value that says it; null for the value itself. */
      readonly key: string | null;
      /** The one of the setting's places that it is said for; null for any. */
      readonly atPlace: string | null;
      /** Words of which one must stand behind the figure; empty for any figure. */
      readonly only: readonly string[];
      /** Words behind the figure that make it a figure of something else. */
      readonly unless: readonly string[];
    }
  | { readonly is: 'unit'; readonly name: string }
  /** The pitch of a setting's screw, or of a thread of the unit. */
  | { readonly is: 'thread'; readonly name: string }
  | { readonly is: 'count'; readonly name: string }
  | { readonly is: 'edition'; readonly name: 'altitude' }
  | { readonly is: 'fixed'; readonly text: string; readonly because: string }
  /** A figure that no sheet states; relations of one kind hand it on by its name. */
  | { readonly is: 'worked'; readonly name: string };

/** A formula and the places of a sheet that its quantities are said in. */
export interface KindBinding {
  /** The relation's id. */
  readonly relation: string;
  /** The setting that a worked figure stands beside and that a finding is about. */
  readonly of: string;
  /** The relation holds only on a unit with one of these features; empty: always. */
  readonly ifFeature: readonly string[];
  /** Features on which it does not hold. */
  readonly unlessFeature: readonly string[];
  /** Keys that must say the same beside all the settings that take part. */
  readonly same: readonly string[];
  /** Quantities that no note asks for. */
  readonly silent: readonly string[];
  /** By the quantity's name; a quantity that is left out is unsaid. */
  readonly quantities: ReadonlyMap<string, BoundPlace>;
}

/** Two figures of a sheet of which the first is never more than the second. */
export interface KindOrder {
  readonly less: BoundPlace;
  readonly more: BoundPlace;
  readonly dimension: Dimension;
  /** Why, as a clause. */
  readonly because: string;
  /** Whether they cannot be equal either. */
  readonly strictly: boolean;
  /** Whether some unit may have it the other way round. */
  readonly usually: boolean;
  /** It holds only on a unit with one of these features; empty: always. */
  readonly ifFeature: readonly string[];
}

/** What of a kind is worked from what: a sheet that states all of it proves itself. */
export interface KindRelations {
  /** Numbers that features say: by the count's name, then by the feature's. */
  readonly counts: ReadonlyMap<string, ReadonlyMap<string, number>>;
  readonly bindings: readonly KindBinding[];
  readonly orders: readonly KindOrder[];
}

/** A kind of unit: its vocabulary, as read from a data file. All names are kebab-case. */
export interface Kind {
  readonly name: string;
  readonly title: string;
  readonly features: ReadonlyMap<string, KindFeature>;
  /** One at least of each entry stands among a unit's features. */
  readonly oneOf: readonly (readonly string[])[];
  readonly settings: ReadonlyMap<string, KindSetting>;
  /** In working order. */
  readonly operations: ReadonlyMap<string, KindOperation>;
  /** Why work of each stage usually stands before that of the next; a stage without is not held to it. */
  readonly stages: ReadonlyMap<Stage, string>;
  /** Words around a printed setting by which a step neither measures nor sets it. */
  readonly inPassing: readonly string[];
  /** Words by which a step sees to a state and does not bring it about. */
  readonly seenTo: readonly string[];
  readonly hazards: ReadonlyMap<string, KindHazard>;
  /** Settings and operations that every unit of the kind needs, each entry a list of choices. */
  readonly always: {
    readonly settings: readonly (readonly string[])[];
    readonly operations: readonly (readonly string[])[];
  };
  /** Keys of `unit:` and settings that are the same on units of which either serves one engine. */
  readonly interchange: ReadonlySet<string>;
  readonly relations: KindRelations;
  readonly parts: ReadonlyMap<string, KindPart>;
  /** Verb groups; `take ~ off` allows words in between, `~ shut` is what a part does by itself. */
  readonly verbs: ReadonlyMap<string, readonly string[]>;
  /** Phrases that say a state by themselves; `...` stands for up to seven words, `{idle-stop}` for a step that prints it. */
  readonly phrases: readonly { readonly says: readonly string[]; readonly state: StateTerm }[];
  /** Names that hold a part's name and are something else. */
  readonly notParts: readonly string[];
  /** Words that, after a size in prose, make it the size of a tool or supply (`wrench`, `hose`). */
  readonly toolWords: readonly string[];
  /** Words that make a number in prose a step size and not a setting (`at a time`, `each`). */
  readonly incrementWords: readonly string[];
  /** Keys of `unit:` that carry a size (`throttle-bore`), with their dimensions. */
  readonly dimensionsOfUnit: ReadonlyMap<string, readonly Dimension[]>;
  /** What the text calls the things that a count tells (`lobes`), in the plural. */
  readonly countWords: ReadonlyMap<string, readonly string[]>;
  /** The ranges that those sizes keep to on ordinary units, by their names. */
  readonly usualOfUnit: ReadonlyMap<string, UsualRange>;
  /** Keys of `unit:` that name a screw thread (`idle-needle-thread`). */
  readonly threadsOfUnit: ReadonlySet<string>;
  /** A name or alias, in any case and spacing (`Choke Pull-Down`), to the name; null if unknown. */
  settingNamed(text: string): KindSetting | null;
  operationNamed(text: string): KindOperation | null;
  hazardNamed(text: string): KindHazard | null;
  featureNamed(text: string): KindFeature | null;
  partNamed(text: string): KindPart | null;
  /** The part that a text begins with, by the longest of its names that does. */
  partBegun(text: string): KindPart | null;
  /** The name of the part's condition that a text names. */
  conditionNamed(text: string, part: KindPart): string | null;
  /**
   * The state that a mark's text names: a part, then a condition (`gasket off`, `cam on the highest step`,
   * `fast idle cam: highest step`); of the words between, small ones may be left out or put in.
   */
  stateNamed(text: string): StateTerm | null;
  /** Every way to write a state, for the nearest to a misspelt one. */
  stateNames(): readonly string[];
}
