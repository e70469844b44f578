import { type Clauses, isAdverb } from './reading-clauses.ts';
import type { WordInfo } from './reading-infos.ts';
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
  /** Whether it is `it` or `them`, and so only one of its parts. */
  readonly isPronoun: boolean;
}

/** What `it` at the head of the next step may mean. */
export type Topic = readonly string[];

/** The things that a step names, left to right, with `it` and `them` as what they stand for. */
export function mentionsOf(
  tokens: readonly Token[],
  clauses: Clauses,
  lexicon: Lexicon,
  topic: Topic,
  infos: readonly WordInfo[],
): { readonly mentions: readonly Mention[]; readonly topic: Topic } {
  const mentions: Mention[] = [];
  for (let at = 0; at < tokens.length; ) {
    const info = infos[at];
    if (info?.isPronoun) {
      const parts = meantBy(mentions, clauses, topic, clauses.clause[at]);
      mentions.push({ at, end: at + 1, parts, isPronoun: true });
      at++;
      continue;
    }
    const noun = info?.nouns?.find(({ words }) => matchesAt(tokens, at, words));
    if (noun && !isVerbHere(tokens, at, noun.words.length)) {
      const end = at + noun.words.length;
      const earlier = mentions[mentions.length - 1];
      const isJoined = earlier !== undefined && earlier.end === at && !earlier.isPronoun;
      if (isJoined) mentions.pop();
      // `Replace any rod that is worn` is about no rod in particular, and changes nothing yet.
      const isAlone =
        !isJoined &&
        tokens[at - 1]?.word !== 'any' &&
        endsName(tokens, end, lexicon) &&
        !isQualified(tokens, at, lexicon);
      mentions.push({ at, end, parts: isAlone ? noun.parts : [], isPronoun: false });
      at = end;
      continue;
    }
    if (info?.isDeterminer) {
      const unknown = unknownAfter(tokens, at + 1, lexicon);
      if (unknown > 0)
        mentions.push({ at: unknown, end: unknown + 1, parts: [], isPronoun: false });
    }
    at++;
  }
  return { mentions, topic: mentions.length > 0 ? meantBy(mentions, clauses, topic) : topic };
}

/**
 * What `it` may be: what the last clause with a name was about, then what it named last, and where
 * `it` stands in that clause itself, what the one before was about (`the cover, with the gasket on
 * it`). Before any of them it is what the last step left.
 */
function meantBy(
  mentions: readonly Mention[],
  clauses: Clauses,
  topic: Topic,
  own?: number,
): Topic {
  const last = mentions[mentions.length - 1];
  if (!last) return topic;
  const latest = headOf(mentions, mentions.length - 1, clauses);
  const isOwn = own !== undefined && own === clauses.clause[last.at];
  const earlier = isOwn && latest > 0 ? mentions[headOf(mentions, latest - 1, clauses)] : undefined;
  const parts: string[] = [];
  for (const each of [mentions[latest], last, earlier]) {
    for (const part of each?.parts ?? []) if (!parts.includes(part)) parts.push(part);
  }
  return parts;
}

/** The index of the first thing that is named in the clause of another. */
function headOf(mentions: readonly Mention[], index: number, clauses: Clauses): number {
  const number = clauses.clause[mentions[index]?.at ?? 0];
  let head = index;
  while (head > 0 && clauses.clause[mentions[head - 1]?.at ?? 0] === number) head--;
  return head;
}

/** `Cover the bowl`: a name at the head of a clause with an article behind it is a verb. */
function isVerbHere(tokens: readonly Token[], at: number, length: number): boolean {
  if (length > 1) return false;
  const next = tokens[at + 1]?.word ?? '.';
  if (!DETERMINERS.has(next) && !PRONOUNS.has(next)) return false;
  // `Lid the right way up`
  if (/^(?:right|wrong|other)$/.test(tokens[at + 2]?.word ?? '')) return false;
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
    (lexicon.verbs.get(word)?.some(({ form }) => form !== 'base') ?? false) ||
    lexicon.doings.has(word) ||
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
    if (word === undefined || isStop(word) || CONJUNCTIONS.has(word)) return 0;
    const isNoun = lexicon.nouns.get(word)?.some(({ words }) => matchesAt(tokens, at, words));
    if (isNoun) return 0;
    const isDescribing =
      DETERMINERS.has(word) || ADJECTIVES.has(word) || lexicon.conditions.has(word);
    if (!isDescribing && word !== 'of' && !/ed$/.test(word)) return at;
  }
  return 0;
}
