import type { Kind, StateTerm } from '../kinds/model.ts';
import { plainWords } from './marks.ts';
import { patternWords } from './reading-tokens.ts';
import { type Form, formsOf, PARTICLES } from './reading-words.ts';

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

/** Entries under their first word, the ones that say most first, so that most words cost one look. */
type ByFirstWord<T> = ReadonlyMap<string, readonly T[]>;

/** A kind's words made ready for reading. */
export interface Lexicon {
  readonly nouns: ByFirstWord<Noun>;
  readonly verbs: ByFirstWord<VerbForm>;
  readonly doings: ByFirstWord<Doing>;
  readonly phrases: ByFirstWord<Phrase>;
  readonly conditions: ByFirstWord<ConditionWords>;
}

const lexicons = new WeakMap<Kind, Lexicon>();

/** The words of a kind, made once: parts, no parts and settings are its nouns. */
export function lexiconOf(kind: Kind): Lexicon {
  let lexicon = lexicons.get(kind);
  if (!lexicon) {
    lexicon = {
      nouns: nounsOf(kind),
      verbs: verbsOf(kind),
      doings: doingsOf(kind),
      phrases: phrasesOf(kind),
      conditions: conditionsOf(kind),
    };
    lexicons.set(kind, lexicon);
  }
  return lexicon;
}

function byFirstWord<T>(
  entries: Iterable<readonly [string, T]>,
  weight: (entry: T) => number,
): ByFirstWord<T> {
  const groups = new Map<string, T[]>();
  for (const [first, entry] of entries) {
    const group = groups.get(first);
    if (group) group.push(entry);
    else groups.set(first, [entry]);
  }
  for (const group of groups.values()) group.sort((one, two) => weight(two) - weight(one));
  return groups;
}

function nounsOf(kind: Kind): ByFirstWord<Noun> {
  const nouns = new Map<string, string[]>();
  const name = (text: string, part: string | null): void => {
    const key = plainWords(text);
    const parts = nouns.get(key) ?? [];
    if (part !== null && !parts.includes(part)) parts.push(part);
    nouns.set(key, parts);
  };
  for (const part of kind.parts.values()) {
    for (const each of [part.label, part.name, ...part.aliases]) name(each, part.name);
  }
  for (const each of kind.notParts) name(each, null);
  // A setting is named like what is set: `the idle needle`, `the float`. What it names is no part.
  for (const setting of kind.settings.values()) {
    for (const each of [setting.label, ...setting.aliases]) name(each, null);
  }
  return byFirstWord(
    [...nouns].map(([key, parts]): [string, Noun] => {
      const words = key.split(' ');
      return [words[0] ?? '', { words, parts }];
    }),
    ({ words }) => words.length,
  );
}

function verbsOf(kind: Kind): ByFirstWord<VerbForm> {
  const forms: [string, VerbForm][] = [];
  const add = (head: readonly string[], tail: readonly string[], group: string): void => {
    const [first = '', ...rest] = head;
    for (const [form, word] of formsOf(first)) forms.push([word, { form, rest, tail, group }]);
  };
  for (const [group, patterns] of kind.verbs) {
    for (const pattern of patterns) {
      const [head = [], tail = []] = pattern.split('~').map(patternWords);
      if (head.length === 0) continue;
      add(head, tail, group);
      // `take the cover off` is `take off the cover` as well.
      const particle = tail.length === 1 && PARTICLES.has(tail[0] ?? '');
      if (particle) add([...head, ...tail], [], group);
    }
  }
  // What a verb says with more words goes before what it says with fewer.
  return byFirstWord(forms, ({ rest, tail }) => 2 * (rest.length + tail.length) + tail.length);
}

function doingsOf(kind: Kind): ByFirstWord<Doing> {
  const doings: [string, Doing][] = [];
  for (const [group, patterns] of kind.verbs) {
    for (const pattern of patterns) {
      if (!pattern.trimStart().startsWith('~')) continue;
      const [first = '', ...rest] = patternWords(pattern);
      for (const [form, word] of formsOf(first)) {
        if (form === 'base' || form === 's') doings.push([word, { words: [word, ...rest], group }]);
      }
    }
  }
  return byFirstWord(doings, ({ words }) => words.length);
}

function phrasesOf(kind: Kind): ByFirstWord<Phrase> {
  return byFirstWord(
    kind.phrases.flatMap(({ says, state }) =>
      says.map((phrase): [string, Phrase] => {
        const words = patternWords(phrase);
        return [words[0] ?? '', { words, term: state }];
      }),
    ),
    ({ words }) => words.length,
  );
}

function conditionsOf(kind: Kind): ByFirstWord<ConditionWords> {
  const entries: [string, ConditionWords][] = [];
  for (const part of kind.parts.values()) {
    for (const condition of part.conditions.values()) {
      for (const name of [condition.name, ...condition.aliases]) {
        const words = plainWords(name).split(' ');
        const entry = { part: part.name, condition: condition.name, words };
        entries.push([words[0] ?? '', entry]);
      }
    }
  }
  return byFirstWord(entries, ({ words }) => words.length);
}
