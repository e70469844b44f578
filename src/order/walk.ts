import type { Kind, KindOperation, ReasonedNeed } from '../kinds/model.ts';
import { operationIn } from '../sheet/index.ts';
import type { Operation, Sheet } from '../sheet/model.ts';
import { plainWords } from '../text/index.ts';
import type { OrderFault, UnitState, Walk, WorkStep } from './model.ts';
import { NeedsOf } from './needs-of.ts';
import { isMarkedThroughout, type Work, workOf } from './steps.ts';
import { StepChanges } from './walk-changes.ts';
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

/** Words of a sentence that is done only where something is out. */
const CONDITIONS = ['if', 'should', 'unless'];

function hasWord(text: string, words: readonly string[]): boolean {
  const plain = ` ${plainWords(text)} `;
  return words.some((word) => plain.includes(` ${word} `));
}

/** Goes through the operations in order, and tells each keeper what happens. */
class Walker {
  readonly passed: { step: WorkStep; after: UnitState }[] = [];
  readonly faults: OrderFault[] = [];
  readonly #text: string;
  readonly #kind: Kind;
  readonly #operations: readonly Operation[];
  readonly #steps = new Map<Operation, WorkStep[]>();
  readonly #now: PartsNow;
  readonly #needs: Needs;
  readonly #needsOf: NeedsOf;
  readonly #settings: SettingsMade;
  readonly #home: HomeCheck;
  readonly #changes: StepChanges;

