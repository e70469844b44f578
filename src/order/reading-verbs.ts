import { isAdverb } from './reading-clauses.ts';
import type { Mention } from './reading-mentions.ts';
import { isStop, type Token } from './reading-tokens.ts';
import {
  CONJUNCTIONS,
  COPULAS,
  DEMANDS,
  type Form,
  MODALS,
  POSSIBLES,
  SUBJECTS,
} from './reading-words.ts';

/** Whether a form at a place does something itself: bids it, tells it, or says it was done. */
export function isActive(tokens: readonly Token[], at: number, form: Form): boolean {
  const previous = backOver(tokens, at);
  const word = tokens[previous]?.word;
  if (form === 'base') {
    if (word === 'to') return isDemand(tokens, backOver(tokens, previous));
    if (isStop(word) || word === 'and' || word === 'or' || word === 'but' || word === 'then')
      return true;
    if (/^\d/.test(word ?? '')) return previous === 0 || tokens[previous - 1]?.word === 'step';
    if (MODALS.has(word ?? '')) return !POSSIBLES.has(word ?? '') && isPerson(tokens, previous);
    return SUBJECTS.has(word ?? '');
  }
  if (form === 'ing')
    return isStop(word) || /^(?:and|then|by|after|while|whilst|on|upon|now)$/.test(word ?? '');
  if (form === 's') return SUBJECTS.has(word ?? '') || (word === 'and' && isTelling(tokens, at));
  return (
    /^(?:having|have|has|had)$/.test(word ?? '') || (SUBJECTS.has(word ?? '') && word !== 'one')
  );
}

/** The last word before one that is no adverb; -1 before the first. */
function backOver(tokens: readonly Token[], at: number): number {
  let back = at - 1;
  while (back >= 0 && isAdverb(tokens[back]?.word ?? '')) back--;
  return back;
}

/** `you have to shut it`, but neither `you may have to` nor `there is no need to`. */
function isDemand(tokens: readonly Token[], at: number): boolean {
  const before = tokens[at - 1]?.word ?? '';
  return DEMANDS.has(tokens[at]?.word ?? '') && !POSSIBLES.has(before) && before !== 'no';
}

function isPerson(tokens: readonly Token[], modal: number): boolean {
  return SUBJECTS.has(tokens[modal - 1]?.word ?? '') || isStop(tokens[modal - 1]?.word);
}

/** `He lifts the cover off and turns it over`. */
function isTelling(tokens: readonly Token[], at: number): boolean {
  for (let i = at - 1; i >= 0 && tokens[i]?.word !== '.'; i--) {
    if (SUBJECTS.has(tokens[i]?.word ?? '')) return true;
  }
  return false;
}

/**
 * What a participle is said of: the thing before it (`the cover is now lifted off`), or `shared`
 * where it goes on from an earlier one (`... and turned over`). Null where a thing only may be.
 */
export function subjectBefore(
  tokens: readonly Token[],
  at: number,
  mentionAt: readonly (Mention | undefined)[],
): Mention | 'shared' | null {
  let isPossible = false;
  let isNow = false;
  for (let back = at - 1, steps = 0; back >= 0 && steps < 8; back--, steps++) {
    const mention = mentionAt[back];
    if (mention && mention.end === back + 1) {
      const owner =
        mention.parts.length > 0 ? null : ownerBefore(tokens, mention.at - 1, mentionAt);
      return isPossible && !isNow ? null : (owner ?? mention);
    }
    const word = tokens[back]?.word ?? '.';
    if (word === 'now' || word === 'then') isNow = true;
    if (POSSIBLES.has(word)) isPossible = true;
    else if (word === ',' && asideBefore(tokens, back) > 0) back = asideBefore(tokens, back);
    else if ((CONJUNCTIONS.has(word) && word !== 'then') || word === ',') return 'shared';
    else if (!COPULAS.has(word) && !MODALS.has(word) && !isAdverb(word) && word !== 'to')
      return back < at - 1 ? ownerBefore(tokens, back, mentionAt) : null;
  }
  return null;
}

/** `the lock screw of each set is ...`: what stands before `of`; null where nothing does. */
function ownerBefore(
  tokens: readonly Token[],
  from: number,
  mentionAt: readonly (Mention | undefined)[],
): Mention | null {
  for (let at = from; at > from - 4 && at > 0; at--) {
    const word = tokens[at]?.word ?? '.';
    if (isStop(word)) return null;
    if (!/^(?:of|in|on|at|from|to|under|beneath)$/.test(word)) continue;
    const mention = mentionAt[at - 1];
    return mention && mention.end === at ? mention : null;
  }
  return null;
}

/** The comma that opens an aside which another closes: `the cover, with a new gasket, is ...`; 0 if none. */
function asideBefore(tokens: readonly Token[], closing: number): number {
  if (!COPULAS.has(tokens[closing + 1]?.word ?? '') && !MODALS.has(tokens[closing + 1]?.word ?? ''))
    return 0;
  for (let at = closing - 1; at > 0 && at > closing - 10; at--) {
    const word = tokens[at]?.word;
    if (word === '.') return 0;
    if (word === ',')
      return /^(?:with|together|complete)$/.test(tokens[at + 1]?.word ?? '') ? at : 0;
  }
  return 0;
}
