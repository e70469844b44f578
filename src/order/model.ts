import type { StateNeed, StateTerm } from '../kinds/model.ts';
import type { Operation } from '../sheet/model.ts';
import type { Span } from '../text/span.ts';

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
  /** Canonical names of the settings that the step prints. */
  readonly values: readonly string[];
}

/** What the walk found at one moment of the work. */
export type OrderFault =
  | {
      readonly kind: 'unmet';
      readonly need: StateNeed;
      readonly at: WorkStep;
      readonly operation: Operation;
      /** What the state was; null where nothing is known. */
      readonly was: PartState | null;
      /** What asks for it: the operation itself, or the condition that a part came into. */
      readonly cause: 'operation' | StateTerm;
      readonly doubtful: boolean;
    }
  | {
      readonly kind: 'too-early';
      readonly operation: Operation;
      readonly first: Operation;
    }
  | {
      readonly kind: 'stage';
      readonly operation: Operation;
      readonly later: Operation;
    }
  | {
      readonly kind: 'disturbed';
      readonly setting: string;
      readonly madeAt: Operation;
      readonly by: Operation;
      readonly span: Span;
      readonly before: 'stage' | 'start' | 'end';
      readonly doubtful: boolean;
    }
  | {
      readonly kind: 'left-open';
      readonly part: string;
      readonly state: PartState;
      readonly home: readonly string[];
      readonly before: 'start' | 'end';
      readonly at: WorkStep | null;
      readonly doubtful: boolean;
    }
  | {
      readonly kind: 'refit';
      readonly part: string;
      readonly change: StateChange;
      /** What had put it in its place, or the start. */
      readonly was: PartState | null;
      readonly at: WorkStep;
    }
  | {
      readonly kind: 'forbidden';
      readonly part: string;
      readonly change: StateChange;
      readonly other: StateTerm;
      readonly was: PartState;
      readonly at: WorkStep;
    };

/** The work of a sheet, walked: every step with the state after it, and the faults in file order. */
export interface Walk {
  readonly steps: readonly { readonly step: WorkStep; readonly after: UnitState }[];
  readonly faults: readonly OrderFault[];
  readonly unknownMarks: readonly UnknownMark[];
}
