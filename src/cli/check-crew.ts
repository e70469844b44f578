import { availableParallelism } from 'node:os';
import type { Checked, Target } from '../project/index.ts';
import type { Helper, Io } from './io.ts';

/** A sheet by its place among all that are checked. */
export type Numbered = readonly [index: number, target: Target];

/** What a helper is told when it starts. */
export interface HelperTask {
  readonly cwd: string;
  /** The folder of the store; null keeps nothing. */
  readonly kept: string | null;
}

/** Sheets for a helper: the project of each as it was come upon, and its path. */
export type Batch = readonly (readonly [index: number, named: string, path: string])[];

/** What a helper says: that it is ready, and then what became of each batch. */
export type HelperWord = 'ready' | readonly (readonly [index: number, checked: Checked])[];

/** Each helper takes some 170 MiB, and each has to get warm: more of them cost more than they save. */
const mostHelpers = 4;

/** How many sheets are handed to a helper at once: so that it need not wait for the next. */
const batchSize = 6;

/** How many helpers there may be: a processor each; none where one has to do it all. */
export function helpersFor(io: Io): number {
  if (io.startHelper === undefined) return 0;
  const asked = io.env.GAUGELEAF_HELPERS ?? '';
  const count = /^\d{1,2}$/.test(asked) ? Number(asked) : availableParallelism();
  return count < 2 ? 0 : Math.min(count, mostHelpers);
}

/**
 * Threads that check whole sheets. One that cannot start, or ends before its time, leaves its sheets to
 * whoever asks: `orphans` gives them back, and nothing is said, for the outcome is the same.
 */
export class Crew {
  readonly #free: Helper[] = [];
  readonly #busy = new Map<Helper, readonly Numbered[]>();
  readonly #orphans: Numbered[] = [];
  readonly #done: (index: number, checked: Checked) => void;
  #count = 0;
  #wake: () => void = () => {};

  private constructor(done: (index: number, checked: Checked) => void) {
    this.#done = done;
  }

  /** Starts helpers and waits until each is ready or has failed; null where none can be had. */
  static async start(
    count: number,
    task: HelperTask,
    io: Io,
    done: (index: number, checked: Checked) => void,
  ): Promise<Crew | null> {
    const { startHelper } = io;
    if (startHelper === undefined) return null;
    const crew = new Crew(done);
    const starts = Array.from({ length: count }, () => crew.#engage(() => startHelper(task)));
    await Promise.all(starts);
    return crew.#count > 0 ? crew : null;
  }

  async #engage(start: () => Promise<Helper>): Promise<void> {
    let helper: Helper;
    try {
      helper = await start();
    } catch {
      return;
    }
    await new Promise<void>((resolve) => {
      let isReady = false;
      const lost = () => {
        resolve();
        if (!isReady) return;
        isReady = false;
        this.#lose(helper);
      };
      helper.on('message', (word: HelperWord) => {
        if (word === 'ready') {
          isReady = true;
          this.#count += 1;
          this.#free.push(helper);
          resolve();
        } else this.#take(helper, word);
      });
      helper.on('error', lost);
      helper.on('exit', lost);
    });
  }

  #take(helper: Helper, word: Exclude<HelperWord, 'ready'>): void {
    for (const [index, checked] of word) this.#done(index, checked);
    this.#busy.delete(helper);
    this.#free.push(helper);
    this.#wake();
  }

  #lose(helper: Helper): void {
    this.#count -= 1;
    this.#orphans.push(...(this.#busy.get(helper) ?? []));
    this.#busy.delete(helper);
    const at = this.#free.indexOf(helper);
    if (at >= 0) this.#free.splice(at, 1);
    this.#wake();
  }

  /** Whether a helper has nothing to do. */
  get wantsWork(): boolean {
    return this.#free.length > 0;
  }

  /** Whether no helper is left. */
  get isGone(): boolean {
    return this.#count <= 0;
  }

  /** Hands out sheets from the front of a queue, fewer at once toward its end, so that all end together. */
  feed(queue: Numbered[]): void {
    while (queue.length > 0) {
      const helper = this.#free.pop();
      if (helper === undefined) return;
      const share = Math.ceil(queue.length / (2 * this.#count));
      const sheets = queue.splice(0, Math.min(batchSize, share));
      this.#busy.set(helper, sheets);
      const batch: Batch = sheets.map(([index, { project, path }]) => [index, project.named, path]);
      helper.postMessage(batch);
    }
  }

  /** Sheets of helpers that are no longer there. */
  orphans(): readonly Numbered[] {
    return this.#orphans.splice(0);
  }

  /** When the next batch is done, or a helper lost. */
  word(): Promise<void> {
    return new Promise((resolve) => {
      this.#wake = resolve;
    });
  }

  /** Ends all threads, whatever they are at. */
  async dismiss(): Promise<void> {
    const all = [...this.#free, ...this.#busy.keys()];
    this.#count = 0;
    await Promise.all(all.map((helper) => helper.terminate()));
  }
}
