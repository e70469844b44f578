/** A number said in words: `whole` + `numerator`/`denominator`; the denominator is 1 for a count. */
export interface WordedNumber {
  readonly end: number;
  readonly whole: number;
  readonly numerator: number;
  readonly denominator: number;
}

const SMALL_WORDS =
  'one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const TEN_WORDS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');
/** Parts of a whole as papers name them; a longer word stands before one that ends it. */
const PART_WORDS: readonly (readonly [string, number])[] = [
  ['thirty[- ]seconds?', 32],
  ['sixty[- ]fourths?', 64],
  ['hal(?:f|ves)', 2],
  ['thirds?', 3],
  ['quarters?', 4],
  ['fourths?', 4],
  ['fifths?', 5],
  ['sixths?', 6],
  ['eighths?', 8],
  ['tenths?', 10],
  ['twelfths?', 12],
  ['sixteenths?', 16],
];
const PARTS = PART_WORDS.map(([word]) => word).join('|');
const SMALL = `(?:${[...SMALL_WORDS].reverse().join('|')})`;
const TENS = `(?:${TEN_WORDS.join('|')})`;
const UNDER_HUNDRED = `(?:${TENS}(?:[- ](?:one|two|three|four|five|six|seven|eight|nine))?|${SMALL})`;
const UNDER_THOUSAND = `(?:(?:an?|${SMALL}) hundred(?:(?: and)? ${UNDER_HUNDRED})?|${UNDER_HUNDRED})`;
const COUNT = `(?:(?:an?|${SMALL}) thousand(?:,?(?: and)? ${UNDER_THOUSAND})?|${UNDER_THOUSAND})`;
const ENDS = '(?![\\p{L}\\p{N}])';

/** `one and a half`, `three-quarters of a`, `half a`, `quarter`, `a sixteenth`; a third needs its count. */
const PART = new RegExp(
  `(?:(${UNDER_HUNDRED})(?: and ))?(?:(an?|${UNDER_HUNDRED})[ -])(${PARTS})(?: of)?(?: an?)?${ENDS}|(half|quarter)(?: of)?(?: an?)?${ENDS}`,
  'uy',
);
const WHOLE = new RegExp(`(${COUNT})${ENDS}`, 'uy');

/**
 * Reads a number in words at an offset of a normalized text: `one`, `half a`, `three-quarters of a`,
 * `one and a half`, `five sixteenths`, `twenty-five`, `four hundred and fifty`. Null for other words.
 */
export function numberWordsAt(text: string, at: number): WordedNumber | null {
  FIRST.lastIndex = at;
  const first = FIRST.exec(text)?.[0] ?? '';
  if (!BEGINS.has(first)) return null;
  const found = MAY_BE_PART.test(text.slice(at, at + LONGEST_PART)) ? partAt(text, at) : null;
  if (found) {
    const [, whole, count, part, alone] = found;
    const name = part ?? alone ?? '';
    const denominator = PART_WORDS.find(([word]) => new RegExp(`^${word}$`).test(name))?.[1] ?? 1;
    const numerator = count === undefined ? 1 : figureOf(count);
    return { end: PART.lastIndex, whole: whole ? figureOf(whole) : 0, numerator, denominator };
  }
  return countAt(text, at, first);
}

function partAt(text: string, at: number): RegExpExecArray | null {
  PART.lastIndex = at;
  return PART.exec(text);
}

/**
 * A count of things that begins with a word of `BEGINS`. Nearly all are one word, or a ten with a unit:
 * only hundreds and thousands need the pattern of them all, which takes longer to make ready than most
 * sheets to read.
 */
function countAt(text: string, at: number, first: string): WordedNumber | null {
  const behind = at + first.length;
  const one = { numerator: 0, denominator: 1 };
  if (text.startsWith(' hundred', behind) || text.startsWith(' thousand', behind)) {
    WHOLE.lastIndex = at;
    const count = WHOLE.exec(text);
    return count && { ...one, end: WHOLE.lastIndex, whole: figureOf(count[1] ?? '') };
  }
  GOES_ON.lastIndex = behind;
  if (GOES_ON.test(text)) return null;
  const small = SMALL_WORDS.indexOf(first);
  if (small >= 0) return { ...one, end: behind, whole: small + 1 };
  const ten = TEN_WORDS.indexOf(first);
  if (ten < 0) return null;
  UNIT_BEHIND.lastIndex = behind;
  const unit = UNIT_BEHIND.exec(text)?.[1];
  const tens = (ten + 2) * 10;
  if (unit === undefined) return { ...one, end: behind, whole: tens };
  return { ...one, end: UNIT_BEHIND.lastIndex, whole: tens + SMALL_WORDS.indexOf(unit) + 1 };
}

/** A part of a whole is not looked for where none of their names stands near. */
const MAY_BE_PART =
  /hal[fv]|quarter|third|fourth|fifth|sixth|eighth|tenth|twelfth|sixteenth|second/;
/** Longer than `seventy-eight and seventy-eight thirty-seconds`. */
const LONGEST_PART = 64;
const GOES_ON = /[\p{L}\p{N}]/uy;
const UNIT_BEHIND = /[- ](one|two|three|four|five|six|seven|eight|nine)(?![\p{L}\p{N}])/uy;

/** The words that a number in words can begin with: most texts are settled by one look. */
const BEGINS: ReadonlySet<string> = new Set([
  ...SMALL_WORDS,
  ...TEN_WORDS,
  'a',
  'an',
  'half',
  'quarter',
]);
const FIRST = /[a-z]{1,9}/y;

/** The figure that a count's words say. */
function figureOf(words: string): number {
  let sum = 0;
  let group = 0;
  for (const word of words.split(/[^a-z]+/)) {
    const small = SMALL_WORDS.indexOf(word);
    const ten = TEN_WORDS.indexOf(word);
    if (word === 'a' || word === 'an') group += 1;
    else if (small >= 0) group += small + 1;
    else if (ten >= 0) group += (ten + 2) * 10;
    else if (word === 'hundred') group *= 100;
    else if (word === 'thousand') {
      sum += group * 1000;
      group = 0;
    }
  }
  return sum + group;
}
