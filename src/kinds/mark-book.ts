import { oncePer } from '../text/index.ts';
import type { KindPart, StateTerm } from './model.ts';

interface Named {
  /** Which of the kind's names it is: the first counts. */
  readonly rank: number;
  readonly part: KindPart;
  readonly words: string;
}

interface Worded {
  readonly condition: string;
  readonly words: string;
}

/**
 * What marks may say of a kind's parts. Names and conditions are kept apart, and a mark is parted at
 * each of its blanks: every name with every condition would be some thousand, of which a sheet has ten, and
 * writing them down took longer than anything else at the start.
 */
export class MarkBook {
  readonly #names = new Map<string, Named[]>();
  readonly #looseNames = new Map<string, Named[]>();
  readonly #conditions = oncePer((part: KindPart) => this.#sorted(part, false));
  readonly #looseConditions = oncePer((part: KindPart) => this.#sorted(part, true));
  readonly #wordsOf: (text: string) => string;

  /** `names` in the order that they count in, in the spelling that `wordsOf` gives. */
  constructor(names: Iterable<readonly [string, KindPart]>, wordsOf: (text: string) => string) {
    this.#wordsOf = wordsOf;
    let rank = 0;
    for (const [words, part] of names) {
      if (words === '') continue;
      const named = { rank: rank++, part, words };
      put(this.#names, words, named);
      put(this.#looseNames, withoutSmallWords(`${words} `).trimEnd(), named);
    }
  }

  /** The state that a mark's words name, with small words between them or not; null for none. */
  state(words: string): StateTerm | null {
    return this.#exactly(words) ?? this.#loosely(withoutSmallWords(words));
  }

  #exactly(words: string): StateTerm | null {
    let best: Named | null = null;
    let condition = '';
    for (const [name, rest] of parted(words)) {
      for (const named of this.#names.get(name) ?? []) {
        const [first] = this.#conditions(named.part).get(rest) ?? [];
        if (first === undefined || (best !== null && best.rank <= named.rank)) continue;
        best = named;
        condition = first.condition;
      }
    }
    return best && { part: best.part.name, condition };
  }

  /** The same without the small words of a phrase; null where two states are one without them. */
  #loosely(words: string): StateTerm | null {
    let found: StateTerm | null = null;
    for (const [name, rest] of parted(words)) {
      for (const named of this.#looseNames.get(name) ?? []) {
        for (const worded of this.#looseConditions(named.part).get(rest) ?? []) {
          const state = this.#exactly(`${named.words} ${worded.words}`);
          if (state === null) continue;
          if (found && (found.part !== state.part || found.condition !== state.condition))
            return null;
          found = state;
        }
      }
    }
    return found;
  }

  #sorted({ conditions }: KindPart, isLoose: boolean): ReadonlyMap<string, Worded[]> {
    const sorted = new Map<string, Worded[]>();
    for (const { name, aliases } of conditions.values()) {
      for (const each of [name, ...aliases]) {
        const words = this.#wordsOf(each);
        if (words === '') continue;
        // Behind a name the first word may be a small one as well.
        const key = isLoose ? withoutSmallWords(` ${words}`).trimStart() : words;
        put(sorted, key, { condition: name, words });
      }
    }
    return sorted;
  }
}

/** `cam on the second step` is `cam second step`; the last word stays, which may be `on` itself. */
function withoutSmallWords(words: string): string {
  return words.replace(/ (?:the|its|an?|on|at|in|upon|against|to)(?= )/g, '');
}

function put<T>(map: Map<string, T[]>, key: string, value: T): void {
  const known = map.get(key);
  if (known) known.push(value);
  else map.set(key, [value]);
}

/** Words parted at each blank: a name, and what is said behind it. */
function* parted(words: string): Generator<readonly [string, string]> {
  for (let at = words.indexOf(' '); at > 0; at = words.indexOf(' ', at + 1))
    yield [words.slice(0, at), words.slice(at + 1)];
}
