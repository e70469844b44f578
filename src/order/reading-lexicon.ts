import { changes } from '../kinds/index.ts';
import type { Kind, StateTerm } from '../kinds/model.ts';
import { oncePer, plainWords } from '../text/index.ts';
import { looseWords, patternWords } from './reading-tokens.ts';
import { type Form, formsOf, PARTICLES, plainForms } from './reading-words.ts';

/** A name that words may give: the parts that it may mean, or none for what is no part. */
export interface Noun {
  readonly words: readonly string[];
  readonly parts: readonly string[];
}

/** One form of a verb of the kind, under its first word. */
export interface VerbForm {
  readonly form: Form;
  /** The verb's other words, right behind its first: `off` of `taken off`. */
  readonly rest: readonly string[];
  /** What must follow the object: `off` of `take ~ off`; empty for a verb without a particle. */
  readonly tail: readonly string[];
  readonly group: string;
}

/** Words that say of the part before them that it does something: `shuts` in `the plates shut`. */
export interface Doing {
  readonly words: readonly string[];
  readonly group: string;
}

export interface Phrase {
  readonly words: readonly string[];
  readonly term: StateTerm;
}

export interface ConditionWords {
  readonly part: string;
  readonly condition: string;
  readonly words: readonly string[];
}

/**
 * Entries under their first word, the ones that say most first. They are made when a word is first
 * looked up: a sheet meets few of a kind's words, and a program that checks one sheet starts at once.
 */
export class Entries<R, T> {
  readonly #rows = new Map<string, R[]>();
  readonly #made = new Map<string, readonly T[]>();
  readonly #make: (rows: readonly R[], word: string) => T[];
  readonly #weight: (entry: T) => number;

  constructor(make: (rows: readonly R[], word: string) => T[], weight: (entry: T) => number) {
    this.#make = make;
    this.#weight = weight;
  }

  add(word: string, row: R): void {
    const rows = this.#rows.get(word);
    if (rows) rows.push(row);
    else this.#rows.set(word, [row]);
  }

  has(word: string): boolean {
    return this.#rows.has(word);
  }

  /** What begins with a word; undefined where nothing does. */
  get(word: string): readonly T[] | undefined {
    const rows = this.#rows.get(word);
    if (!rows) return undefined;
    let made = this.#made.get(word);
    if (!made) {
      made = this.#make(rows, word).sort((one, two) => this.#weight(two) - this.#weight(one));
      this.#made.set(word, made);
    }
    return made;
  }
}

/** How many words the forms of verbs are kept for: far more than the sheets of a club use. */
export const KEPT = 20_000;

/** Entries under the plain form of a verb, found by any of its forms. */
class Inflected<E, T> {
  readonly #entries: { get(word: string): readonly E[] | undefined; has(word: string): boolean };
  readonly #inflect: (entry: E, form: Form, word: string) => T | null;
  /** Null for a word that is no form of any entry: most are. */
  readonly #known = new Map<string, readonly T[] | null>();

  constructor(
    entries: { get(word: string): readonly E[] | undefined; has(word: string): boolean },
    inflect: (entry: E, form: Form, word: string) => T | null,
  ) {
    this.#entries = entries;
    this.#inflect = inflect;
  }

  has(word: string): boolean {
    return this.get(word) !== undefined;
  }

