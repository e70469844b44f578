import type { Kind } from '../kinds/model.ts';

/** A word, a stop or a printed setting, with its offsets in the step's text. */
export interface Token {
  /** In small letters; `.` for whatever ends a sentence or a part of one, `,`, or `{float-level}`. */
  readonly word: string;
  readonly start: number;
  readonly end: number;
}

/** A directive, a word, a number, or a mark of punctuation that parts what is said. */
const TOKEN =
  /:([a-z-]+)\[([^\]]*)\](?:\{[^}]*\})?|\{[a-z0-9-]+\}|\p{L}+(?:['’]\p{L}+)*|\d+(?:[.,/]\d+)*|[.;:!?()—–,&]|(?<=\s)-(?=\s)/gu;

/** Marks say what they say themselves; a printed setting stands under its canonical name. */
export function tokensOf(text: string, kind: Kind): Token[] {
  const tokens: Token[] = [];
  TOKEN.lastIndex = 0;
  for (let match = TOKEN.exec(text); match; match = TOKEN.exec(text)) {
    const found = match[0];
    const start = match.index;
    const end = start + found.length;
    if (match[1] !== undefined) {
      if (match[1] !== 'value') continue;
      const name = (match[2] ?? '').trim();
      tokens.push({ word: `{${kind.settingNamed(name)?.name ?? name}}`, start, end });
    } else tokens.push({ word: plainToken(found), start, end });
  }
  return tokens;
}

function plainToken(found: string): string {
  if (found === ',') return ',';
  if (found === '&') return 'and';
  if (STOP.has(found)) return '.';
  const small = found.toLowerCase();
  return plainWord(small.includes('’') ? small.replaceAll('’', "'") : small);
}

/** Words that say the same in a step: data and steps are read in the second spelling. */
const SAME: ReadonlyMap<string, string> = new Map([
  ['onto', 'on'],
  ['upon', 'on'],
  ['till', 'until'],
  ['whilst', 'while'],
]);

function plainWord(word: string): string {
  const { length } = word;
  // Few words are as long as these: the table is not asked for the others.
  if (length !== 4 && length !== 6) return word;
  return SAME.get(word) ?? word;
}

const STOP: ReadonlySet<string> = new Set('.;:!?()—–-');

/** Whether a token is no word: the end of a clause, a comma or a printed setting. */
export function isStop(word: string | undefined): boolean {
  return word === undefined || word === '.' || word === ',' || word.startsWith('{');
}

/** The words of a phrase or a pattern as tokens; `...` stands for a few words, a last `.` for an end. */
export function patternWords(text: string): string[] {
  const words = text.toLowerCase().match(/\{[a-z0-9-]+\}|\.\.\.|^\.|\.$|[\p{L}\p{N}']+/gu) ?? [];
  return words.map(plainWord);
}

export const ARTICLES: ReadonlySet<string> = new Set(
  'the a an its their his your our my'.split(' '),
);

/** The words of a pattern without articles, which a step may have or not: `on the step`, `on its step`. */
export function looseWords(text: string): string[] {
  const words = patternWords(text);
  const loose = words.filter((word) => !ARTICLES.has(word));
  return loose.length === 0 ? words : loose;
}

/** The end of words without articles that stand here, over articles between them; -1 where they do not. */
export function looseEnd(tokens: readonly Token[], from: number, words: readonly string[]): number {
  let at = from;
  for (let i = 0; i < words.length; i++) {
    if (i > 0) while (ARTICLES.has(tokens[at]?.word ?? '')) at++;
    if (tokens[at]?.word !== words[i]) return -1;
    at++;
  }
  return at;
}

export function matchesAt(tokens: readonly Token[], at: number, words: readonly string[]): boolean {
  for (let i = 0; i < words.length; i++) if (tokens[at + i]?.word !== words[i]) return false;
  return true;
}
