import type { Kind, KindOperation, StateNeed, StateTerm } from '../kinds/model.ts';
import type { Operation, Sheet } from '../sheet/model.ts';
import { meets, plainWords } from './marks.ts';
import type { OrderFault, PartState, WorkStep } from './model.ts';
import type { PartsNow } from './walk-state.ts';

/** A need that was told, and the state that the part was in then. */
interface Told {
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

/** Holds the needs of operations and conditions against the parts as they are. */
export class Needs {
  readonly #sheet: Sheet;
  readonly #kind: Kind;
  readonly #now: PartsNow;
  readonly #faults: OrderFault[];
  readonly #told = new Map<string, Told>();

  constructor(sheet: Sheet, kind: Kind, now: PartsNow, faults: OrderFault[]) {
    this.#sheet = sheet;
    this.#kind = kind;
    this.#now = now;
    this.#faults = faults;
  }

  /** What an operation needs, with what its settings say in place of the kind's. */
  of(known: KindOperation): readonly StateNeed[] {
    const needs = known.needs.filter(({ part }) => !known.needsSaid.has(part));
    for (const [part, key] of known.needsSaid) {
      const said = this.#saidCondition(known, part, key);
      const need = said ?? known.needs.find((each) => each.part === part);
      if (need) needs.push(need);
    }
    return needs;
  }

  /** Tells a need that is not met, once until its part moves; what words said before, they may say. */
  ask(need: StateNeed, asking: Asking): void {
    const part = this.#kind.parts.get(need.part);
    if (!part || !this.#now.has(part) || this.#now.isMet(need)) return;
    const doubtful = !this.#now.isSure(need.part);
    if (doubtful && this.#isSaidBefore(need, asking)) return;
    if (this.toldOf(need.part) !== null) return;
    const was = this.#now.get(need.part);
    this.#told.set(need.part, { anyOf: need.anyOf, was });
    const { at, operation, cause } = asking;
    this.#faults.push({ kind: 'unmet', need, at, operation, was: was ?? null, cause, doubtful });
  }

  /** The conditions that a part was told to need, where nothing has moved it since; else null. */
  toldOf(part: string): readonly string[] | null {
    const told = this.#told.get(part);
    // Every change of a part makes a state of its own: the same object is the same moment.
    return told && told.was === this.#now.get(part) ? told.anyOf : null;
  }

  /** `gasket: removed` beside the setting: the condition of the part that it is measured in. */
  #saidCondition(known: KindOperation, part: string, key: string): StateNeed | null {
    const words = this.#kind.parts.get(part)?.conditions;
    if (!words) return null;
    for (const setting of this.#sheet.settings.values()) {
      if (!known.settings.includes(setting.id)) continue;
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
