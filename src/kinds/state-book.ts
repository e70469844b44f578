import type { Kind, KindPart, StateTerm } from './model.ts';
import { levelName } from './name-book.ts';

/** What a kind answers of the names of its parts and their conditions. */
type StateNames = Pick<
  Kind,
  'partNamed' | 'partBegun' | 'conditionNamed' | 'stateNamed' | 'stateNames'
>;

/** The answers for some parts; the book of their names is made at the first question. */
export function stateNames(parts: ReadonlyMap<string, KindPart>): StateNames {
  const book = new StateBook(parts);
  return {
    partNamed: (text) => book.part(text),
    partBegun: (text) => book.partBegun(text),
    conditionNamed: (text, part) => book.condition(part, text),
    stateNamed: (text) => book.state(text),
    stateNames: () => book.names(),
  };
}

/** A kind with other parts; itself where they are its own. */
export function withParts(kind: Kind, parts: ReadonlyMap<string, KindPart>): Kind {
  return parts === kind.parts ? kind : { ...kind, parts, ...stateNames(parts) };
}

class StateBook {
  readonly #parts: ReadonlyMap<string, KindPart>;
  #partNames: ReadonlyMap<string, KindPart> | null = null;
  #states: ReadonlyMap<string, StateTerm> | null = null;
  #looseStates: ReadonlyMap<string, StateTerm | null> | null = null;

  constructor(parts: ReadonlyMap<string, KindPart>) {
    this.#parts = parts;
  }

  /** The part that a text names; a part's name goes before the label or alias of another. Null for none. */
  part(text: string): KindPart | null {
    return this.#partBook().get(wordsOf(text)) ?? null;
  }

  /** The part whose name, label or alias a text begins with; the longest where several do. */
  partBegun(text: string): KindPart | null {
    const words = wordsOf(text).split(' ');
    for (let count = words.length; count > 0; count--) {
      const part = this.#partBook().get(words.slice(0, count).join(' '));
      if (part !== undefined) return part;
    }
    return null;
  }

  /** The condition of a part that a text names; null for none. */
  condition(part: KindPart, text: string): string | null {
    const words = wordsOf(text);
    for (const { name, aliases } of part.conditions.values())
      if ([name, ...aliases].some((each) => wordsOf(each) === words)) return name;
    return null;
  }

  /** What `Kind.stateNamed` gives. */
  state(text: string): StateTerm | null {
    const words = wordsOf(text);
    return this.#stateBook().get(words) ?? this.#looseBook().get(withoutSmallWords(words)) ?? null;
  }

  /** Every way to write a state, in small letters with single blanks. */
  names(): readonly string[] {
    return [...this.#stateBook().keys()];
  }

  #partBook(): ReadonlyMap<string, KindPart> {
    this.#partNames ??= firstOf(namesOf(this.#parts).map(([name, part]) => [name, part] as const));
    return this.#partNames;
  }

  #stateBook(): ReadonlyMap<string, StateTerm> {
    this.#states ??= firstOf(
      namesOf(this.#parts).flatMap(([name, part]) =>
        [...part.conditions.values()].flatMap((condition) => {
          const term = { part: part.name, condition: condition.name };
          return [condition.name, ...condition.aliases].map(
            (word) => [`${name} ${wordsOf(word)}`, term] as const,
          );
        }),
      ),
    );
    return this.#states;
  }

  /** The same without the small words of a phrase; null where two states are one without them. */
  #looseBook(): ReadonlyMap<string, StateTerm | null> {
    if (this.#looseStates !== null) return this.#looseStates;
    const made = new Map<string, StateTerm | null>();
    for (const [words, state] of this.#stateBook()) {
      const key = withoutSmallWords(words);
      const other = made.get(key);
      const isOne =
        other === undefined || (other?.part === state.part && other.condition === state.condition);
      made.set(key, isOne ? state : null);
    }
    this.#looseStates = made;
    return made;
  }
}

/** The one spelling of names, with blanks: `Cam, highest step` is `cam highest step`. */
function wordsOf(text: string): string {
  return levelName(text).replaceAll('-', ' ');
}

/** `cam on the second step` is `cam second step`; the last word stays, which may be `on` itself. */
function withoutSmallWords(words: string): string {
  return words.replace(/ (?:the|its|an?|on|at|in|upon|against|to)(?= )/g, '');
}

/** Names and labels before aliases, so that an alias that two parts share never hides a name. */
function namesOf(parts: ReadonlyMap<string, KindPart>): readonly (readonly [string, KindPart])[] {
  const all = [...parts.values()];
  return [
    ...all.flatMap((part) => [part.name, part.label].map((name) => [name, part] as const)),
    ...all.flatMap((part) => part.aliases.map((name) => [name, part] as const)),
  ].map(([name, part]) => [wordsOf(name), part] as const);
}

function firstOf<T>(entries: readonly (readonly [string, T])[]): ReadonlyMap<string, T> {
  const book = new Map<string, T>();
  for (const [name, value] of entries) if (!book.has(name)) book.set(name, value);
  return book;
}
