/**
 * Words of a step that, changed, make somebody at the bench do otherwise: counts, directions,
 * conditions, denials, before and after. Common practice, no source. Digits, sizes and the sheet's
 * own marks count besides.
 */
const telling: ReadonlySet<string> = new Set(
  (
    'no not never none without only except unless nor neither before after until first last again ' +
    'then while when once twice half quarter third full fully one two three four five six seven ' +
    'eight nine ten eleven twelve each both either all every any in out up down on off over under ' +
    'above below inside outside left right front rear top bottom upper lower inner outer nearer ' +
    'farther open shut closed close wide clockwise counterclockwise anticlockwise rich richer lean ' +
    'leaner hot cold warm running stopped start stop engine dry wet loose slack slacken loosen tight ' +
    'tighten remove take fit refit lift press push pull bend turn screw more less min max minimum ' +
    'maximum about least most must may inverted upright toward away from increase decrease raise'
  ).split(' '),
);

const pattern = /:[a-z]+\[[^\]]*\]|\d[\d./,:–-]*|[\p{L}\p{N}'’°%]+/gu;

/** The words of a text in lower case, with its marks and numbers whole. */
export function wordsOf(text: string): string[] {
  return (text.match(pattern) ?? []).map((word) => word.toLowerCase());
}

/** Those of its words that carry its substance, in order. */
export function substanceOf(text: string): string[] {
  return wordsOf(text).filter((word) => /^[:\d]/.test(word) || telling.has(word));
}

/** Whether two wordings tell somebody at the bench the same, as far as their telling words go. */
export function sameSubstance(one: string, other: string): boolean {
  const [first, second] = [substanceOf(one), substanceOf(other)];
  return first.length === second.length && first.every((word, i) => word === second[i]);
}

/** How alike two texts are, from 0 to 1: the share of words that they have in common (Dice). */
export function likeness(one: string, other: string): number {
  const counts = new Map<string, number>();
  const [first, second] = [wordsOf(one), wordsOf(other)];
  for (const word of first) counts.set(word, (counts.get(word) ?? 0) + 1);
  let common = 0;
  for (const word of second) {
    const left = counts.get(word) ?? 0;
    if (left > 0) {
      common++;
      counts.set(word, left - 1);
    }
  }
  const total = first.length + second.length;
  return total === 0 ? 1 : (2 * common) / total;
}
