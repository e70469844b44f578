import type { Kind, StateTerm } from '../kinds/model.ts';
import { plainWords } from './marks.ts';

/** A state that a step's words say, with the offsets of the words in its text. */
export interface ReadState {
  readonly term: StateTerm;
  readonly start: number;
  readonly end: number;
  readonly verb: string | null;
}

/** A kind's words made ready for reading: nouns longest first, verbs with their particles. */
interface Lexicon {
  readonly nouns: ByFirstWord<Noun>;
  readonly verbs: ByFirstWord<Verb>;
  readonly phrases: ByFirstWord<Phrase>;
}

/** Entries under their first word, the longest first, so that most words cost one look. */
type ByFirstWord<T> = ReadonlyMap<string, readonly T[]>;

interface Noun {
  readonly words: readonly string[];
  /** The parts that it may name; empty for a name that is no part. */
  readonly parts: readonly string[];
}

interface Verb {
  readonly words: readonly string[];
  /** What must follow the object: `off` of `take ~ off`; empty for a verb without a particle. */
  readonly tail: readonly string[];
  readonly group: string;
}

interface Phrase {
  readonly words: readonly string[];
  readonly term: StateTerm;
}

const lexicons = new WeakMap<Kind, Lexicon>();

interface Token {
  readonly word: string;
  readonly start: number;
  readonly end: number;
}

/** How many words may part a verb from its object or its particle. */
const REACH = 6;

const NEGATIONS: ReadonlySet<string> = new Set([
  'not',
  'never',
  'without',
  'no',
  "don't",
  'unless',
  'before',
]);
const PRONOUNS: ReadonlySet<string> = new Set(['it', 'them']);
const FILLERS: ReadonlySet<string> = new Set([
  'the',
  'a',
  'an',
  'is',
  'are',
  'must',
  'be',
  'stands',
  'stand',
  'still',
  'now',
  'both',
  'all',
  'new',
  'old',
  'its',
  'their',
  'again',
  'fully',
  'lightly',
  'right',
  'straight',
  'until',
]);

/**
 * What a step's sentence says of the unit's state: phrases that say it by themselves, a verb with a
 * part as its object (`Lift the cover off`, `Close the throttle`), and a part with one of its
 * conditions behind it (`with the cover inverted`). Each sentence is read by itself; what is negated
 * or merely possible is passed over.
 */
export function readStates(text: string, kind: Kind): readonly ReadState[] {
  const lexicon = lexiconOf(kind);
  const found: ReadState[] = [];
  let noun: readonly string[] = [];
  for (const clause of clauses(text)) {
    noun = readClause(clause, lexicon, kind, found, noun);
  }
  return found.sort((a, b) => a.start - b.start);
}

function lexiconOf(kind: Kind): Lexicon {
  const known = lexicons.get(kind);
  if (known) return known;
  const nouns = new Map<string, string[]>();
  for (const part of kind.parts.values()) {
    for (const name of [part.label, part.name, ...part.aliases]) {
      const key = plainWords(name);
      const parts = nouns.get(key) ?? [];
      if (!parts.includes(part.name)) parts.push(part.name);
      nouns.set(key, parts);
    }
  }
  for (const name of kind.notParts) nouns.set(plainWords(name), []);
  const verbs = [...kind.verbs].flatMap(([group, patterns]) =>
    patterns.map((pattern): Verb => {
      const [head = '', tail = ''] = pattern.split('~').map(plainWords);
      return { words: head.split(' '), tail: tail === '' ? [] : tail.split(' '), group };
    }),
  );
  const phrases = kind.phrases.flatMap(({ says, state }) =>
    says.map((phrase): Phrase => ({ words: plainWords(phrase).split(' '), term: state })),
  );
  const made: Lexicon = {
    nouns: byFirstWord(
      [...nouns].map(([name, parts]): Noun => ({ words: name.split(' '), parts })),
    ),
    // Among verbs with the same head the one with a particle says more: `take ~ off` before `take`.
    verbs: byFirstWord(verbs, (verb) => verb.words.length + 2 * verb.tail.length),
    phrases: byFirstWord(phrases),
  };
  lexicons.set(kind, made);
  return made;
}

