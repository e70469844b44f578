import { isAdverb } from './reading-clauses.ts';
import { beforeName, isOpener } from './reading-conditions.ts';
import type { Lexicon } from './reading-lexicon.ts';
import type { Mention } from './reading-mentions.ts';
import { isStop, looseEnd, type Token } from './reading-tokens.ts';
import {
  ADJECTIVES,
  CONJUNCTIONS,
  COPULAS,
  DETERMINERS,
  MODALS,
  PARTICLES,
  PREPOSITIONS,
  PRONOUNS,
  STATIVES,
  UNDONE,
} from './reading-words.ts';

/** Things that a verb is about, and where what it says of them ends. */
export interface Named {
  readonly mentions: readonly Mention[];
  readonly end: number;
  /** Those of them that only go with another: `the cover with its gasket`. */
  readonly along?: ReadonlySet<Mention>;
}

/** How many words may stand between an object and its particle: `the cover with its float off`. */
const TAIL_REACH = 4;
/** How many unknown words may stand for a thing in a list: `the four bowl screws and the cover`. */
const UNKNOWN = 4;

/** How many things a list may name: more is no sentence of a sheet. */
const LISTED = 12;

type MentionAt = readonly (Mention | undefined)[];

/** What a verb acts on from a place on, without a particle of the verb; null where that is no part. */
export function objectAt(
  tokens: readonly Token[],
  from: number,
  mentionAt: MentionAt,
  lexicon: Lexicon,
): Named | null {
  const mentions: Mention[] = [];
  let at = overArticles(tokens, from, mentionAt);
  const first = mentionAt[at];
  if (first && first.at === at) {
    if (isDenied(tokens, at, from)) return null;
    mentions.push(first);
    at = first.end;
  } else {
    at = overUnknown(tokens, at, mentionAt, lexicon);
    if (at < 0) return null;
  }
  const along = new Set<Mention>();
  const end = overList(tokens, at, mentionAt, lexicon, mentions, along);
  return mentions.length === 0 ? null : { mentions, end, along };
}

/** An object with the particle that a verb wants behind it, and what is joined to it behind that. */
export function withTail(
  tokens: readonly Token[],
  object: Named,
  tail: readonly string[],
  mentionAt: MentionAt,
  lexicon: Lexicon,
): { readonly object: Named; readonly at: number } | null {
  const first = object.mentions[0];
  let end = tailAfter(tokens, object.end, tail, isBetween);
  if (end < 0 && first) end = tailAfter(tokens, first.end, tail, isBetween);
  if (end < 0) return null;
  const mentions = [...object.mentions];
  const along = new Set(object.along);
  const last = overList(tokens, end, mentionAt, lexicon, mentions, along);
  return { object: { mentions, end: last, along }, at: end - tail.length };
}

/** The end of a verb's particle near a place, over words that may stand between; -1 without it. */
export function tailAfter(
  tokens: readonly Token[],
  from: number,
  tail: readonly string[],
  mayPart: (word: string) => boolean,
): number {
  if (tail.length === 0) return from;
  for (let at = from; at <= from + TAIL_REACH; at++) {
    const end = looseEnd(tokens, at, tail);
    if (end >= 0 && !isNounHere(tokens, at)) {
      // `turn the cam over the screw`: there the particle is a preposition.
      const isPreposition =
        tail[tail.length - 1] === 'over' && DETERMINERS.has(tokens[end]?.word ?? '');
      if (!isPreposition) return end;
    }
    if (!mayPart(tokens[at]?.word ?? '.')) return -1;
  }
  return -1;
}

/** `on its back`: behind an article a particle is none. */
function isNounHere(tokens: readonly Token[], at: number): boolean {
  return PARTICLES.has(tokens[at]?.word ?? '') && DETERMINERS.has(tokens[at - 1]?.word ?? '');
}

function isBetween(word: string): boolean {
  return (
    !isStop(word) &&
    !CONJUNCTIONS.has(word) &&
    !STATIVES.has(word) &&
    !UNDONE.has(word) &&
    !/^(?:to|if|unless)$/.test(word)
  );
}

function overArticles(tokens: readonly Token[], from: number, mentionAt: MentionAt): number {
  let at = from;
  while (at < from + 6 && mentionAt[at]?.at !== at) {
    const word = tokens[at]?.word ?? '.';
    const isSkipped =
      DETERMINERS.has(word) ||
      word === 'that' ||
      ADJECTIVES.has(word) ||
      (isAdverb(word) && !PREPOSITIONS.has(word)) ||
      (word === 'of' && at > from) ||
      isBetweenAdjectives(tokens, at) ||
      /^\d/.test(word);
    if (!isSkipped) break;
    at++;
  }
  return at;
}

