import type {
  Kind,
  KindOperation,
  KindPart,
  PartCondition,
  StateNeed,
  StateTerm,
} from '../kinds/model.ts';
import type { Operation, Sheet } from '../sheet/model.ts';
import { meets } from './marks.ts';
import type { OrderFault, PartState, StateChange, UnitState, Walk, WorkStep } from './model.ts';
import { stageRank } from './sequence.ts';
import { type Work, workOf } from './steps.ts';
import { HomeCheck } from './walk-home.ts';
import { Needs } from './walk-needs.ts';
import { SettingsMade } from './walk-settings.ts';
import { PartsNow } from './walk-state.ts';

/**
 * Walks the work of a sheet step by step: keeps the state of every part, and finds needs that are
 * not met, settings disturbed and not made again, parts left open at the start or the end, refitting
 * of what was never off, and states that cannot be. Pure; costs one pass over the steps.
 */
export function walkSheet(
  sheet: Sheet,
  kind: Kind,
  options: { readonly ignoreMarks?: boolean } = {},
): Walk {
  return walkWork(workOf(sheet, kind, options.ignoreMarks ?? false), sheet, kind);
}

/** Walks work that has been read, its operations in another order than the file's where one is given. */
export function walkWork(
  work: Work,
  sheet: Sheet,
  kind: Kind,
  operations: readonly Operation[] = sheet.operations,
): Walk {
  const walker = new Walker(sheet, kind, work.steps, operations);
  walker.run();
  return { steps: walker.passed, faults: walker.faults, unknownMarks: work.unknownMarks };
}

/** The verb group of a kind that puts a part back in its place. */
const REFITTING = 'put-back';

/** Goes through the operations in order, and tells each keeper what happens. */
class Walker {
  readonly passed: { step: WorkStep; after: UnitState }[] = [];
  readonly faults: OrderFault[] = [];
  readonly #sheet: Sheet;
  readonly #kind: Kind;
  readonly #operations: readonly Operation[];
  readonly #steps = new Map<Operation, WorkStep[]>();
  readonly #now: PartsNow;
  readonly #needs: Needs;
  readonly #settings: SettingsMade;
  readonly #home: HomeCheck;
  readonly #done = new Set<string>();
  #stage = -1;
  #hasRun = false;
  #latest: Operation | null = null;

  constructor(
    sheet: Sheet,
    kind: Kind,
    steps: readonly WorkStep[],
    operations: readonly Operation[],
  ) {
    this.#sheet = sheet;
    this.#kind = kind;
    this.#operations = operations;
    for (const step of steps) {
      const own = this.#steps.get(step.operation);
      if (own) own.push(step);
      else this.#steps.set(step.operation, [step]);
    }
    this.#now = new PartsNow(sheet, kind, steps);
    this.#needs = new Needs(sheet, kind, this.#now, this.faults);
    this.#settings = new SettingsMade(this.faults);
    this.#home = new HomeCheck(kind, this.#now, this.#needs, this.faults);
  }