  /** What begins with a form of a verb; undefined where nothing does. */
  get(word: string): readonly T[] | undefined {
    const known = this.#known.get(word);
    if (known !== undefined) return known ?? undefined;
    const found: T[] = [];
    for (const verb of plainForms(word)) {
      if (!this.#entries.has(verb)) continue;
      for (const [form, inflected] of formsOf(verb)) {
        if (inflected !== word) continue;
        for (const entry of this.#entries.get(verb) ?? []) {
          const made = this.#inflect(entry, form, word);
          if (made !== null) found.push(made);
        }
      }
    }
    const made = found.length > 0 ? found : null;
    if (this.#known.size < KEPT) this.#known.set(word, made);
    return made ?? undefined;
  }
}

interface NameRow {
  readonly name: string;
  readonly part: string | null;
}

interface PatternRow {
  readonly pattern: string;
  readonly group: string;
  /** The particle of `take ~ off` where it stands before the object: `take off the cover`. */
  readonly isJoined: boolean;
}

interface PhraseRow {
  readonly phrase: string;
  readonly term: StateTerm;
}

interface ConditionRow extends StateTerm {
  readonly name: string;
}

/** A kind's words made ready for reading. */
export interface Lexicon {
  readonly nouns: Entries<NameRow, Noun>;
  readonly verbs: Inflected<Omit<VerbForm, 'form'>, VerbForm>;
  readonly doings: Inflected<Doing, Doing>;
  readonly phrases: Entries<PhraseRow, Phrase>;
  readonly conditions: Entries<ConditionRow, ConditionWords>;
  /** What a part does that goes a way without a verb: `take-off` for `away`. */
  readonly ways: ReadonlyMap<string, string>;
  /** Groups of verbs that are done wholly or not at all. */
  readonly whole: ReadonlySet<string>;
}

/** The words of a kind, made once: parts, no parts and settings are its nouns. */
export const lexiconOf = oncePer((kind: Kind): Lexicon => {
  const { verbs, doings } = verbsOf(kind);
  return {
    nouns: nounsOf(kind),
    verbs,
    doings,
    phrases: phrasesOf(kind),
    conditions: conditionsOf(kind),
    ways: new Map(Object.entries(changes.ways)),
    whole: new Set(changes.whole),
  };
});

/** The first word of a name or a phrase as data gives it: `{idle-stop}`, `float` of `Float-level`. */
function firstWord(text: string): string {
  // Nearly all data is small letters and blanks; hundreds of names are looked at before the first step.
  let end = 0;
  for (let code = text.charCodeAt(end); code >= 97 && code <= 122; code = text.charCodeAt(end))
    end++;
  if (end > 0 && (end === text.length || text.charCodeAt(end) === 32)) return text.slice(0, end);
  const match = /^\{[^}]*\}|[\p{L}\p{N}]+/u.exec(text);
  return match ? match[0].toLowerCase() : '';
}

/** The word that a phrase is found under: its first that is no article and no stop. */
function firstLoose(phrase: string): string {
  return looseWords(phrase).find((word) => word !== '.') ?? '';
}

function plural(name: string): string {
  if (/[^aeiou]y$/.test(name)) return `${name.slice(0, -1)}ies`;
  return /(?:x|ch|sh)$/.test(name) ? `${name}es` : `${name}s`;
}

function nounsOf(kind: Kind): Lexicon['nouns'] {
  const nouns = new Entries<NameRow, Noun>(
    (rows) => {
      const byName = new Map<string, string[]>();
      for (const { name, part } of rows) {
        const key = plainWords(name);
        const parts = byName.get(key) ?? [];
        if (part !== null && !parts.includes(part)) parts.push(part);
        byName.set(key, parts);
      }
      return [...byName].map(([name, parts]) => ({ words: name.split(' '), parts }));
    },
    ({ words }) => words.length,
  );
  const add = (name: string, part: string | null): void => {
    nouns.add(firstWord(name), { name, part });
    if (name.endsWith('s')) return;
    const many = plural(name);
    nouns.add(firstWord(many), { name: many, part });
  };
  for (const part of kind.parts.values()) {
    for (const name of [part.label, part.name, ...part.aliases]) add(name, part.name);
  }
  const noPart = (name: string): void => add(name, null);
  for (const name of kind.notParts) noPart(name);
  // A setting is named like what is set: `the idle needle`, `the float`. What it names is no part.
  for (const setting of kind.settings.values()) {
    noPart(setting.label);
    for (const name of setting.aliases) noPart(name);
  }
  return nouns;
}

function verbsOf(kind: Kind): Pick<Lexicon, 'verbs' | 'doings'> {
  const verbs = new Entries<PatternRow, Omit<VerbForm, 'form'>>(
    (rows) =>
      rows.map(({ pattern, group, isJoined }) => {
        const [before = '', behind = ''] = pattern.split('~');
        const head = patternWords(before);
        const tail = isJoined ? patternWords(behind) : looseWords(behind);
        const rest = isJoined ? [...head.slice(1), ...tail] : head.slice(1);
        return { rest, tail: isJoined ? [] : tail, group };
      }),
    // What a verb says with more words goes before what it says with fewer.
    ({ rest, tail }) => 2 * (rest.length + tail.length) + tail.length,
  );
  const doings = new Entries<PatternRow, Doing>(
    (rows) => rows.map(({ pattern, group }) => ({ words: patternWords(pattern), group })),
    ({ words }) => words.length,
  );
  for (const [group, patterns] of kind.verbs) {
    for (const pattern of patterns) {
      const first = firstWord(pattern);
      if (pattern.startsWith('~')) {
        doings.add(first, { pattern, group, isJoined: false });
        continue;
      }
      verbs.add(first, { pattern, group, isJoined: false });
      // `take the cover off` is `take off the cover` as well.
      const gap = pattern.indexOf('~');
      if (gap > 0 && PARTICLES.has(pattern.slice(gap + 1).trim()))
        verbs.add(first, { pattern, group, isJoined: true });
    }
  }
  return {
    verbs: new Inflected(verbs, (entry, form) => ({ ...entry, form })),
    doings: new Inflected(doings, (entry, form, word) =>
      form === 'base' || form === 's' ? { ...entry, words: [word, ...entry.words.slice(1)] } : null,
    ),
  };
}

function phrasesOf(kind: Kind): Lexicon['phrases'] {
  const phrases = new Entries<PhraseRow, Phrase>(
    (rows) => rows.map(({ phrase, term }) => ({ words: looseWords(phrase), term })),
    ({ words }) => words.length,
  );
  for (const { says, state } of kind.phrases)
    for (const phrase of says) phrases.add(firstLoose(phrase), { phrase, term: state });
  return phrases;
}

function conditionsOf(kind: Kind): Lexicon['conditions'] {
  const conditions = new Entries<ConditionRow, ConditionWords>(
    (rows) =>
      rows.map(({ part, condition, name }) => ({
        part,
        condition,
        words: looseWords(name),
      })),
    ({ words }) => words.length,
  );
  for (const part of kind.parts.values()) {
    for (const condition of part.conditions.values()) {
      const state = { part: part.name, condition: condition.name };
      for (const name of [condition.name, ...condition.aliases])
        conditions.add(looseWords(name)[0] ?? '', { ...state, name });
    }
  }
  return conditions;
}
