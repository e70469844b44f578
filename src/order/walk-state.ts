import type { Kind, KindPart, PartCondition, StateNeed, StateTerm } from '../kinds/model.ts';
import type { Sheet } from '../sheet/model.ts';
import type { Span } from '../text/span.ts';
import { meets } from './marks.ts';
import type { PartState, StateChange, Sureness, UnitState, WorkStep } from './model.ts';

/** The condition of every part of one unit, as the walk goes on. */
export class PartsNow {
  readonly #kind: Kind;
  readonly #features: ReadonlySet<string>;
  readonly #marked = new Set<string>();
  readonly #state = new Map<string, PartState>();

  /** Every part that the unit has, as it starts; `steps` tell which parts the sheet marks anywhere. */
  constructor(sheet: Sheet, kind: Kind, steps: readonly WorkStep[]) {
    this.#kind = kind;
    this.#features = new Set(sheet.unit.features.map(({ id }) => id));
    for (const { changes } of steps) {
      for (const { term, by } of changes) if (by === 'mark') this.#marked.add(term.part);
    }
    for (const part of kind.parts.values()) {
      if (part.starts !== null && this.has(part))
        this.#state.set(part.name, { condition: part.starts, by: 'start', span: null });
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
  has({ ifFeature }: KindPart): boolean {
    return ifFeature.length === 0 || ifFeature.some((feature) => this.#features.has(feature));
  }

  /** What the kind says of a condition; undefined where it has no such part or condition. */
  condition({ part, condition }: StateTerm): PartCondition | undefined {
    return this.#kind.parts.get(part)?.conditions.get(condition);
  }

  /** Whether the part is in one of the wanted conditions, or in one that counts as it. */
  isMet({ part, anyOf }: StateNeed): boolean {
    const now = this.#state.get(part);
    return now !== undefined && meets(this.#kind, part, now.condition, anyOf);
  }

  /** A start nobody changed is sure on a sheet that marks this part; words alone never are. */
  isSure(part: string): boolean {
    const by = this.#state.get(part)?.by ?? 'start';
    return by === 'mark' || by === 'operation' || (by === 'start' && this.#marked.has(part));
  }

  set({ part, condition }: StateTerm, by: Sureness, span: Span): void {
    this.#state.set(part, { condition, by, span });
  }

  /** Brings a part into a condition, and others into what follows from it by itself. */
  change(step: WorkStep, change: StateChange): void {
    const now = this.#state.get(change.term.part);
    // Words that say again what a mark made sure leave it as sure as it was.
    const isRepeated = change.by === 'reading' && now?.condition === change.term.condition;
    if (!isRepeated || !this.isSure(change.term.part))
      this.set(change.term, change.by, change.span);
    for (const follows of this.condition(change.term)?.leaves ?? []) {
      if (step.changes.some((each) => each.by === 'mark' && each.term.part === follows.part))
        continue;
      this.#follow(follows, change);
    }
  }

  /**
   * What follows by itself is as sure as what it follows from. A part that is so already stays as it
   * is (a cover turned over is off), but a mark makes sure what is the same.
   */
  #follow(follows: StateTerm, { by, span }: StateChange): void {
    const { part, condition } = follows;
    const isSame = this.#state.get(part)?.condition === condition;
    if (this.isMet({ part, anyOf: [condition] }) && !(isSame && by === 'mark')) return;
    this.set(follows, by, span);
  }
}
