import type { ReasonedNeed, StateTerm, Strength } from '../kinds/model.ts';
import type { Operation } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';

/** How a part came to its condition: surely by a mark or by the kind's data, doubtfully by words. */
export type Sureness = 'mark' | 'operation' | 'start' | 'reading';

/** The condition of one part at one moment, and what brought it there. */
export interface PartState {
  readonly condition: string;
  readonly by: Sureness;
  /** The mark, the words or the heading that last changed it; null before any did. */
  readonly span: Span | null;
}

/** The condition of every part that is known; immutable. */
export type UnitState = ReadonlyMap<string, PartState>;

/** A change of one part that a step makes. */
export interface StateChange {
  readonly term: StateTerm;
  readonly by: Sureness;
  readonly span: Span;
  /** The verb group that the words of the step gave, where they gave one: `put-back`. */
  readonly verb: string | null;
  /** Where the words stand that say what a mark states; null where none are understood. */
  readonly saidAt: number | null;
}

/** A mark that names no part or no condition of the kind. */
export interface UnknownMark {
  readonly text: string;
  readonly span: Span;
  readonly operation: number | null;
}

/** One step of the work with what it does, in the order of the file. */
export interface WorkStep {
  readonly operation: Operation;
  /** Index among the operation's steps; -1 for what stands outside its numbered steps. */
  readonly index: number;
  readonly span: Span;
  readonly changes: readonly StateChange[];
  /** Every state that its words say, those too that a mark outranks. */
  readonly says: readonly StateTerm[];
  /** Whether its words see to what is there, and bring nothing about. */
  readonly seesTo: boolean;
  /** Canonical names of the settings that the step prints. */
  readonly values: readonly string[];
  /** Those of them that it only speaks of, and neither measures nor sets. */
  readonly inPassing: ReadonlySet<string>;
  /** Where the first of them is printed; null where none is. */
  readonly valueAt: number | null;
}

/** How grave a fault is: wrong whatever an editor says, doubtful, or worth knowing. */
export type Weight = 'error' | 'warning' | 'note';

/** What the walk found at one moment of the work. */
export type OrderFault =
  | {
      readonly kind: 'unmet';
      readonly weight: Weight;
      readonly need: ReasonedNeed;
      readonly at: WorkStep;
      readonly operation: Operation;
      /** What the state was; null where nothing is known. */
      readonly was: PartState | null;
      /** What asks for it: the operation itself, or the condition that a part came into. */
      readonly cause: 'operation' | StateTerm;
      readonly doubtful: boolean;
      /** The words that alone say that it is met; absent or null where it is not met. */
      readonly onlySaid?: Span | null;
      /** Whether nothing on the sheet that is understood speaks of the part at all. */
      readonly unheard?: boolean;
    }
  | {
      readonly kind: 'misplaced';
      readonly weight: Weight;
      readonly operation: Operation;
      readonly first: Operation;
      readonly because: string;
    }
  | {
      readonly kind: 'too-early';
      readonly weight: Weight;
      readonly operation: Operation;
      readonly first: Operation;
      readonly because: string;
    }
  | {
      readonly kind: 'disturbed';
      readonly weight: Weight;
      readonly setting: string;
      readonly madeAt: Operation;
      readonly by: Operation;
      readonly because: string;
      readonly strength: Strength;
      readonly span: Span;
      readonly before: 'start' | 'end';
      readonly doubtful: boolean;
      /** A step that checks it again without a state that it needs; null where none tries. */
      readonly tried: { readonly at: WorkStep; readonly need: ReasonedNeed } | null;
    }
  | {
      readonly kind: 'left-open';
      readonly weight: Weight;
      readonly part: string;
      readonly state: PartState;
      readonly home: readonly string[];
      readonly before: 'start' | 'end';
      readonly at: WorkStep | null;
      readonly doubtful: boolean;
    }
  | {
      readonly kind: 'refit';
      readonly weight: Weight;
      readonly part: string;
      readonly change: StateChange;
      /** What had put it in its place, or the start. */
      readonly was: PartState | null;
      readonly at: WorkStep;
    }
  | {
      readonly kind: 'forbidden';
      readonly weight: Weight;
      readonly part: string;
      readonly change: StateChange;
      readonly other: StateTerm;
      readonly because: string;
      readonly was: PartState;
      readonly at: WorkStep;
    };

/** The work of a sheet, walked: every step with the state after it, and the faults in file order. */
export interface Walk {
  readonly steps: readonly { readonly step: WorkStep; readonly after: UnitState }[];
  readonly faults: readonly OrderFault[];
  readonly unknownMarks: readonly UnknownMark[];
}
