/** A number said in words: `whole` + `numerator`/`denominator`; the denominator is 1 for a count. */
export interface WordedNumber {
  readonly end: number;
  readonly whole: number;
  readonly numerator: number;
  readonly denominator: number;
}

const WHOLE_WORDS = 'one two three four five six seven eight nine ten eleven twelve'.split(' ');
const PART_WORDS: readonly (readonly [string, number])[] = [
  ['hal(?:f|ves)', 2],
  ['thirds?', 3],
  ['quarters?', 4],
  ['eighths?', 8],
  ['sixteenths?', 16],
];
const PARTS = PART_WORDS.map(([word]) => word).join('|');
const WHOLES = WHOLE_WORDS.join('|');
/** `one`, `one and a half`, `three-quarters of a`, `half a`, `quarter`; a third needs its count. */
const IN_WORDS = new RegExp(
  `(?:(${WHOLES}) and )?(?:(?:(an?|${WHOLES})[ -])(${PARTS})|(half|quarter))(?: of)?(?: an?)?(?!\\p{L})|(${WHOLES})(?!\\p{L})`,
  'uy',
);

/**
 * Reads a number in words at an offset of a normalized text, as far as a screw's turns and a choke's
 * notches need it: `one`, `half a`, `three-quarters of a`, `one and a half`. Null for other words.
 */
export function numberWordsAt(text: string, at: number): WordedNumber | null {
  IN_WORDS.lastIndex = at;
  const found = IN_WORDS.exec(text);
  if (!found) return null;
  const [, whole, count, part, alone, only] = found;
  const end = IN_WORDS.lastIndex;
  if (only !== undefined) return { end, whole: figureOf(only), numerator: 0, denominator: 1 };
  const name = part ?? alone ?? '';
  const denominator = PART_WORDS.find(([word]) => new RegExp(`^${word}$`).test(name))?.[1] ?? 1;
  const numerator = count === undefined ? 1 : figureOf(count);
  return { end, whole: figureOf(whole), numerator, denominator };
}

function figureOf(word: string | undefined): number {
  if (word === undefined) return 0;
  return word.startsWith('a') ? 1 : WHOLE_WORDS.indexOf(word) + 1;
}
