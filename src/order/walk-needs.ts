import type { Kind, ReasonedNeed, StateNeed, StateTerm } from '../kinds/model.ts';
import type { Operation } from '../sheet/model.ts';
import { meets } from './meets.ts';
import type { OrderFault, PartState, Weight, WorkStep } from './model.ts';
import type { PartsNow } from './walk-state.ts';

/** A need that was told, and the state that the part was in then. */
interface Told {
  readonly weight: Weight;
  readonly anyOf: readonly string[];
  readonly was: PartState | undefined;
}

/** Where a need is asked for. */
export interface Asking {
  readonly at: WorkStep;
  readonly operation: Operation;
  /** All steps of that operation. */
  readonly steps: readonly WorkStep[];
  /** What asks: the operation itself, or the condition that a part came into. */
  readonly cause: 'operation' | StateTerm;
}

/** Holds the needs of operations, settings and conditions against the parts as they are. */
export class Needs {
  readonly #kind: Kind;
  readonly #now: PartsNow;
  readonly #faults: OrderFault[];
  readonly #told = new Map<string, Told>();
  /** Whether the sheet marks its work throughout: what is unsaid there is missing. */
  readonly #isMarkedThroughout: boolean;

  constructor(kind: Kind, now: PartsNow, faults: OrderFault[], isMarkedThroughout: boolean) {
    this.#kind = kind;
    this.#now = now;
    this.#faults = faults;
    this.#isMarkedThroughout = isMarkedThroughout;
  }

  /** Whether nothing sure speaks against a need: it is met, lifted, or nothing is known for certain. */
  isBorne(need: ReasonedNeed): boolean {
    const part = this.#kind.parts.get(need.part);
    if (!part || !this.#now.has(part) || this.isLifted(need)) return true;
    return this.#now.isMet(need) || !(this.#now.isSure(need.part) || this.#now.isPlain(need.part));
  }

  /** Tells a need that is not met, once until its part moves; what words said before, they may say. */
  ask(need: ReasonedNeed, asking: Asking): void {
    const part = this.#kind.parts.get(need.part);
    if (!part || !this.#now.has(part) || this.isLifted(need)) return;
    if (this.#now.isMet(need)) {
      this.#hearsay(need, asking);
      return;
    }
    const now = this.#now.get(need.part);
    // Where the last mark does not meet it either, words in between make it no less sure.
    const marked = this.#now.onlyByWords(need.part);
    const isAgreed = marked !== null && marked.by !== 'start' && !this.#now.wouldMeet(need, marked);
    const agreed = isAgreed ? marked : null;
    const was = agreed ?? now;
    const isUnsure = agreed === null && !this.#now.isSure(need.part);
    if (isUnsure && this.#isSaidBefore(need, asking)) return;
    const doubtful = isUnsure && !this.#now.isPlain(need.part);
    const sure = this.#weigh(need, was, doubtful);
    // Words in between that are not understood may have met it.
    const weight = (agreed !== null || isUnsure) && sure === 'error' ? 'warning' : sure;
    if (weight === null) return;
    // A need of custom, once told, does not keep a graver one of the same moment quiet.
    if (this.toldOf(need.part) !== null && this.#told.get(need.part)?.weight !== 'note') return;
    this.#told.set(need.part, { weight, anyOf: need.anyOf, was: now });
    const { at, operation, cause } = asking;
    this.#faults.push({
      kind: 'unmet',
      weight,
      need,
      at,
      operation,
      was: was ?? null,
      cause,
      doubtful,
      unheard: !this.#now.isNamed(need.part),
    });
  }

  /**
   * On a sheet that marks its work throughout, a need that only words meet, while the last mark speaks
   * against it: the step that did it is gone, or its mark is.
   */
  #hearsay(need: ReasonedNeed, { at, operation, cause }: Asking): void {
    if (!this.#isMarkedThroughout || need.strength !== 'hard') return;
    const was = this.#now.onlyByWords(need.part);
    if (was === null || this.#now.wouldMeet(need, was) || this.toldOf(need.part) !== null) return;
    const words = this.#now.get(need.part);
    this.#told.set(need.part, { weight: 'warning', anyOf: need.anyOf, was: words });
    this.#faults.push({
      kind: 'unmet',
      weight: 'warning',
      need,
      at,
      operation,
      was,
      cause,
      doubtful: true,
      onlySaid: words?.span ?? null,
    });
  }

  /** Tells that a part came out of another condition than it should have, whatever it is in now. */
  tell(need: ReasonedNeed, was: PartState, { at, operation, cause }: Asking): void {
    this.#faults.push({
      kind: 'unmet',
      weight: 'warning',
      need,
      at,
      operation,
      was,
      cause,
      doubtful: false,
    });
  }

  /** The conditions that a part was told to need, where nothing has moved it since; else null. */
  toldOf(part: string): readonly string[] | null {
    const told = this.#told.get(part);
    // Every change of a part makes a state of its own: the same object is the same moment.
    return told && told.was === this.#now.get(part) ? told.anyOf : null;
  }

  /** How grave an unmet need is; null for one that says nothing where nothing is known. */
  #weigh(need: ReasonedNeed, was: PartState | undefined, doubtful: boolean): Weight | null {
    // What nothing has brought about yet is unknown, and not wrong; nor is a cover that is off, upright or not.
    if (!doubtful && was !== undefined && !this.#isOneOf(need, was))
      return need.strength === 'hard' ? 'error' : need.strength === 'likely' ? 'warning' : 'note';
    if (was?.by === 'reading') return 'note';
    if (need.strength !== 'hard') return null;
    return this.#isMarkedThroughout ? 'warning' : 'note';
  }

  /** Whether a state leaves it open if a need is met: what is wanted is one way of being so. */
  #isOneOf({ part, anyOf, strength }: ReasonedNeed, { condition }: PartState): boolean {
    const conditions = this.#kind.parts.get(part)?.conditions;
    if (strength === 'likely') return false;
    return anyOf.some((each) => conditions?.get(each)?.countsAs.includes(condition));
  }

  /** Whether the unit is in a state that lifts a need. */
  isLifted({ unless, whileIn }: ReasonedNeed): boolean {
    if (whileIn.some((state) => !this.#now.isMet(state))) return true;
    return unless.some(
      (state) => this.#now.isMet(state) && this.#now.get(state.part)?.by !== 'start',
    );
  }

  /** Whether a step of the operation up to this one speaks of the state: words may say it and go on. */
  #isSaidBefore(need: StateNeed, { at, steps }: Asking): boolean {
    return steps
      .slice(0, steps.indexOf(at) + 1)
      .some(({ changes }) =>
        changes.some(
          ({ term }) =>
            term.part === need.part && meets(this.#kind, term.part, term.condition, need.anyOf),
        ),
      );
  }
}
