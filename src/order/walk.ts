import type {
  Kind,
  KindOperation,
  KindPart,
  PartCondition,
  StateNeed,
  StateTerm,
} from '../kinds/model.ts';
import type { Operation, Sheet } from '../sheet/model.ts';
import type { Span } from '../text/span.ts';
import { meets, plainWords } from './marks.ts';
import type { OrderFault, PartState, StateChange, Sureness, Walk, WorkStep } from './model.ts';
import { stageRank } from './sequence.ts';
import { type Work, workOf } from './steps.ts';

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

/** A setting that was made, and by which operation. */
interface Made {
  readonly operation: Operation;
}

/** A setting that was moved after it was made. */
interface Spoiled {
  readonly setting: string;
  readonly madeAt: Operation;
  readonly by: Operation;
  readonly span: Span;
  readonly doubtful: boolean;
}

class Walker {
  readonly passed: { step: WorkStep; after: ReadonlyMap<string, PartState> }[] = [];
  readonly faults: OrderFault[] = [];
  readonly #sheet: Sheet;
  readonly #kind: Kind;
  readonly #operations: readonly Operation[];
  readonly #steps = new Map<Operation, WorkStep[]>();
  readonly #features: ReadonlySet<string>;
  readonly #markedParts = new Set<string>();
  readonly #state = new Map<string, PartState>();
  readonly #made = new Map<string, Made>();
  readonly #spoiled = new Map<string, Spoiled>();
  readonly #done = new Set<string>();
  readonly #openTold = new Set<string>();
  /** Parts whose unmet need was told and that nothing has moved since, with what was needed. */
  readonly #unmetTold = new Map<string, readonly string[]>();
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
    this.#features = new Set(
      sheet.unit.features.map(({ value }) => kind.featureNamed(value)?.name ?? value),
    );
    for (const { changes } of steps) {
      for (const { term, by } of changes) if (by === 'mark') this.#markedParts.add(term.part);
    }
    for (const part of kind.parts.values()) {
      if (part.starts !== null && this.#isPresent(part.ifFeature))
        this.#state.set(part.name, { condition: part.starts, by: 'start', span: null });
    }
  }

  run(): void {
    for (const operation of this.#operations) {
      const known =
        operation.canonical === null
          ? null
          : (this.#kind.operations.get(operation.canonical) ?? null);
      const steps = this.#steps.get(operation) ?? [];
      if (steps.length === 0 && (known === null || known.stage === 'any')) continue;
      this.#enter(operation, known, steps);
      this.#work(operation, known, steps);
      if (known) this.#done.add(known.name);
    }
    this.#settle('end');
    this.#homeBy('end', null);
  }

  /** A later stage settles what an earlier one disturbed. */
  #enter(operation: Operation, known: KindOperation | null, steps: readonly WorkStep[]): void {
    const rank = known ? stageRank(known.stage) : -1;
    if (rank < 0) return;
    if (rank > this.#stage) {
      // What the start itself settles is told there, where the engine is started.
      const starts = steps.some(({ changes }) =>
        changes.some(({ term }) => this.#condition(term)?.startsUp),
      );
      if (this.#stage >= 0 && (this.#hasRun || !starts)) this.#settle('stage');
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
    const now = this.#state.get(starting.name);
    const condition = said?.term.condition ?? now?.condition;
    return (said !== undefined || now?.by !== 'start') && condition === starting.starts;
  }

  #work(operation: Operation, known: KindOperation | null, steps: readonly WorkStep[]): void {
    const own = new Set(known?.settings ?? []);
    const printing = steps.find(({ values }) => values.some((value) => own.has(value)));
    const measures = printing ?? steps[steps.length - 1];
    // Where no step prints the figure nobody can say which one measures: any may be it.
    const isAnywhere = own.size > 0 && printing === undefined;
    const needs = known ? this.#needsOf(known) : [];
    const met = new Set<StateNeed>();
    for (const step of steps) {
      for (const change of step.changes) this.#change(step, change);
      if (isAnywhere) for (const need of needs) if (this.#isMet(need)) met.add(need);
      if (step === measures && known) {
        for (const need of needs)
          if (!met.has(need)) this.#need(need, step, operation, 'operation');
        this.#disturb(operation, known.disturbs, step.span, own, false);
      }
      for (const value of step.values) {
        // A step that prints a setting makes it, or checks it again.
        this.#made.set(value, { operation });
        this.#spoiled.delete(value);
      }
      this.passed.push({ step, after: new Map(this.#state) });
    }
    let isLeft = false;
    for (const term of known?.leaves ?? []) {
      const now = this.#state.get(term.part);
      if (now && meets(this.#kind, term.part, now.condition, [term.condition])) continue;
      this.#set(term, 'operation', operation.heading.span);
      isLeft = true;
    }
    // What the operation leaves by its nature is there after its last step.
    const last = this.passed.at(-1);
    if (isLeft && last?.step.operation === operation) last.after = new Map(this.#state);
  }

  #change(step: WorkStep, change: StateChange): void {
    const { term } = change;
    const part = this.#kind.parts.get(term.part);
    const condition = this.#condition(term);
    if (!part || !condition) return;
    const now = this.#state.get(term.part);
    if (this.#isRefit(part, term, now, change)) {
      this.faults.push({ kind: 'refit', part: term.part, change, was: now ?? null, at: step });
    }
    this.#forbidden(step, change);
    const changed = now?.condition !== term.condition;
    this.#set(term, change.by, change.span);
    for (const follows of condition.leaves) {
      if (step.changes.some((each) => each.by === 'mark' && each.term.part === follows.part))
        continue;
      // What follows by itself is as sure as what it follows from.
      this.#set(follows, change.by, change.span);
    }
    if (!changed) return;
    this.#disturb(
      step.operation,
      condition.disturbs,
      change.span,
      new Set(),
      change.by === 'reading',
    );
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

  #set({ part, condition }: StateTerm, by: Sureness, span: Span): void {
    this.#state.set(part, { condition, by, span });
    this.#unmetTold.delete(part);
  }

  #condition(term: StateTerm): PartCondition | undefined {
    return this.#kind.parts.get(term.part)?.conditions.get(term.condition);
  }

  /** A state that another part's condition shuts out: the throttle shut with the cam under its screw. */
  #forbidden(step: WorkStep, change: StateChange): void {
    if (change.by !== 'mark') return;
    for (const [name, state] of this.#state) {
      if (name === change.term.part || state.by === 'start' || state.by === 'reading') continue;
      if (step.changes.some(({ term }) => term.part === name)) continue;
      const other = { part: name, condition: state.condition };
      const forbids = this.#condition(other)?.forbids ?? [];
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
    for (const need of condition.needs) {
      const stated = inStep.get(need.part);
      if (stated !== undefined && meets(this.#kind, need.part, stated, need.anyOf)) continue;
      this.#need(need, step, step.operation, change.term);
    }
    if (!condition.startsUp) return;
    for (const name of condition.after) {
      const first = this.#sheet.operations.find(({ canonical }) => canonical === name);
      if (first && !this.#done.has(name) && first !== step.operation) {
        this.faults.push({ kind: 'too-early', operation: step.operation, first });
      }
    }
    // A restart among the running work settles nothing: speed is repeated after it as before it.
    if (!this.#hasRun) this.#settle('start');
    this.#hasRun = true;
    this.#homeBy('start', step);
  }

  /** What an operation needs, with what its settings say in place of the kind's. */
  #needsOf(known: KindOperation): readonly StateNeed[] {
    const needs = known.needs.filter(({ part }) => !known.needsSaid.has(part));
    for (const [part, key] of known.needsSaid) {
      const said = this.#saidCondition(known, part, key);
      const need = said ?? known.needs.find((each) => each.part === part);
      if (need) needs.push(need);
    }
    return needs;
  }

  #isMet({ part, anyOf }: StateNeed): boolean {
    const now = this.#state.get(part);
    return now !== undefined && meets(this.#kind, part, now.condition, anyOf);
  }

  /** `gasket: removed` beside the setting: the condition of the part that it is measured in. */
  #saidCondition(known: KindOperation, part: string, key: string): StateNeed | null {
    const words = this.#kind.parts.get(part)?.conditions;
    if (!words) return null;
    for (const setting of this.#sheet.settings.values()) {
      if (setting.canonical === null || !known.settings.includes(setting.canonical)) continue;
      const said = setting.said.get(key)?.value;
      if (said === undefined) continue;
      const plain = plainWords(said);
      for (const condition of words.values()) {
        if ([condition.name, ...condition.aliases].some((each) => plainWords(each) === plain)) {
          return { part, anyOf: [condition.name] };
        }
      }
    }
    return null;
  }

  #need(need: StateNeed, at: WorkStep, operation: Operation, cause: 'operation' | StateTerm): void {
    const part = this.#kind.parts.get(need.part);
    if (!part || !this.#isPresent(part.ifFeature)) return;
    const was = this.#state.get(need.part) ?? null;
    if (this.#isMet(need)) return;
    const doubtful = !this.#isSure(was?.by ?? 'start', need.part);
    if (doubtful && this.#isSaidBefore(need, at, operation)) return;
    if (this.#unmetTold.has(need.part)) return;
    this.#unmetTold.set(need.part, need.anyOf);
    this.faults.push({ kind: 'unmet', need, at, operation, was, cause, doubtful });
  }

  /** Whether a step of the operation up to this one speaks of the state: words may say it and go on. */
  #isSaidBefore(need: StateNeed, at: WorkStep, operation: Operation): boolean {
    const own = this.#steps.get(operation) ?? [];
    return own
      .slice(0, own.indexOf(at) + 1)
      .some(({ changes }) =>
        changes.some(
          ({ term }) =>
            term.part === need.part && meets(this.#kind, term.part, term.condition, need.anyOf),
        ),
      );
  }

  /** A start nobody changed is sure on a sheet that marks this part; words alone never are. */
  #isSure(by: Sureness, part: string): boolean {
    return by === 'mark' || by === 'operation' || (by === 'start' && this.#markedParts.has(part));
  }

  #isPresent(features: readonly string[]): boolean {
    return features.length === 0 || features.some((feature) => this.#features.has(feature));
  }

  #disturb(
    by: Operation,
    settings: readonly string[],
    span: Span,
    own: ReadonlySet<string>,
    doubtful: boolean,
  ): void {
    for (const setting of settings) {
      const made = this.#made.get(setting);
      if (!made || own.has(setting) || made.operation === by) continue;
      this.#spoiled.set(setting, { setting, madeAt: made.operation, by, span, doubtful });
    }
  }

  #settle(before: 'stage' | 'start' | 'end'): void {
    for (const each of this.#spoiled.values())
      this.faults.push({ kind: 'disturbed', ...each, before });
    this.#spoiled.clear();
  }

  #homeBy(before: 'start' | 'end', at: WorkStep | null): void {
    for (const part of this.#kind.parts.values()) {
      const state = this.#state.get(part.name);
      if (
        part.home.length === 0 ||
        !state ||
        this.#openTold.has(part.name) ||
        !this.#isPresent(part.ifFeature)
      )
        continue;
      if (meets(this.#kind, part.name, state.condition, part.home)) continue;
      this.#openTold.add(part.name);
      // What was told as an unmet need is no second fault for being left so.
      if (this.#unmetTold.get(part.name)?.some((each) => part.home.includes(each))) continue;
      const doubtful = state.by === 'reading';
      this.faults.push({
        kind: 'left-open',
        part: part.name,
        state,
        home: part.home,
        before,
        at,
        doubtful,
      });
    }
  }
}
