import type { StateTerm } from '../kinds/model.ts';
import { isAdverb, type Mode } from './reading-clauses.ts';
import type { Lexicon } from './reading-lexicon.ts';
import type { Mention } from './reading-mentions.ts';
import { ARTICLES, isStop, looseEnd, type Token } from './reading-tokens.ts';
import {
  ADJECTIVES,
  CLEANING,
  CONJUNCTIONS,
  COPULAS,
  DEGREES,
  DETERMINERS,
  isParticiple,
  MEASURES,
  MODALS,
  PARTICLES,
  POSSIBLES,
  PREPOSITIONS,
  STATIVES,
  SUBJECTS,
  UNDONE,
  WEAK,
} from './reading-words.ts';

/** How many words may part a thing from its condition: `the plates must now be fully shut`. */
const REACH = 7;

/** A condition that words say, and where they end. */
export interface Condition {
  readonly term: StateTerm;
  readonly end: number;
}

/** `cover inverted`, `the plates must be fully shut`, `with its gasket off`; null where none is said. */
export function conditionOf(
  tokens: readonly Token[],
  mention: Mention,
  first: Mention,
  parts: readonly string[],
  lexicon: Lexicon,
  modes: readonly Mode[],
): Condition | null {
  let isBound: boolean | null = null;
  let weak: Condition | null = null;
  for (let at = mention.end; at <= mention.end + REACH; at++) {
    const word = tokens[at]?.word ?? '.';
    if (isStop(word) || modes[at] === 'open') return weak;
    for (const { part, condition, words } of lexicon.conditions.get(word) ?? []) {
      if (!parts.includes(part)) continue;
      const end = looseEnd(tokens, at, words);
      if (end < 0) continue;
      const isWeak = words.length === 1 && WEAK.has(word);
      if (isWeak && !endsClause(tokens, end)) continue;
      isBound ??= isWith(tokens, mention.at) || isMoved(tokens, first.at);
      if (isWeak && !isBound) continue;
      if (isWeak && weak !== null) continue;
      if (DEGREES.has(tokens[end]?.word ?? '') && endsClause(tokens, end + 1)) return weak;
      const found = { term: { part, condition }, end };
      if (!isWeak) return found;
      // `back down in their jets`: a longer condition behind a short one says more.
      weak = found;
    }
    if (COPULAS.has(word)) isBound = true;
    else if (DEGREES.has(word) && !isBeforeMeasure(tokens, at)) return weak;
    else if (isParticiple(word)) isBound = true;
    else if (weak === null || !PREPOSITIONS.has(word)) {
      const skipped = skippedAt(tokens, at);
      if (skipped === 0) return weak;
      at += skipped - 1;
    }
  }
  return weak;
}

/** How many words from a place on say only how far or how surely: `all the way`, `one turn`, `fully`. */
function skippedAt(tokens: readonly Token[], at: number): number {
  const word = tokens[at]?.word ?? '.';
  // `up and out`
  if (word === 'and')
    return PARTICLES.has(tokens[at - 1]?.word ?? '') && PARTICLES.has(tokens[at + 1]?.word ?? '')
      ? 1
      : 0;
  if (ARTICLES.has(word) && at > 0 && /^(?:right|wrong)$/.test(tokens[at + 1]?.word ?? ''))
    return 1;
  if (word === 'all' && tokens[at + 2]?.word === 'way') return 3;
  if (word === 'the' && tokens[at + 1]?.word === 'rest') return 5;
  if (DETERMINERS.has(word) || /^\d/.test(word) || DEGREES.has(word)) {
    for (let end = at; end < at + 6; end++) {
      const next = tokens[end]?.word ?? '.';
      if (MEASURES.has(next)) return end + 1 - at;
      if (isStop(next)) return 0;
    }
    return 0;
  }
  if (isAdverb(word)) return 1;
  return /^(?:must|should|shall|to)$/.test(word) && !POSSIBLES.has(word) ? 1 : 0;
}

