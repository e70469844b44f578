import type { Kind, KindPart, PartCondition, ReasonedNeed, StateTerm } from '../kinds/model.ts';
import { operationIn } from '../sheet/index.ts';
import type { Sheet } from '../sheet/model.ts';
import { meets } from './meets.ts';
import type { OrderFault, PartState, StateChange, WorkStep } from './model.ts';
import type { HomeCheck } from './walk-home.ts';
import type { Needs } from './walk-needs.ts';
import type { SettingsMade } from './walk-settings.ts';
import type { PartsNow } from './walk-state.ts';

/** The verb group of a kind that puts a part back in its place. */
const REFITTING = 'put-back';

/** What the walk keeps, and tells of a change. */
export interface Keepers {
  readonly now: PartsNow;
  readonly needs: Needs;
  readonly settings: SettingsMade;
  readonly home: HomeCheck;
}

/** Brings parts into their conditions, a step at a time, and finds what cannot be or is not ready. */
export class StepChanges {
  /** Canonical names of the operations that are done. */
  readonly done = new Set<string>();
  readonly #sheet: Sheet;
  readonly #kind: Kind;
  readonly #keep: Keepers;
  readonly #faults: OrderFault[];
  #hasRun = false;

  constructor(sheet: Sheet, kind: Kind, keep: Keepers, faults: OrderFault[]) {
    this.#sheet = sheet;
    this.#kind = kind;
    this.#keep = keep;
    this.#faults = faults;
  }

  /**
   * All changes of a step at once: nothing is said of their order, so each is held against what the
   * step leaves and not against what stands to its left. Two changes of one part follow one another.
   */
  apply(step: WorkStep, steps: readonly WorkStep[]): void {
    if (step.changes.length === 0) return;
    const { now } = this.#keep;
    const made: { change: StateChange; was: PartState | undefined }[] = [];
    for (const change of step.changes) {
      if (now.condition(change.term) === undefined) continue;
      made.push({ change, was: now.get(change.term.part) });
      now.change(step, change);
    }
    for (const { change, was } of made) {
      const part = this.#kind.parts.get(change.term.part);
      const condition = now.condition(change.term);
      if (!part || !condition) continue;
      if (this.#isRefit(part, change, was, step)) {
        const told = { part: part.name, change, was: was ?? null, at: step } as const;
        this.#faults.push({ kind: 'refit', weight: 'warning', ...told });
      }
      this.#barred(step, change);
      if (was?.condition === change.term.condition) continue;
      this.#comesFrom(step, change, condition, was);
      this.#keep.settings.disturb({
        by: step.operation,
        settings: condition.disturbs,
        span: change.span,
        own: new Set(),
        doubtful: change.by === 'reading' && !now.isPlain(change.term.part),
      });
      if (condition.startsUp || condition.needs.length > 0)
        this.#comeInto(step, steps, change, condition);
    }
  }

  /** A state that another part's condition shuts out: the throttle shut with the cam under its screw. */
  #barred(step: WorkStep, change: StateChange): void {
    const { now } = this.#keep;
    const { part } = change.term;
    if (change.by !== 'mark' || now.get(part)?.condition !== change.term.condition) return;
    for (const [name, state] of now.entries()) {
      if (name === part || state.by === 'reading') continue;
      if (state.by === 'start' && !now.isMarked(name)) continue;
      if (step.changes.some(({ term }) => term.part === name)) continue;
      const other: StateTerm = { part: name, condition: state.condition };
      const bar = now
        .condition(other)
        ?.bars.find(
          (each) =>
            each.part === part &&
            meets(this.#kind, part, change.term.condition, each.anyOf) &&
            !each.unless.some((lifts) => now.isMet(lifts) && now.get(lifts.part)?.by !== 'start'),
        );
      if (bar === undefined) continue;
      const isSure = bar.strength === 'hard' && state.by !== 'start';
      this.#faults.push({
        kind: 'forbidden',
        weight: isSure ? 'error' : 'warning',
        part,
        change,
        other,
        because: bar.because,
        was: state,
        at: step,
      });
    }
  }

  /** What must hold when a part comes into a condition; the start asks more than others. */
  #comeInto(
    step: WorkStep,
    steps: readonly WorkStep[],
    change: StateChange,
    condition: PartCondition,
  ): void {
    const { needs, settings, home } = this.#keep;
    const { operation } = step;
    const asking = { at: step, operation, steps, cause: change.term };
    const overruled = operationIn(this.#kind, operation)?.without;
    for (const need of condition.needs) if (!overruled?.has(need.part)) needs.ask(need, asking);
    if (!condition.startsUp) return;
    for (const { name, because } of condition.after) {
      const first = this.#sheet.operations.find(({ known }) => known?.name === name);
      if (first && !this.done.has(name) && first !== operation) {
        const weight = change.by === 'reading' ? 'warning' : 'error';
        this.#faults.push({ kind: 'too-early', weight, operation, first, because });
      }
    }
    // What the engine starts on has to be right by then; everything else may be made again later.
    if (!this.#hasRun) settings.settle('start', this.#startedOn(condition));
    this.#hasRun = true;
    home.check('start', step);
  }

  #startedOn({ after }: PartCondition): ReadonlySet<string> {
    return new Set(after.flatMap(({ name }) => this.#kind.operations.get(name)?.settings ?? []));
  }

  /**
   * A part brought to where it is already: by a mark, where it has been from the start or where an earlier
   * operation left it. What words only see to is not brought about, nor what a step measures.
   */
  #isRefit(
    part: KindPart,
    { term, by, verb }: StateChange,
    was: PartState | undefined,
    step: WorkStep,
  ): boolean {
    if (by !== 'mark' || was === undefined || was.by === 'reading') return false;
    if (!part.home.includes(term.condition)) return false;
    if (!meets(this.#kind, part.name, was.condition, [term.condition])) return false;
    if (verb === REFITTING) return true;
    if (step.seesTo || step.valueAt !== null) return false;
    if (was.by === 'start') return this.#hasStripped();
    return verb !== null && !this.#isWithin(was, step);
  }

  /** Whether the work began by taking down: one that begins later does not say what was off before. */
  #hasStripped(): boolean {
    return [...this.done].some((name) => this.#kind.operations.get(name)?.stage === 'strip');
  }

  #isWithin({ span }: PartState, { operation }: WorkStep): boolean {
    return span !== null && span.start >= operation.span.start && span.end <= operation.span.end;
  }

  /** A condition that is only come into out of certain others: first contact, from clear of the lever. */
  #comesFrom(
    step: WorkStep,
    change: StateChange,
    condition: PartCondition,
    was: PartState | undefined,
  ): void {
    const { comesFrom } = condition;
    if (comesFrom === null || was === undefined || change.by !== 'mark') return;
    if (was.by === 'reading' || (was.by === 'start' && !this.#keep.now.isMarked(change.term.part)))
      return;
    const need: ReasonedNeed = { ...comesFrom, strength: 'likely' };
    if (this.#keep.needs.isLifted(need)) return;
    if (this.#keep.now.wouldMeet(need, was)) return;
    if (
      step.says.some(({ part, condition: said }) => part === need.part && need.anyOf.includes(said))
    )
      return;
    this.#keep.needs.tell(need, was, {
      at: step,
      operation: step.operation,
      steps: [],
      cause: change.term,
    });
  }
}
