import type { OrderRule, ReasonedNeed } from '../kinds/model.ts';
import type { Operation } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';
import type { OrderFault, WorkStep } from './model.ts';

/** A setting that was moved after it was made. */
interface Spoiled {
  readonly rule: OrderRule;
  readonly madeAt: Operation;
  readonly by: Operation;
  readonly span: Span;
  readonly doubtful: boolean;
  tried: { readonly at: WorkStep; readonly need: ReasonedNeed } | null;
}

/** What moves settings: an operation by its nature, or a part that it brings into a condition. */
export interface Disturber {
  readonly by: Operation;
  readonly settings: readonly OrderRule[];
  readonly span: Span;
  /** Settings that the operation makes itself: it never spoils those. */
  readonly own: ReadonlySet<string>;
  readonly doubtful: boolean;
}

/** The settings made so far, and those of them that were moved since. */
export class SettingsMade {
  readonly #faults: OrderFault[];
  readonly #madeAt = new Map<string, Operation>();
  readonly #spoiled = new Map<string, Spoiled>();

  constructor(faults: OrderFault[]) {
    this.#faults = faults;
  }

  /** A step that measures or sets a setting in the state that it needs makes it, or checks it again. */
  make(setting: string, operation: Operation, replaces: readonly string[] = []): void {
    this.#madeAt.set(setting, operation);
    this.#spoiled.delete(setting);
    for (const each of replaces) {
      this.#madeAt.delete(each);
      this.#spoiled.delete(each);
    }
  }

  /** A step that prints a setting without the state that it needs checks nothing. */
  miss(setting: string, at: WorkStep, need: ReasonedNeed): void {
    const spoiled = this.#spoiled.get(setting);
    if (spoiled) spoiled.tried ??= { at, need };
  }

  disturb({ by, settings, span, own, doubtful }: Disturber): void {
    for (const rule of settings) {
      const madeAt = this.#madeAt.get(rule.name);
      if (!madeAt || own.has(rule.name) || madeAt === by) continue;
      const known = this.#spoiled.get(rule.name);
      // What certainly moves a setting is not made milder by what may.
      if (known && known.rule.strength !== 'usual' && rule.strength === 'usual') continue;
      this.#spoiled.set(rule.name, { rule, madeAt, by, span, doubtful, tried: null });
    }
  }

  /** Tells every setting that should have been made again before this point, each once; of some only. */
  settle(before: 'start' | 'end', only: ReadonlySet<string> | null = null): void {
    for (const [setting, each] of this.#spoiled) {
      if (only !== null && !only.has(setting)) continue;
      const { rule, ...rest } = each;
      const { because, strength } = rule;
      const weight = strength === 'usual' || each.doubtful ? 'note' : 'warning';
      this.#faults.push({ kind: 'disturbed', weight, setting, because, strength, ...rest, before });
      this.#spoiled.delete(setting);
    }
  }
}
