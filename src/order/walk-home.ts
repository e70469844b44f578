import type { Kind } from '../kinds/model.ts';
import type { OrderFault, WorkStep } from './model.ts';
import type { Needs } from './walk-needs.ts';
import type { PartsNow } from './walk-state.ts';

/** Sees that every part is back in its place before the engine starts, and at the end. */
export class HomeCheck {
  readonly #kind: Kind;
  readonly #now: PartsNow;
  readonly #needs: Needs;
  readonly #faults: OrderFault[];
  readonly #nextMark: (part: string, at: WorkStep) => string | null;
  readonly #wants: (part: string, at: WorkStep) => boolean;
  readonly #told = new Set<string>();

  constructor(
    kind: Kind,
    now: PartsNow,
    needs: Needs,
    faults: OrderFault[],
    nextMark: (part: string, at: WorkStep) => string | null,
    wants: (part: string, at: WorkStep) => boolean,
  ) {
    this.#wants = wants;
    this.#nextMark = nextMark;
    this.#kind = kind;
    this.#now = now;
    this.#needs = needs;
    this.#faults = faults;
  }

  /** Tells every part that is not home, each once a sheet. */
  check(before: 'start' | 'end', at: WorkStep | null): void {
    for (const part of this.#kind.parts.values()) {
      const { name, home } = part;
      const state = this.#now.get(name);
      if (before === 'start' && !part.homeAtStart) continue;
      if (home.length === 0 || !state || this.#told.has(name) || !this.#now.has(part)) continue;
      if (this.#now.isMet({ part: name, anyOf: home })) continue;
      // An outlet that is read at a gauge while the engine runs cannot be joined as it starts.
      if (before === 'start' && at !== null && this.#wants(name, at)) continue;
      const isLater = before === 'start' && part.homeAtStart === 'later';
      // A clamp is nipped, the engine timed, and the clamp drawn down: nobody slackens it again.
      if (isLater && at !== null && home.includes(this.#nextMark(name, at) ?? '')) continue;
      this.#told.add(name);
      // What was told as an unmet need is no second fault for being left so.
      if (this.#needs.toldOf(name)?.some((each) => home.includes(each))) continue;
      // Where the last mark leaves it open too, words in between make it no less sure.
      const marked = this.#now.onlyByWords(name);
      const isAgreed =
        marked !== null &&
        marked.by !== 'start' &&
        !this.#now.wouldMeet({ part: name, anyOf: home }, marked);
      const isPlain = this.#now.isPlain(name);
      const doubtful = state.by === 'reading' && !isAgreed && !isPlain;
      const isError = state.by !== 'reading' && !isPlain && before === 'start' && !isLater;
      const weight = doubtful ? 'note' : isError ? 'error' : 'warning';
      this.#faults.push({
        kind: 'left-open',
        weight,
        part: name,
        state: isAgreed ? marked : state,
        home,
        before,
        at,
        doubtful,
      });
    }
  }
}
