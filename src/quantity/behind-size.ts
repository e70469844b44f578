import { nearestName } from '../text/index.ts';
import { DATUMS, QUALIFIER_WORDS } from './lexicon.ts';
import type { SizeProblem } from './model.ts';
import { problem } from './problems.ts';

/** Words after a size: all known, or a problem at the first that is not. */
export function qualifierAt(
  lower: string,
  end: number,
): { qualifier: boolean; datum: string | null } | { problem: SizeProblem } {
  let at = end;
  let found = false;
  let datum: string | null = null;
  const word = /[ ,;()]*([^ ,;()]+)/y;
  for (;;) {
    word.lastIndex = at;
    const match = word.exec(lower);
    if (!match) break;
    const token = match[1] ?? '';
    // The stop that ends a sentence is no part of the size.
    if (token === '.' && word.lastIndex === lower.length) break;
    const bare = token.replace(/[.:]$/, '');
    const known =
      QUALIFIER_WORDS.has(token) ||
      QUALIFIER_WORDS.has(bare) ||
      (bare.includes('-') && bare.split('-').every((part) => QUALIFIER_WORDS.has(part)));
    const start = word.lastIndex - token.length;
    if (!known) return { problem: unknownWord(lower, token, start, end) };
    datum ??= DATUMS.find(([spelling]) => spelling === bare)?.[1] ?? null;
    found = true;
    at = word.lastIndex;
  }
  return { qualifier: found, datum };
}

function unknownWord(lower: string, token: string, start: number, end: number): SizeProblem {
  if (/\d|[½¼¾⅛⅜⅝⅞⅓⅔]/.test(token)) {
    const message = `${lower.slice(0, end).trim()} is followed by a second figure, ${lower.slice(start).trim().replace(/\)$/, '')}`;
    return problem(
      'unreadable',
      message,
      'keep one size in the value and put the other under `also`',
      start,
      lower.length,
    );
  }
  const near = nearestName(token, [
    'min',
    'max',
    'turns',
    'out',
    'in',
    'rich',
    'lean',
    'drill',
    'wire',
    'leaf',
    ...QUALIFIER_WORDS,
  ]);
  const message = `${token} is no word that can follow the size ${lower.slice(0, end).trim()}`;
  return problem(
    'unreadable',
    message,
    near ? `write ${near}, if that is meant; put remarks under note` : 'put remarks under note',
    start,
    start + token.length,
  );
}