/** `a quarter turn loose`: there the degree says how far. */
function isBeforeMeasure(tokens: readonly Token[], at: number): boolean {
  return MEASURES.has(tokens[at + 1]?.word ?? '.');
}

/** `with the inverted cover`, `the hot engine`: a condition that a thing is named with. */
export function attributeOf(
  tokens: readonly Token[],
  mention: Mention,
  lexicon: Lexicon,
): StateTerm | null {
  const word = tokens[mention.at - 1]?.word ?? '.';
  if (WEAK.has(word) || !/^(?:the|with|both)$/.test(tokens[mention.at - 2]?.word ?? ''))
    return null;
  for (const { part, condition, words } of lexicon.conditions.get(word) ?? []) {
    if (words.length === 1 && mention.parts.includes(part)) return { part, condition };
  }
  return null;
}

/** Over what describes the thing at a place, back to the word before all that. */
export function beforeName(tokens: readonly Token[], from: number): number {
  let at = from - 1;
  while (
    DETERMINERS.has(tokens[at]?.word ?? '.') ||
    ADJECTIVES.has(tokens[at]?.word ?? '.') ||
    (isAdverb(tokens[at]?.word ?? '.') && !PARTICLES.has(tokens[at]?.word ?? '.'))
  )
    at--;
  return at;
}

function isWith(tokens: readonly Token[], before: number): boolean {
  const at = beforeName(tokens, before);
  if (tokens[at]?.word !== 'and') return tokens[at]?.word === 'with';
  // `with its float in and its lid on`
  for (let back = at - 1; back > at - 6; back--) {
    const word = tokens[back]?.word;
    if (isStop(word) || word === 'with') return word === 'with';
  }
  return false;
}

/**
 * Whether a thing heads what is said (`Old gasket off`) or is what its first word does something to,
 * whatever that does: `Whip the cap off`, `and yank the handbrake on`.
 */
function isMoved(tokens: readonly Token[], from: number): boolean {
  let at = beforeName(tokens, from);
  if (isOpener(tokens[at]?.word)) return true;
  const verb = tokens[at]?.word ?? '.';
  if (!isVerbLike(verb)) return false;
  at--;
  while (
    isAdverb(tokens[at]?.word ?? '.') ||
    /^(?:to|you|we|i|you'll|let|help)$/.test(tokens[at]?.word ?? '.')
  )
    at--;
  return isOpener(tokens[at]?.word);
}

/** Whether a word ends what was said before, so that something new begins. */
export function isOpener(word: string | undefined): boolean {
  return isStop(word) || CONJUNCTIONS.has(word ?? '') || /^\d/.test(word ?? '');
}

/** A word that may be a verb, as far as the words that are surely none tell. */
function isVerbLike(word: string): boolean {
  return !(
    CLEANING.has(word) ||
    PREPOSITIONS.has(word) ||
    STATIVES.has(word) ||
    UNDONE.has(word) ||
    SUBJECTS.has(word) ||
    MODALS.has(word) ||
    (COPULAS.has(word) && !/^(?:stand|rest|hang|drop|lie|sit|get|have)$/.test(word))
  );
}

/** Whether what was said is complete here, but for how and where it is done. */
export function endsClause(tokens: readonly Token[], from: number): boolean {
  let at = from;
  while (isAdverb(tokens[at]?.word ?? '.') && !PREPOSITIONS.has(tokens[at]?.word ?? '.')) at++;
  const word = tokens[at]?.word;
  if (isStop(word) || /^\d/.test(word ?? '')) return true;
  // What is out of the way is only moved.
  if (word === 'of' && tokens[at + 2]?.word === 'way') return false;
  return (
    CONJUNCTIONS.has(word ?? '') ||
    STATIVES.has(word ?? '') ||
    /^(?:again|now|still|yet|while|until|when|before|so|if|by|for|throughout|to|stop)$/.test(
      word ?? '',
    ) ||
    PREPOSITIONS.has(word ?? '')
  );
}
