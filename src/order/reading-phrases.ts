import { isAdverb } from './reading-clauses.ts';
import { ARTICLES, isStop, type Token } from './reading-tokens.ts';
import { NEGATIONS } from './reading-words.ts';

/** How many words the `...` of a phrase may stand for. */
const GAP = 7;

/** The end of a phrase that begins at a place, from its `skip`th word on; -1 where it does not. */
export function phraseEnd(
  tokens: readonly Token[],
  from: number,
  words: readonly string[],
  skip: number,
): number {
  let at = from;
  for (let i = skip; i < words.length; i++) {
    const wanted = words[i];
    if (wanted === '...') {
      const next = words[i + 1];
      const limit = at + GAP;
      while (at < limit && tokens[at]?.word !== next) {
        const word = tokens[at]?.word;
        if (isStop(word) || word === 'no' || NEGATIONS.has(word ?? '')) return -1;
        at++;
      }
    } else if (wanted === '.') {
      const word = tokens[at]?.word;
      return isStop(word) || word === 'and' || word === 'then' ? at : -1;
    } else {
      if (i > skip) while (ARTICLES.has(tokens[at]?.word ?? '')) at++;
      if (tokens[at]?.word !== wanted) return -1;
      at++;
    }
  }
  return at;
}

/** Whether something new is said from a place on, but for adverbs before it. */
export function isStart(tokens: readonly Token[], from: number): boolean {
  let at = from - 1;
  while (isAdverb(tokens[at]?.word ?? '')) at--;
  const word = tokens[at]?.word;
  return isStop(word) || word === 'and' || word === 'then' || word === 'but';
}

/** `one turn in from first contact`, `no longer touches its lever`: that is where the part was. */
export function isMeasuredFrom(tokens: readonly Token[], from: number): boolean {
  if (tokens[from - 1]?.word === 'longer') return true;
  for (let at = from - 1; at >= from - 4; at--) {
    const word = tokens[at]?.word ?? '.';
    if (word === 'from' || word === 'past' || word === 'beyond') return true;
    if (!ARTICLES.has(word) && word !== 'point' && word !== 'of') return false;
  }
  return false;
}
