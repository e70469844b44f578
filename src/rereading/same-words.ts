import type { Sheet } from '../sheet/model.ts';
import { plainWords } from '../text/index.ts';

/** Words that carry no weight between two wordings of one place. `on`, `off` and `up` do. */
const small: ReadonlySet<string> = new Set(
  'a an and at by for from in is it its of s that the their to with'.split(' '),
);

/** How two wordings of where and in what state a figure holds stand to one another. */
export type WordsFound = 'same' | 'otherwise' | 'differs';

/**
 * Whether two wordings say the same: the same words, two names of one condition of the part that the key
 * names, or the same words of weight in another order (`free end of the float`, `the float's free end`).
 */
export function sameWords(
  key: string,
  first: string,
  second: string,
  { kind }: Pick<Sheet, 'kind'>,
): WordsFound {
  const [one, two] = [plainWords(first), plainWords(second)];
  if (one === two) return first.trim() === second.trim() ? 'same' : 'otherwise';
  const part = kind?.partNamed(key) ?? null;
  if (kind && part) {
    const [known, other] = [first, second].map((text) => kind.conditionNamed(text, part));
    if (known && other) return known === other ? 'otherwise' : 'differs';
  }
  const [heavy, others] = [weighty(one), weighty(two)];
  return heavy !== '' && heavy === others ? 'otherwise' : 'differs';
}

function weighty(words: string): string {
  const plain = words
    .split(' ')
    .filter((word) => !small.has(word))
    .map((word) => (word.length > 3 ? word.replace(/s$/, '') : word));
  return [...new Set(plain)].sort().join(' ');
}
