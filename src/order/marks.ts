import type { Kind, KindPart, StateTerm } from '../kinds/model.ts';
import { oncePer } from '../text/index.ts';

/** A word or name in the one spelling that marks are compared in: `Cam, highest step` → `cam highest step`. */
export function plainWords(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/**
 * The state that a mark's text names: a part by any of its names, then a condition by any of its
 * words (`gasket off`, `cam highest-step`, `fast idle cam: highest step`). Null where no part of the
 * kind has that condition under that name.
 */
export function stateNamed(text: string, kind: Kind): StateTerm | null {
  const words = plainWords(text);
  return bookOf(kind).get(words) ?? looseBookOf(kind).get(withoutSmallWords(words)) ?? null;
}

/** `cam on the second step` is `cam second step`; the last word stays, which may be `on` itself. */
function withoutSmallWords(words: string): string {
  return words.replace(/ (?:the|its|an?|on|at|in|upon|against|to)(?= )/g, '');
}

/** The same as `bookOf` without the small words of a phrase; null where two states are one without them. */
const looseBookOf = oncePer((kind: Kind): ReadonlyMap<string, StateTerm | null> => {
  const made = new Map<string, StateTerm | null>();
  for (const [words, state] of bookOf(kind)) {
    const key = withoutSmallWords(words);
    const other = made.get(key);
    const isOne =
      other === undefined || (other?.part === state.part && other.condition === state.condition);
    made.set(key, isOne ? state : null);
  }
  return made;
});

/** Every way to write a state of a kind as a mark, for the nearest to a misspelt one. */
export function knownMarks(kind: Kind): readonly string[] {
  return [...bookOf(kind).keys()];
}

/** Every way to write a state as a mark, and the state it is. */
const bookOf = oncePer(stateBook);

function stateBook(kind: Kind): ReadonlyMap<string, StateTerm> {
  const book = new Map<string, StateTerm>();
  // Names before aliases, so that an alias that two parts share never hides a name.
  for (const aliased of [false, true]) {
    for (const part of kind.parts.values()) {
      const names = aliased ? part.aliases : [part.name, part.label];
      for (const name of names) addConditions(book, part, name);
    }
  }
  return book;
}

function addConditions(book: Map<string, StateTerm>, part: KindPart, name: string): void {
  for (const condition of part.conditions.values()) {
    for (const word of [condition.name, ...condition.aliases]) {
      const key = plainWords(`${name} ${word}`);
      if (!book.has(key)) book.set(key, { part: part.name, condition: condition.name });
    }
  }
}

/** Whether a part in a condition meets a wanted one: itself, or one that it counts as. */
export function meets(
  kind: Kind,
  part: string,
  condition: string,
  wanted: readonly string[],
): boolean {
  if (wanted.includes(condition)) return true;
  const known = kind.parts.get(part)?.conditions.get(condition);
  return known?.countsAs.some((each) => wanted.includes(each)) ?? false;
}