function byFirstWord<T extends { readonly words: readonly string[] }>(
  entries: readonly T[],
  weight: (entry: T) => number = ({ words }) => words.length,
): ByFirstWord<T> {
  const groups = new Map<string, T[]>();
  for (const entry of entries) {
    const first = entry.words[0] ?? '';
    const group = groups.get(first);
    if (group) group.push(entry);
    else groups.set(first, [entry]);
  }
  for (const group of groups.values()) group.sort((one, two) => weight(two) - weight(one));
  return groups;
}

/** Sentences and their parts at `;`, `:` and at `, and`, as words with their offsets. */
function clauses(text: string): Token[][] {
  const all: Token[][] = [];
  let clause: Token[] = [];
  const token = /[\p{L}\p{N}'’]+|[.;:!?,()]/gu;
  for (let match = token.exec(text); match; match = token.exec(text)) {
    const word = match[0].toLowerCase();
    if (/^[.;:!?()]$/.test(word)) {
      if (clause.length > 0) all.push(clause);
      clause = [];
    } else if (word !== ',') {
      clause.push({ word, start: match.index, end: match.index + word.length });
    }
  }
  if (clause.length > 0) all.push(clause);
  return all;
}

function matchesAt(tokens: readonly Token[], at: number, words: readonly string[]): boolean {
  for (let i = 0; i < words.length; i++) if (tokens[at + i]?.word !== words[i]) return false;
  return words.length > 0;
}

interface Mention {
  readonly at: number;
  readonly length: number;
  readonly parts: readonly string[];
}

function mentionsIn(tokens: readonly Token[], lexicon: Lexicon): Mention[] {
  const mentions: Mention[] = [];
  for (let at = 0; at < tokens.length; ) {
    const named = lexicon.nouns.get(tokens[at]?.word ?? '');
    const noun = named?.find(({ words }) => matchesAt(tokens, at, words));
    if (!noun) {
      at++;
      continue;
    }
    mentions.push({ at, length: noun.words.length, parts: noun.parts });
    at += noun.words.length;
  }
  return mentions;
}

function isNegated(tokens: readonly Token[], at: number): boolean {
  return [1, 2, 3].some((back) => NEGATIONS.has(tokens[at - back]?.word ?? ''));
}

/** Reads one clause; returns the parts of the last noun, which `it` in the next clause means. */
function readClause(
  tokens: readonly Token[],
  lexicon: Lexicon,
  kind: Kind,
  found: ReadState[],
  before: readonly string[],
): readonly string[] {
  const taken = new Array<boolean>(tokens.length).fill(false);
  const add = (term: StateTerm, from: number, to: number, verb: string | null): void => {
    const start = tokens[from]?.start ?? 0;
    const end = tokens[Math.min(to, tokens.length) - 1]?.end ?? start;
    if (found.some((each) => each.term.part === term.part && each.start < end && start < each.end))
      return;
    found.push({ term, start, end, verb });
  };
  for (let at = 0; at < tokens.length; at++) {
    const said = lexicon.phrases.get(tokens[at]?.word ?? '');
    const phrase = said?.find(({ words }) => matchesAt(tokens, at, words));
    if (!phrase || isNegated(tokens, at)) continue;
    add(phrase.term, at, at + phrase.words.length, null);
  }
  const mentions = mentionsIn(tokens, lexicon);
  for (let at = 0; at < tokens.length; at++) {
    if (taken[at] || isNegated(tokens, at)) continue;
    for (const verb of lexicon.verbs.get(tokens[at]?.word ?? '') ?? []) {
      if (!matchesAt(tokens, at, verb.words)) continue;
      const object = objectOf(tokens, at + verb.words.length, verb.tail, mentions, before);
      if (!object) continue;
      const term = stateBy(verb.group, object.parts, kind);
      if (!term) continue;
      add(term, at, object.end, verb.group);
      for (let i = at; i < at + verb.words.length; i++) taken[i] = true;
      break;
    }
  }
  for (const mention of mentions) {
    const read = conditionAfter(tokens, mention, kind);
    if (read && !isNegated(tokens, mention.at)) add(read.term, mention.at, read.end, null);
  }
  const last = mentions.findLast(({ parts }) => parts.length > 0);
  return last?.parts ?? before;
}

/** The noun that a verb acts on: the next within reach, or what `it` stands for, with its particle. */
function objectOf(
  tokens: readonly Token[],
  from: number,
  tail: readonly string[],
  mentions: readonly Mention[],
  before: readonly string[],
): { readonly parts: readonly string[]; readonly end: number } | null {
  const mention = mentions.find(({ at }) => at >= from && at <= from + REACH);
  const pronoun = tokens.findIndex(
    ({ word }, i) => i >= from && i <= from + 1 && PRONOUNS.has(word),
  );
  const earlier = mentions.findLast(({ at, parts }) => at < from && parts.length > 0);
  const parts = pronoun >= 0 ? (earlier?.parts ?? before) : (mention?.parts ?? []);
  const end = pronoun >= 0 ? pronoun + 1 : mention ? mention.at + mention.length : -1;
  if (end < 0 || parts.length === 0) return null;
  if (pronoun < 0 && mention && !isPlainObject(tokens, from, mention.at)) return null;
  if (tail.length === 0) return { parts, end };
  for (let at = end; at <= end + 3; at++) {
    if (matchesAt(tokens, at, tail)) return { parts, end: at + tail.length };
  }
  return null;
}

/** Between a verb and its object stand no prepositions: `fit a gauge under the cover` fits no cover. */
function isPlainObject(tokens: readonly Token[], from: number, to: number): boolean {
  for (let i = from; i < to; i++) {
    if (PREPOSITIONS.has(tokens[i]?.word ?? '')) return false;
  }
  return true;
}

const PREPOSITIONS: ReadonlySet<string> = new Set([
  'of',
  'in',
  'on',
  'under',
  'over',
  'with',
  'between',
  'at',
  'by',
  'for',
  'from',
  'to',
  'into',
  'onto',
  'against',
  'until',
  'and',
  'then',
  'through',
  'beside',
  'before',
  'after',
  'while',
  'when',
  'as',
  'so',
  'that',
  'past',
]);

function stateBy(group: string, parts: readonly string[], kind: Kind): StateTerm | null {
  for (const part of parts) {
    const condition = kind.parts.get(part)?.reads.get(group);
    if (condition !== undefined) return { part, condition };
  }
  return null;
}

/** `cover inverted`, `plates fully shut`, `throttle is wide open`: a condition right behind its part. */
function conditionAfter(
  tokens: readonly Token[],
  mention: Mention,
  kind: Kind,
): { readonly term: StateTerm; readonly end: number } | null {
  let at = mention.at + mention.length;
  for (let skipped = 0; skipped <= 3; skipped++) {
    for (const name of mention.parts) {
      const part = kind.parts.get(name);
      if (!part) continue;
      const best = longestCondition(tokens, at, part.conditions.values());
      if (best) return { term: { part: name, condition: best.name }, end: at + best.length };
    }
    if (!FILLERS.has(tokens[at]?.word ?? '')) return null;
    at++;
  }
  return null;
}

/** Words too short to mean a condition by themselves in running text. */
const WEAK: ReadonlySet<string> = new Set([
  'in',
  'on',
  'off',
  'out',
  'set',
  'down',
  'up',
  'step',
  'engine',
  'bench',
  'back',
  'slow',
  'clear',
  'home',
  'contact',
  'cool',
  'warm',
  'high',
  'named',
]);

function longestCondition(
  tokens: readonly Token[],
  at: number,
  conditions: Iterable<{ readonly name: string; readonly aliases: readonly string[] }>,
): { readonly name: string; readonly length: number } | null {
  let best: { name: string; length: number } | null = null;
  for (const condition of conditions) {
    for (const alias of [condition.name, ...condition.aliases]) {
      const words = plainWords(alias).split(' ');
      if (words.length === 1 && WEAK.has(words[0] ?? '')) continue;
      if (matchesAt(tokens, at, words) && words.length > (best?.length ?? 0)) {
        best = { name: condition.name, length: words.length };
      }
    }
  }
  return best;
}
