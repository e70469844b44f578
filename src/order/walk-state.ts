import type {
  Following,
  Kind,
  KindPart,
  PartCondition,
  StateNeed,
  StateTerm,
} from '../kinds/model.ts';
import type { Sheet } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';
import { meets } from './meets.ts';
import type { PartState, StateChange, Sureness, UnitState, WorkStep } from './model.ts';

/** A need as far as a state can meet it. */
type Wanted = StateNeed & { readonly noneOf?: readonly string[] };

/** The condition of every part of one unit, as the walk goes on. */
export class PartsNow {
  readonly #kind: Kind;
  readonly #features: ReadonlySet<string>;
  readonly #marked = new Set<string>();
  readonly #named = new Set<string>();
  readonly #state = new Map<string, PartState>();
  /** As `#state`, by marks alone. */
  readonly #byMarks = new Map<string, PartState>();

  /** Every part that the unit has, as it starts; `steps` tell which parts the sheet marks anywhere. */
  constructor(sheet: Sheet, kind: Kind, steps: readonly WorkStep[]) {
    this.#kind = kind;
    this.#features = new Set(sheet.unit.features.map(({ id }) => id));
    for (const { changes } of steps) {
      for (const { term, by } of changes) {
        this.#named.add(term.part);
        if (by === 'mark') this.#marked.add(term.part);
      }
    }
    for (const part of kind.parts.values()) {
      if (part.starts !== null && this.has(part))
        this.set({ part: part.name, condition: part.starts }, 'start', null);
    }
  }

  /** The part as it is; undefined where nothing is known. */
  get(part: string): PartState | undefined {
    return this.#state.get(part);
  }

  /** Every part that is known, with its state. */
  entries(): Iterable<readonly [string, PartState]> {
    return this.#state;
  }

  /** All parts as they are at this moment; later changes leave it as it is. */
  copy(): UnitState {
    return new Map(this.#state);
  }

  /** Whether the unit has the part at all. */
  has({ name, ifFeature, onlyIfNamed }: KindPart): boolean {
    if (onlyIfNamed && !this.#named.has(name)) return false;
    return ifFeature.length === 0 || this.#hasOne(ifFeature);
  }

  #hasOne(features: readonly string[]): boolean {
    return features.some((feature) => this.#features.has(feature));
  }

  /** What the kind says of a condition; undefined where it has no such part or condition. */
  condition({ part, condition }: StateTerm): PartCondition | undefined {
    return this.#kind.parts.get(part)?.conditions.get(condition);
  }

  /** Whether the part is in one of the wanted conditions, or in one that counts as it. */
  isMet(need: Wanted): boolean {
    return this.wouldMeet(need, this.#state.get(need.part));
  }

  /** Whether a state of the part would do, whatever the part is in now. */
  wouldMeet({ part, anyOf, noneOf = [] }: Wanted, state: PartState | undefined): boolean {
    return (
      state !== undefined &&
      !noneOf.includes(state.condition) &&
      meets(this.#kind, part, state.condition, anyOf)
    );
  }

  /** Whether the sheet marks the part anywhere. */
  isMarked(part: string): boolean {
    return this.#marked.has(part);
  }

  /** Whether a mark names the part anywhere, or words that are understood do. */
  isNamed(part: string): boolean {
    return this.#named.has(part);
  }

  /** A start nobody changed is sure on a sheet that marks this part; words alone never are. */
  isSure(part: string): boolean {
    const by = this.#state.get(part)?.by ?? 'start';
    return by === 'mark' || by === 'operation' || (by === 'start' && this.#marked.has(part));
  }

  /** Whether words alone tell how the part is, and the kind takes its words for plain enough to count. */
  isPlain(part: string): boolean {
    const by = this.#state.get(part)?.by;
    if (by !== 'reading' && by !== 'start') return false;
    if (this.#kind.parts.get(part)?.wordsCount !== true) return false;
    return this.#named.has(part) && !this.#marked.has(part);
  }

  set({ part, condition }: StateTerm, by: Sureness, span: Span | null): void {
    const state: PartState = { condition, by, span };
    this.#state.set(part, state);
    if (by !== 'reading') this.#byMarks.set(part, state);
  }

  /** What marks alone make of a part that only words have moved since; null where nothing was moved so. */
  onlyByWords(part: string): PartState | null {
    if (this.#state.get(part)?.by !== 'reading' || !this.#marked.has(part)) return null;
    return this.#byMarks.get(part) ?? null;
  }

  /**
   * Brings a part into a condition, and others into what follows from it by itself. Where the part stands
   * so already nothing new follows: a mark only makes sure what is the same.
   */
  change(step: WorkStep, change: StateChange): void {
    const now = this.#state.get(change.term.part);
    const isNew = now?.condition !== change.term.condition;
    // Where marks alone had it so already, only hearsay in between makes it new.
    const isHeard =
      now?.by === 'reading' &&
      this.onlyByWords(change.term.part)?.condition === change.term.condition;
    // Words that say again what a mark made sure leave it as sure as it was.
    if (isNew || change.by !== 'reading' || !this.isSure(change.term.part))
      this.set(change.term, change.by, change.span);
    for (const follows of this.condition(change.term)?.follows ?? []) {
      if (step.changes.some((each) => each.by === 'mark' && each.term.part === follows.part))
        continue;
      const by = isHeard && !follows.again ? 'reading' : change.by;
      this.#follow(follows, isNew || follows.again, { ...change, by });
    }
  }

  /**
   * What follows by itself is as sure as what it follows from. A part that is so already stays as it
   * is (a cover turned over is off), but a mark makes sure what is the same.
   */
  #follow(follows: Following, isNew: boolean, { by, span }: StateChange): void {
    const { part, condition, from } = follows;
    const now = this.#state.get(part)?.condition;
    const isSame = now === condition;
    if (isSame && by === 'mark') {
      const how = this.#state.get(part)?.by;
      if (how !== 'mark' && how !== 'operation') this.set(follows, by, span);
      return;
    }
    if (!isNew || this.isMet({ part, anyOf: [condition] })) return;
    if (follows.ifFeature.length > 0 && !this.#hasOne(follows.ifFeature)) return;
    if (from.length > 0 && !(now !== undefined && from.includes(now))) return;
    this.set(follows, by, span);
  }
}
