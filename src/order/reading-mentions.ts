import { type Clauses, isAdverb } from './reading-clauses.ts';
import type { Lexicon } from './reading-lexicon.ts';
import { isStop, matchesAt, type Token } from './reading-tokens.ts';
import {
  ADJECTIVES,
  CONDITIONALS,
  CONJUNCTIONS,
  COPULAS,
  DETERMINERS,
  MODALS,
  NEGATIONS,
  PREPOSITIONS,
  PRONOUNS,
  STATIVES,
  SUBJECTS,
  UNDONE,
} from './reading-words.ts';

/** A thing that a step names, or points at with `it`. */
export interface Mention {
  readonly at: number;
  readonly end: number;
  /** The parts that it may be, the likeliest first; empty for what is no part. */
  readonly parts: readonly string[];
}

/** What `it` at the head of the next step may mean. */
export type Topic = readonly string[];

/** The things that a step names, left to right, with `it` and `them` as what they stand for. */
export function mentionsOf(
  tokens: readonly Token[],
  clauses: Clauses,
  lexicon: Lexicon,
  topic: Topic,
): { readonly mentions: readonly Mention[]; readonly topic: Topic } {
  const mentions: Mention[] = [];
  for (let at = 0; at < tokens.length; ) {
    const word = tokens[at]?.word ?? '';
    if (PRONOUNS.has(word)) {
      mentions.push({ at, end: at + 1, parts: meantBy(mentions, clauses, topic) });
      at++;
      continue;
    }
    const noun = lexicon.nouns.get(word)?.find(({ words }) => matchesAt(tokens, at, words));
    if (noun && !isVerbHere(tokens, at, noun.words.length)) {
      const end = at + noun.words.length;
      const earlier = mentions[mentions.length - 1];
      const isJoined = earlier !== undefined && earlier.end === at && !isPronoun(tokens, earlier);
      if (isJoined) mentions.pop();
      const isAlone =
        !isJoined && endsName(tokens, end, lexicon) && !isQualified(tokens, at, lexicon);
      mentions.push({ at, end, parts: isAlone ? noun.parts : [] });
      at = end;
      continue;
    }
    if (DETERMINERS.has(word)) {
      const unknown = unknownAfter(tokens, at + 1, lexicon);
      if (unknown > 0) mentions.push({ at: unknown, end: unknown + 1, parts: [] });
    }
    at++;
  }
  return { mentions, topic: mentions.length > 0 ? meantBy(mentions, clauses, topic) : topic };
}

function isPronoun(tokens: readonly Token[], { at }: Mention): boolean {
  return PRONOUNS.has(tokens[at]?.word ?? '');
}

/** What the clause before was about, then what was named last; before any, what the step before left. */
function meantBy(mentions: readonly Mention[], clauses: Clauses, topic: Topic): Topic {
  const last = mentions[mentions.length - 1];
  if (!last) return topic;
  const number = clauses.clause[last.at];
  let first = last;
  for (let i = mentions.length - 2; i >= 0; i--) {
    const each = mentions[i];
    if (!each || clauses.clause[each.at] !== number) break;
    first = each;
  }
  if (first === last) return last.parts;
  return [...first.parts, ...last.parts.filter((part) => !first.parts.includes(part))];
}

/** `Cover the bowl`: a name at the head of a clause with an article behind it is a verb. */
function isVerbHere(tokens: readonly Token[], at: number, length: number): boolean {
  if (length > 1) return false;
  const next = tokens[at + 1]?.word ?? '.';
  if (!DETERMINERS.has(next) && !PRONOUNS.has(next)) return false;
  const previous = tokens[at - 1]?.word;
  return isStop(previous) || CONJUNCTIONS.has(previous ?? '') || previous === 'to';
}

/** A name ends where no further noun follows: `cover bolts` and `throttle spring` are other things. */
function endsName(tokens: readonly Token[], end: number, lexicon: Lexicon): boolean {
  const word = tokens[end]?.word;
  return isStop(word) || isKnown(word ?? '', lexicon) || /(?:ed|ing)$/.test(word ?? '');
}

/** Words that are surely no noun of their own. */
function isKnown(word: string, lexicon: Lexicon): boolean {
  return (
    PREPOSITIONS.has(word) ||
    isAdverb(word) ||
    CONJUNCTIONS.has(word) ||
    COPULAS.has(word) ||
    DETERMINERS.has(word) ||
    MODALS.has(word) ||
    STATIVES.has(word) ||
    PRONOUNS.has(word) ||
    CONDITIONALS.has(word) ||
    NEGATIONS.has(word) ||
    UNDONE.has(word) ||
    SUBJECTS.has(word) ||
    word === 'where' ||
    lexicon.conditions.has(word) ||
    lexicon.verbs.has(word) ||
    lexicon.doings.has(word) ||
    lexicon.nouns.has(word) ||
    /^\d/.test(word)
  );
}

/** An unknown noun before a name makes it another thing: `the valve cover`. */
function isQualified(tokens: readonly Token[], at: number, lexicon: Lexicon): boolean {
  const word = tokens[at - 1]?.word;
  if (word === undefined || isStop(word)) return false;
  if (ADJECTIVES.has(word) || isKnown(word, lexicon) || /(?:ed|ing)$/.test(word)) return false;
  // An unknown word that opens its clause is a verb, in note style: `Unclip cover`.
  let first = at - 1;
  while (first > 0 && isAdverb(tokens[first - 1]?.word ?? '')) first--;
  const opener = tokens[first - 1]?.word;
  return !(isStop(opener) || CONJUNCTIONS.has(opener ?? ''));
}

/** Where behind an article an unknown noun stands; 0 where a name of the kind does. */
function unknownAfter(tokens: readonly Token[], from: number, lexicon: Lexicon): number {
  for (let at = from; at < from + 4; at++) {
    const word = tokens[at]?.word;
    if (word === undefined || isStop(word)) return 0;
    const isNoun = lexicon.nouns.get(word)?.some(({ words }) => matchesAt(tokens, at, words));
    if (isNoun) return 0;
    if (!DETERMINERS.has(word) && !ADJECTIVES.has(word) && word !== 'of') return at;
  }
  return 0;
}