  constructor(
    sheet: Sheet,
    kind: Kind,
    steps: readonly WorkStep[],
    operations: readonly Operation[],
  ) {
    this.#text = sheet.text;
    this.#kind = kind;
    this.#operations = operations;
    for (const step of steps) {
      const own = this.#steps.get(step.operation);
      if (own) own.push(step);
      else this.#steps.set(step.operation, [step]);
    }
    this.#needsOf = new NeedsOf(sheet, kind);
    this.#now = new PartsNow(sheet, kind, steps);
    this.#needs = new Needs(kind, this.#now, this.faults, isMarkedThroughout(steps));
    this.#settings = new SettingsMade(this.faults);
    this.#home = new HomeCheck(
      kind,
      this.#now,
      this.#needs,
      this.faults,
      (part, at) => this.#nextMark(part, at),
      (part, at) => this.#isWanted(part, at),
    );
    this.#changes = new StepChanges(
      sheet,
      kind,
      { now: this.#now, needs: this.#needs, settings: this.#settings, home: this.#home },
      this.faults,
    );
  }

  run(): void {
    for (const operation of this.#operations) {
      const known = operationIn(this.#kind, operation);
      const steps = this.#steps.get(operation) ?? [];
      if (steps.length === 0 && (known === null || known.stage === 'any')) continue;
      this.#work(operation, known, steps);
      if (known) this.#changes.done.add(known.name);
    }
    this.#settings.settle('end');
    this.#home.check('end', null);
  }

  #work(operation: Operation, known: KindOperation | null, steps: readonly WorkStep[]): void {
    const own = new Set(known?.settings ?? []);
    const printing = steps.find(({ values }) => values.some((value) => own.has(value)));
    const measures = printing ?? steps[steps.length - 1];
    // Where no step prints the figure nobody can say which one measures: any may be it.
    const isAnywhere = own.size > 0 && printing === undefined;
    const needs = known
      ? this.#needsOf.operation(known).filter(({ ifWords }) => this.#holds(steps, ifWords))
      : [];
    const met = new Set<ReasonedNeed>();
    for (const step of steps) {
      // What was left is what the next step finds: no state is copied that nothing has moved.
      const before = this.passed.at(-1)?.after ?? this.#now.copy();
      this.#changes.apply(step, steps);
      if (isAnywhere) for (const need of needs) if (this.#now.isMet(need)) met.add(need);
      const asking = { at: step, operation, steps, cause: 'operation' } as const;
      if (step === measures && known) {
        for (const need of needs)
          if (!met.has(need) && !this.#isPast(need, step, before)) this.#needs.ask(need, asking);
        const settings = known.disturbs.map((rule) => {
          const words = known.disturbsSaid.get(rule.name);
          return words === undefined || this.#showsMoving(rule.name, steps, words)
            ? rule
            : { ...rule, strength: 'usual' as const };
        });
        this.#settings.disturb({ by: operation, settings, span: step.span, own, doubtful: false });
      }
      for (const value of step.values) this.#make(value, step, own, before, asking);
      this.passed.push({ step, after: step.changes.length > 0 ? this.#now.copy() : before });
    }
    this.#leave(operation, known);
  }

  /** A step that prints a setting makes it, if it measures or sets it at all and in the state it needs. */
  #make(
    value: string,
    step: WorkStep,
    own: ReadonlySet<string>,
    before: UnitState,
    asking: Parameters<Needs['ask']>[1],
  ): void {
    const { operation } = step;
    const stage = operationIn(this.#kind, operation)?.stage;
    if (step.inPassing.has(value) || stage === 'any') return;
    const overruled = operationIn(this.#kind, operation)?.without;
    const always = this.#needsOf.setting(value).filter(({ part }) => !overruled?.has(part));
    const replaces = this.#kind.settings.get(value)?.replaces ?? [];
    const known = operationIn(this.#kind, operation);
    if (own.has(value) || known?.alsoMeasures.includes(value)) {
      for (const need of always)
        if (!this.#isPast(need, step, before)) this.#needs.ask(need, asking);
      if (own.has(value)) this.#countFrom(value, step, before, asking);
      this.#settings.make(value, operation, replaces);
      return;
    }
    const makers = this.#needsOf.makers(value);
    let missed: ReasonedNeed | null = null;
    for (const needs of makers.length > 0
      ? makers.map((each) => this.#needsOf.operation(each))
      : [[]]) {
      const lacking = [...needs, ...always].find(
        (need) =>
          need.strength === 'hard' &&
          need.ifWords.length === 0 &&
          !this.#needs.isBorne(need) &&
          !this.#isPast(need, step, before),
      );
      if (lacking === undefined) {
        this.#settings.make(value, operation, replaces);
        return;
      }
      missed ??= lacking;
    }
    if (missed) this.#settings.miss(value, step, missed);
  }

  /** A screw that is counted from first contact has to be brought there, in this step or before it. */
  #countFrom(
    value: string,
    step: WorkStep,
    before: UnitState,
    asking: Parameters<Needs['ask']>[1],
  ): void {
    for (const need of this.#kind.settings.get(value)?.countedFrom ?? []) {
      const was = before.get(need.part);
      if (was?.by !== 'mark' || this.#now.wouldMeet(need, was)) continue;
      if (!step.changes.some(({ term, by }) => term.part === need.part && by === 'mark')) continue;
      if (
        step.says.some(
          ({ part, condition }) => part === need.part && need.anyOf.includes(condition),
        )
      )
        continue;
      this.#needs.tell({ ...need, strength: 'likely' }, was, asking);
    }
  }

  /** Whether the steps hold one of some words; true where none are asked for. */
  #holds(steps: readonly WorkStep[], words: readonly string[]): boolean {
    if (words.length === 0) return true;
    return steps.some(({ span }) => hasWord(this.#text.slice(span.start, span.end), words));
  }

  /**
   * Whether the steps say that a setting is moved. What is done only where a figure is out (“Out? Bend
   * the tab”) says so where it names the setting as well.
   */
  #showsMoving(setting: string, steps: readonly WorkStep[], words: readonly string[]): boolean {
    const [name = ''] = plainWords(this.#kind.settings.get(setting)?.label ?? setting).split(' ');
    return steps.some(({ span }) => {
      const sentences = this.#text.slice(span.start, span.end).split(/(?<=[.?!;])\s+/);
      let isIfOut = false;
      return sentences.some((sentence) => {
        const counts = hasWord(sentence, words) && !isIfOut && !hasWord(sentence, CONDITIONS);
        const names = (isIfOut || hasWord(sentence, CONDITIONS)) && hasWord(sentence, [name]);
        isIfOut ||= sentence.endsWith('?');
        return counts || names;
      });
    });
  }

  /** Whether a need is met no more, and was as the step measured, or as that which it measures began. */
  #isPast(need: ReasonedNeed, step: WorkStep, before: UnitState): boolean {
    if (this.#now.isMet(need)) return false;
    if (need.begins) {
      if (this.#now.wouldMeet(need, before.get(need.part))) return true;
      const { says } = step;
      const isLifted = need.unless.some(
        (lifts) =>
          this.#now.wouldMeet(lifts, before.get(lifts.part)) ||
          says.some(
            ({ part, condition }) => part === lifts.part && lifts.anyOf.includes(condition),
          ),
      );
      if (isLifted) return true;
    }
    return this.#wasMet(need, step, before);
  }

  /**
   * Whether a need was met as the step measured, though a change behind the figure ends it: “read it,
   * then let the cam fall clear”. Where words before the figure say the change, it was there already.
   */
  #wasMet(need: ReasonedNeed, step: WorkStep, before: UnitState): boolean {
    const { valueAt, changes } = step;
    if (valueAt === null || !this.#now.wouldMeet(need, before.get(need.part))) return false;
    return changes
      .filter(({ term }) => term.part === need.part)
      .every(({ span, saidAt }) => (saidAt ?? span.start) > valueAt);
  }

  /** Whether the operation of a step surely needs a part as it is, and that is not its place. */
  #isWanted(part: string, { operation }: WorkStep): boolean {
    const known = operationIn(this.#kind, operation);
    if (known === null) return false;
    const needs = known.settings.flatMap((name) => this.#needsOf.setting(name));
    return [...this.#needsOf.operation(known), ...needs].some(
      (need) => need.part === part && need.strength === 'hard' && this.#now.isMet(need),
    );
  }

  /** The condition that the next mark after a step brings a part into; null where none follows. */
  #nextMark(part: string, at: WorkStep): string | null {
    const steps = this.#operations.flatMap((operation) => this.#steps.get(operation) ?? []);
    for (const { changes } of steps.slice(steps.indexOf(at) + 1))
      for (const { term, by } of changes)
        if (by === 'mark' && term.part === part) return term.condition;
    return null;
  }

  /** What an operation leaves by its nature is there after its last step. */
  #leave(operation: Operation, known: KindOperation | null): void {
    let isLeft = false;
    for (const term of known?.leaves ?? []) {
      if (this.#now.isMet({ part: term.part, anyOf: [term.condition] })) continue;
      // Where the sheet marks the part, its marks say when; what the kind takes for granted is hearsay,
      // and so is what takes a part away: words that are not understood may bring it back.
      const part = this.#kind.parts.get(term.part);
      const isHome = !part || part.reads.size === 0 || part.home.includes(term.condition);
      const isHearsay = !term.own && (!isHome || this.#now.isMarked(term.part));
      const by = isHearsay ? 'reading' : 'operation';
      this.#now.set(term, by, operation.heading.span);
      isLeft = true;
    }
    const last = this.passed.at(-1);
    if (isLeft && last?.step.operation === operation) last.after = this.#now.copy();
  }
}
