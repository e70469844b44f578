import type { WordInfo } from './reading-infos.ts';
import type { Lexicon } from './reading-lexicon.ts';
import type { Token } from './reading-tokens.ts';
import {
  ADJECTIVES,
  ADVERBS,
  CASES,
  CONDITIONALS,
  CONJUNCTIONS,
  DETERMINERS,
  NEGATIONS,
  OMISSIONS,
  PRESENCE,
  STATIVES,
  UNDONE,
} from './reading-words.ts';

/**
 * How far a word's clause may be believed: `told` says what is done; `held` says what is so at that
 * moment (`until the plates shut`, `with the engine hot`); `open` is denied, conditional or yet to come.
 */
export type Mode = 'told' | 'held' | 'open';

export interface Clauses {
  readonly modes: readonly Mode[];
  /** The number of the clause that each token stands in, for what `it` may mean. */
  readonly clause: readonly number[];
}

/** Parts the sentences of a step into clauses and says of every word how far it may be believed. */
export function clausesOf(
  text: string,
  tokens: readonly Token[],
  lexicon: Lexicon,
  infos: readonly WordInfo[],
): Clauses {
  const modes: Mode[] = [];
  const clause: number[] = [];
  let base: Mode = 'told';
  let mode: Mode = 'told';
  let isDenied = false;
  let sentence = 0;
  let start = 0;
  let before = 0;
  let number = 0;
  const begin = (at: number): void => {
    before = start;
    start = at;
    number++;
  };
  for (let i = 0; i < tokens.length; i++) {
    modes.push(mode);
    clause.push(number);
    if (!infos[i]?.binds) continue;
    const word = tokens[i]?.word ?? '';
    const next = tokens[i + 1]?.word ?? '.';
    if (word === '.') {
      base = asksCase(text, tokens, sentence, i) ? 'open' : 'told';
      mode = base;
      isDenied = false;
      begin(i + 1);
      sentence = i + 1;
      before = i + 1;
    } else if (word === ',') {
      mode = base;
      isDenied = false;
      begin(i + 1);
    } else if (CONJUNCTIONS.has(word)) {
      if (word === 'but' || word === 'then') isDenied = false;
      const isNewAct = word === 'then' || startsAct(tokens, i + 1, lexicon);
      if (mode !== base && !isDenied && isNewAct && word !== 'or' && word !== 'nor') mode = base;
      if (!continuesList(next, lexicon)) begin(i + 1);
    } else if (CONDITIONALS.has(word) || isInverted(tokens, i, sentence)) {
      if (isPresence(tokens, i + 1)) mode = 'open';
      else {
        const previous = tokens[i - 1]?.word ?? '.';
        if (i === sentence || CONJUNCTIONS.has(previous)) base = 'open';
        else for (let j = start < i ? start : before; j < i; j++) modes[j] = 'open';
        start = i + 1;
        mode = 'open';
      }
    } else if (word === 'where' && isPresence(tokens, i + 1)) {
      mode = 'open';
    } else if (NEGATIONS.has(word)) {
      const after = next === 'to' ? (tokens[i + 2]?.word ?? '') : next;
      if (OMISSIONS.has(after)) continue;
      mode = 'open';
      isDenied = true;
    } else if (UNDONE.has(word)) {
      mode = 'open';
    } else if (mode === 'told' && STATIVES.has(word) && isBinding(tokens, i)) {
      mode = 'held';
    }
  }
  return { modes, clause };
}

/** `Too high?`, `Out of limits:` and `Worn spindle:` make what follows a possibility. */
function asksCase(text: string, tokens: readonly Token[], first: number, stop: number): boolean {
  const mark = text[tokens[stop]?.start ?? 0];
  if (mark === '?') return true;
  return mark === ':' && stop > first && CASES.has(tokens[first]?.word ?? '');
}

/** `and lift ...`: a verb in its plain form, with nothing but an adverb before it. */
function startsAct(tokens: readonly Token[], from: number, lexicon: Lexicon): boolean {
  let at = from;
  while (isAdverb(tokens[at]?.word ?? '') && !isPlainVerb(tokens[at]?.word, lexicon)) at++;
  return isPlainVerb(tokens[at]?.word, lexicon);
}

function isPlainVerb(word: string | undefined, lexicon: Lexicon): boolean {
  return lexicon.verbs.get(word ?? '')?.some(({ form }) => form === 'base') ?? false;
}

function continuesList(next: string, lexicon: Lexicon): boolean {
  return DETERMINERS.has(next) || ADJECTIVES.has(next) || lexicon.nouns.has(next);
}

/** `Should the engine stop, ...` */
function isInverted(tokens: readonly Token[], at: number, sentence: number): boolean {
  return tokens[at]?.word === 'should' && at === sentence && tokens[at + 1] !== undefined;
}

/** `if fitted`, `where there is one`, `if not already off`: the step is done wherever it can be. */
function isPresence(tokens: readonly Token[], at: number): boolean {
  const [one = '', two = ''] = [tokens[at]?.word, tokens[at + 1]?.word];
  if (PRESENCE.has(one) || one === 'still') return true;
  if (one === 'not') return two === 'already' || two === 'yet';
  return (
    (one === 'it' || one === 'one') && two === 'is' && PRESENCE.has(tokens[at + 2]?.word ?? '')
  );
}

/** `once more` and `at once` bind nothing. */
function isBinding(tokens: readonly Token[], at: number): boolean {
  const word = tokens[at]?.word;
  const next = tokens[at + 1]?.word ?? '.';
  if (word === 'once')
    return tokens[at - 1]?.word !== 'at' && !/^(?:[.,]|more|again|and|or|over)$/.test(next);
  if (word === 'so') return next !== 'far' && next !== 'as';
  return true;
}

/** Things whose names end as adverbs do. */
const NO_ADVERBS: ReadonlySet<string> = new Set([
  'butterfly',
  'assembly',
  'supply',
  'reply',
  'apply',
]);

export function isAdverb(word: string): boolean {
  return ADVERBS.has(word) || (word.length > 4 && word.endsWith('ly') && !NO_ADVERBS.has(word));
}