/** `the front and rear wheels` */
function isBetweenAdjectives(tokens: readonly Token[], at: number): boolean {
  return (
    tokens[at]?.word === 'and' &&
    ADJECTIVES.has(tokens[at - 1]?.word ?? '') &&
    ADJECTIVES.has(tokens[at + 1]?.word ?? '')
  );
}

/** `no gasket`: nothing is done to what is not there. */
function isDenied(tokens: readonly Token[], at: number, from: number): boolean {
  for (let i = from; i < at; i++) if (tokens[i]?.word === 'no') return true;
  return false;
}

/** Past a thing that is no name of the kind, to the comma or `and` behind it; -1 without one. */
function overUnknown(
  tokens: readonly Token[],
  from: number,
  mentionAt: MentionAt,
  lexicon: Lexicon,
): number {
  for (let at = from; at <= from + UNKNOWN; at++) {
    const word = tokens[at]?.word ?? '.';
    if (at > from && (word === ',' || word === 'and')) return at;
    if (isStop(word) || PREPOSITIONS.has(word) || STATIVES.has(word) || UNDONE.has(word)) return -1;
    if (mentionAt[at] === undefined && lexicon.verbs.has(word)) return -1;
    if (PRONOUNS.has(word)) return -1;
  }
  return -1;
}

/** Adds what a list goes on with: `the cover, its gasket and the dust cover`. Returns where it ends. */
function overList(
  tokens: readonly Token[],
  from: number,
  mentionAt: MentionAt,
  lexicon: Lexicon,
  mentions: Mention[],
  along: Set<Mention>,
): number {
  let end = from;
  while (mentions.length < LISTED) {
    const joint = jointAt(tokens, end);
    if (joint < 0) return end;
    const isWith = tokens[joint - 1]?.word === 'with';
    const at = overArticles(tokens, joint, mentionAt);
    const mention = mentionAt[at];
    if (!mention || mention.at !== at || PRONOUNS.has(tokens[at]?.word ?? '')) return end;
    if (isDenied(tokens, at, joint)) return end;
    const next = tokens[mention.end]?.word ?? '.';
    if (isWith && (PARTICLES.has(next) || lexicon.conditions.has(next))) return end;
    if (startsPredicate(next, lexicon)) return end;
    if (mention.parts.length > 0) mentions.push(mention);
    if (isWith) along.add(mention);
    end = mention.end;
  }
  return end;
}

/** Behind the comma, the `and` or the `with` that joins a further thing; -1 where none stands. */
function jointAt(tokens: readonly Token[], at: number): number {
  let joint = at;
  if (tokens[joint]?.word === ',') joint++;
  const word = tokens[joint]?.word ?? '.';
  if (word === 'and' || word === 'plus' || word === 'with') joint++;
  else if (/^(?:together|along|complete)$/.test(word) && tokens[joint + 1]?.word === 'with')
    joint += 2;
  else if (word === 'then' && DETERMINERS.has(tokens[joint + 1]?.word ?? '')) joint++;
  return joint > at ? joint : -1;
}

/** A verb or a copula behind a thing makes it the subject of a new clause. */
function startsPredicate(word: string, lexicon: Lexicon): boolean {
  if (PARTICLES.has(word) && !lexicon.verbs.has(word)) return false;
  return (
    COPULAS.has(word) ||
    MODALS.has(word) ||
    (lexicon.verbs.has(word) && !PARTICLES.has(word)) ||
    lexicon.doings.has(word)
  );
}

/** A thing with those that are joined to it before it: `cam and choke` of `cam and choke fall clear`. */
export function coordinatedBefore(
  tokens: readonly Token[],
  mention: Mention,
  mentionAt: MentionAt,
): readonly Mention[] {
  const mentions = [mention];
  for (let first = mention; mentions.length < LISTED; ) {
    const at = beforeName(tokens, first.at);
    const joint = tokens[at]?.word;
    if (joint !== 'and' && joint !== ',') return mentions;
    const earlier = mentionAt[at - 1];
    if (!earlier || earlier.end !== at || earlier.parts.length === 0) return mentions;
    // `New gasket, cover on`: behind a comma only what stands there without a word of its own.
    if (joint === ',' && !isOpener(tokens[beforeName(tokens, earlier.at)]?.word)) return mentions;
    mentions.unshift(earlier);
    first = earlier;
  }
  return mentions;
}