  run(): void {
    for (const operation of this.#operations) {
      const known = operation.known && (this.#kind.operations.get(operation.known.name) ?? null);
      const steps = this.#steps.get(operation) ?? [];
      if (steps.length === 0 && (known === null || known.stage === 'any')) continue;
      this.#enter(operation, known, steps);
      this.#work(operation, known, steps);
      if (known) this.#done.add(known.name);
    }
    this.#settings.settle('end');
    this.#home.check('end', null);
  }

  /** A later stage settles what an earlier one disturbed. */
  #enter(operation: Operation, known: KindOperation | null, steps: readonly WorkStep[]): void {
    const rank = known ? stageRank(known.stage) : -1;
    if (rank < 0) return;
    if (rank > this.#stage) {
      // What the start itself settles is told there, where the engine is started.
      const starts = steps.some(({ changes }) =>
        changes.some(({ term }) => this.#now.condition(term)?.startsUp),
      );
      if (this.#stage >= 0 && (this.#hasRun || !starts)) this.#settings.settle('stage');
      this.#stage = rank;
      this.#latest = operation;
    } else if (rank < this.#stage && this.#latest && !this.#isStopped(steps)) {
      this.faults.push({ kind: 'stage', operation, later: this.#latest });
    }
  }

  /** Whether the work goes back with the engine off, and says so. */
  #isStopped(steps: readonly WorkStep[]): boolean {
    const starting = [...this.#kind.parts.values()].find((part) =>
      [...part.conditions.values()].some(({ startsUp }) => startsUp),
    );
    if (!starting) return false;
    const said = steps[0]?.changes.find(({ term }) => term.part === starting.name);
    const now = this.#now.get(starting.name);
    const condition = said?.term.condition ?? now?.condition;
    return (said !== undefined || now?.by !== 'start') && condition === starting.starts;
  }

  #work(operation: Operation, known: KindOperation | null, steps: readonly WorkStep[]): void {
    const own = new Set(known?.settings ?? []);
    const printing = steps.find(({ values }) => values.some((value) => own.has(value)));
    const measures = printing ?? steps[steps.length - 1];
    // Where no step prints the figure nobody can say which one measures: any may be it.
    const isAnywhere = own.size > 0 && printing === undefined;
    const needs = known ? this.#needs.of(known) : [];
    const met = new Set<StateNeed>();
    for (const step of steps) {
      for (const change of step.changes) this.#change(step, change);
      if (isAnywhere) for (const need of needs) if (this.#now.isMet(need)) met.add(need);
      if (step === measures && known) {
        const asking = { at: step, operation, steps, cause: 'operation' } as const;
        for (const need of needs) if (!met.has(need)) this.#needs.ask(need, asking);
        const settings = known.disturbs;
        this.#settings.disturb({ by: operation, settings, span: step.span, own, doubtful: false });
      }
      for (const value of step.values) this.#settings.make(value, operation);
      this.passed.push({ step, after: this.#now.copy() });
    }
    this.#leave(operation, known);
  }

  /** What an operation leaves by its nature is there after its last step. */
  #leave(operation: Operation, known: KindOperation | null): void {
    let isLeft = false;
    for (const term of known?.leaves ?? []) {
      if (this.#now.isMet({ part: term.part, anyOf: [term.condition] })) continue;
      this.#now.set(term, 'operation', operation.heading.span);
      isLeft = true;
    }
    const last = this.passed.at(-1);
    if (isLeft && last?.step.operation === operation) last.after = this.#now.copy();
  }

  #change(step: WorkStep, change: StateChange): void {
    const { term } = change;
    const part = this.#kind.parts.get(term.part);
    const condition = this.#now.condition(term);
    if (!part || !condition) return;
    const now = this.#now.get(term.part);
    if (this.#isRefit(part, term, now, change)) {
      this.faults.push({ kind: 'refit', part: term.part, change, was: now ?? null, at: step });
    }
    this.#forbidden(step, change);
    this.#now.change(step, change);
    if (now?.condition === term.condition) return;
    this.#settings.disturb({
      by: step.operation,
      settings: condition.disturbs,
      span: change.span,
      own: new Set(),
      doubtful: change.by === 'reading',
    });
    if (condition.startsUp || condition.needs.length > 0) this.#comeInto(step, change, condition);
  }

  /** A put-back of what is in its place: by a mark it is sure, and words alone are never held to it. */
  #isRefit(
    part: KindPart,
    { condition }: StateTerm,
    now: PartState | undefined,
    { by, verb }: StateChange,
  ): boolean {
    return (
      by === 'mark' &&
      verb === REFITTING &&
      part.home.includes(condition) &&
      now !== undefined &&
      now.by !== 'reading' &&
      meets(this.#kind, part.name, now.condition, [condition])
    );
  }

  /** A state that another part's condition shuts out: the throttle shut with the cam under its screw. */
  #forbidden(step: WorkStep, change: StateChange): void {
    if (change.by !== 'mark') return;
    for (const [name, state] of this.#now.entries()) {
      if (name === change.term.part || state.by === 'start' || state.by === 'reading') continue;
      if (step.changes.some(({ term }) => term.part === name)) continue;
      const other = { part: name, condition: state.condition };
      const forbids = this.#now.condition(other)?.forbids ?? [];
      const hit = forbids.some(
        ({ part, anyOf }) =>
          part === change.term.part && meets(this.#kind, part, change.term.condition, anyOf),
      );
      if (hit)
        this.faults.push({
          kind: 'forbidden',
          part: change.term.part,
          change,
          other,
          was: state,
          at: step,
        });
    }
  }

  /** What must hold when a part comes into a condition; the start asks more than others. */
  #comeInto(step: WorkStep, change: StateChange, condition: PartCondition): void {
    const inStep = new Map(step.changes.map(({ term }) => [term.part, term.condition]));
    const { operation } = step;
    const steps = this.#steps.get(operation) ?? [];
    const asking = { at: step, operation, steps, cause: change.term };
    for (const need of condition.needs) {
      const stated = inStep.get(need.part);
      if (stated !== undefined && meets(this.#kind, need.part, stated, need.anyOf)) continue;
      this.#needs.ask(need, asking);
    }
    if (!condition.startsUp) return;
    for (const name of condition.after) {
      const first = this.#sheet.operations.find(({ known }) => known?.name === name);
      if (first && !this.#done.has(name) && first !== operation) {
        this.faults.push({ kind: 'too-early', operation, first });
      }
    }
    // A restart among the running work settles nothing: speed is repeated after it as before it.
    if (!this.#hasRun) this.#settings.settle('start');
    this.#hasRun = true;
    this.#home.check('start', step);
  }
}
