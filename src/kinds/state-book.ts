import { MarkBook } from './mark-book.ts';
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
  #marks: MarkBook | null = null;

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
    this.#marks ??= new MarkBook(namesOf(this.#parts), wordsOf);
    return this.#marks.state(wordsOf(text));
  }

  /** Every way to write a state, in small letters with single blanks. */
  names(): readonly string[] {
    const names = namesOf(this.#parts).flatMap(([name, { conditions }]) =>
      [...conditions.values()].flatMap((condition) =>
        [condition.name, ...condition.aliases].map((word) => `${name} ${wordsOf(word)}`),
      ),
    );
    return [...new Set(names)];
  }

  #partBook(): ReadonlyMap<string, KindPart> {
    this.#partNames ??= firstOf(namesOf(this.#parts).map(([name, part]) => [name, part] as const));
    return this.#partNames;
  }
}

/** The one spelling of names, with blanks: `Cam, highest step` is `cam highest step`. */
function wordsOf(text: string): string {
  return levelName(text).replaceAll('-', ' ');
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
