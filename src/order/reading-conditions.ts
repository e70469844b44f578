import type { StateTerm } from '../kinds/model.ts';
import { isAdverb, type Mode } from './reading-clauses.ts';
import type { Lexicon } from './reading-lexicon.ts';
import type { Mention } from './reading-mentions.ts';
import { isStop, matchesAt, type Token } from './reading-tokens.ts';
import {
  ADJECTIVES,
  CONJUNCTIONS,
  COPULAS,
  DETERMINERS,
  POSSIBLES,
  PREPOSITIONS,
  WEAK,
} from './reading-words.ts';

/** How many words may part a thing from its condition: `the plates must now be fully shut`. */
const REACH = 6;

/** `cover inverted`, `the plates must be fully shut`, `with its gasket off`; null where none is said. */
export function conditionOf(
  tokens: readonly Token[],
  mention: Mention,
  parts: readonly string[],
  lexicon: Lexicon,
  modes: readonly Mode[],
): { readonly term: StateTerm; readonly end: number } | null {
  const isHead = isStop(tokens[mention.at - 1]?.word);
  let isBound = isWith(tokens, mention.at);
  for (let at = mention.end; at <= mention.end + REACH; at++) {
    const word = tokens[at]?.word ?? '.';
    if (isStop(word) || modes[at] === 'open') return null;
    for (const { part, condition, words } of lexicon.conditions.get(word) ?? []) {
      if (!parts.includes(part) || !matchesAt(tokens, at, words)) continue;
      const end = at + words.length;
      const isWeak = words.length === 1 && WEAK.has(word);
      const isNote = isHead && at === mention.end && isStop(tokens[end]?.word);
      if (isWeak && !isNote && !(isBound && endsClause(tokens, end))) continue;
      return { term: { part, condition }, end };
    }
    if (COPULAS.has(word)) isBound = true;
    else if (!isAdverb(word) && !(/^(?:must|should|shall|to)$/.test(word) && !POSSIBLES.has(word)))
      return null;
  }
  return null;
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

function isWith(tokens: readonly Token[], before: number): boolean {
  let at = before - 1;
  while (DETERMINERS.has(tokens[at]?.word ?? '.') || ADJECTIVES.has(tokens[at]?.word ?? '.')) at--;
  if (tokens[at]?.word !== 'and') return tokens[at]?.word === 'with';
  // `with its float in and its lid on`
  for (let back = at - 1; back > at - 6; back--) {
    const word = tokens[back]?.word;
    if (isStop(word) || word === 'with') return word === 'with';
  }
  return false;
}

function endsClause(tokens: readonly Token[], at: number): boolean {
  const word = tokens[at]?.word;
  if (isStop(word)) return true;
  return (
    CONJUNCTIONS.has(word ?? '') ||
    /^(?:again|now|still|yet|while|until|when|before|so|if|by|for|throughout)$/.test(word ?? '') ||
    (PREPOSITIONS.has(word ?? '') && !DETERMINERS.has(tokens[at + 1]?.word ?? ''))
  );
}
