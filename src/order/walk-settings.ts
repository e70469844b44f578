import type { Operation } from '../sheet/model.ts';
import type { Span } from '../text/span.ts';
import type { OrderFault } from './model.ts';

/** A setting that was moved after it was made. */
interface Spoiled {
  readonly setting: string;
  readonly madeAt: Operation;
  readonly by: Operation;
  readonly span: Span;
  readonly doubtful: boolean;
}

/** What moves settings: an operation by its nature, or a part that it brings into a condition. */
export interface Disturber {
  readonly by: Operation;
  /** Canonical names of the settings that it moves. */
  readonly settings: readonly string[];
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

  /** A step that prints a setting makes it, or checks it again. */
  make(setting: string, operation: Operation): void {
    this.#madeAt.set(setting, operation);
    this.#spoiled.delete(setting);
  }

  disturb({ by, settings, span, own, doubtful }: Disturber): void {
    for (const setting of settings) {
      const madeAt = this.#madeAt.get(setting);
      if (!madeAt || own.has(setting) || madeAt === by) continue;
      this.#spoiled.set(setting, { setting, madeAt, by, span, doubtful });
    }
  }

  /** Tells every setting that should have been made again before this point, each once. */
  settle(before: 'stage' | 'start' | 'end'): void {
    for (const each of this.#spoiled.values())
      this.#faults.push({ kind: 'disturbed', ...each, before });
    this.#spoiled.clear();
  }
}
