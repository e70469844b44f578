import type { Kind, KindPart } from '../kinds/model.ts';
import type { Sheet } from '../sheet/model.ts';
import { oncePer, plainWords } from '../text/index.ts';

/** Words that carry no weight between two wordings of one place. */
const small: ReadonlySet<string> = new Set(
  'a an and at by for from is it its of s that the their to with'.split(' '),
);

/** Words that say which, and so can't be left out: without one of them another thing may be meant. */
const telling: ReadonlySet<string> = new Set(
  (
    'not no never without except half part partly full fully wide only just all both either each other ' +
    'in out on off up down above below over under before after inside outside into between ' +
    'upper lower top bottom inner outer left right front rear near far middle center centre side edge end ' +
    'first second third fourth last next one two three four high higher highest low lower lowest long short ' +
    'open closed shut hot cold warm wet dry primary secondary main pilot inlet outlet idle fast slow'
  ).split(' '),
);

/** How two wordings of where and in what state a figure holds stand to one another. */
export type WordsFound = 'same' | 'otherwise' | 'differs';

/**
 * Whether two wordings say the same: the same words, two names of one condition of the part that the key
 * names, or the same words of weight in another order (`free end of the float`, `the float's free end`).
 * One may leave out what goes without saying (`free end`), and no word that tells which.
 */
export function sameWords(
  key: string,
  first: string,
  second: string,
  { kind }: Pick<Sheet, 'kind'>,
): WordsFound {
  const [one, two] = [plainWords(first), plainWords(second)];
  if (one === two) return first.trim() === second.trim() ? 'same' : 'otherwise';
  for (const part of kind === null ? [] : partsOf(key, kind)) {
    const [known, other] = [first, second].map((text) => conditionOf(text, key, part, kind));
    // What stands for whichever step is named says nothing of which.
    if (known && other && known !== other) return 'differs';
    if (known && part.conditions.get(known)?.countsAs.length === 0) return 'otherwise';
  }
  const [heavy, others] = [weighty(one), weighty(two)];
  const missing = [...heavy, ...others].filter((word) => !heavy.has(word) || !others.has(word));
  const isPart =
    missing.every((word) => heavy.has(word)) || missing.every((word) => others.has(word));
  if (heavy.size === 0 || others.size === 0 || !isPart) return 'differs';
  return missing.some((word) => telling.has(word) || /\d/.test(word)) ? 'differs' : 'otherwise';
}

/** The parts whose condition a key beside a value says: by its name, or as the kind's operations have it. */
function partsOf(key: string, kind: Kind): readonly KindPart[] {
  const named = kind.partNamed(key);
  const said = (saidParts(kind).get(key) ?? []).flatMap((name) => kind.parts.get(name) ?? []);
  return named === null ? said : [named, ...said];
}

const saidParts = oncePer((kind: Kind): ReadonlyMap<string, readonly string[]> => {
  const parts = new Map<string, string[]>();
  for (const { needsSaid } of kind.operations.values()) {
    for (const [part, key] of needsSaid) {
      const known = parts.get(key) ?? [];
      if (!known.includes(part)) parts.set(key, [...known, part]);
    }
  }
  return parts;
});

/** `cam-step: top` is the top step. */
function conditionOf(text: string, key: string, part: KindPart, kind: Kind | null): string | null {
  const noun = key.split('-').at(-1) ?? key;
  return kind?.conditionNamed(text, part) ?? kind?.conditionNamed(`${text} ${noun}`, part) ?? null;
}

function weighty(words: string): ReadonlySet<string> {
  const plain = words
    .split(' ')
    .filter((word) => !small.has(word))
    .map((word) => (word.length > 3 ? word.replace(/(?<!s)s$/, '') : word));
  return new Set(plain);
}
