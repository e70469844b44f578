import { distance } from 'fastest-levenshtein';
import { oncePer } from '../../text/index.ts';
import type { SourceFact } from './facts.ts';

type Described = SourceFact['described'];

/** What a description may say; of anything that one of two leaves out, they do not differ. */
const keys = ['title', 'kind', 'year', 'date', 'author', 'publisher', 'edition', 'number'] as const;

/** What tells one printing of a paper from another of the same title. */
const printings = ['year', 'date', 'publisher', 'edition', 'number'] as const;

/** Letters that may be a slip of the pen in a title. */
const slip = 2;

/** A title in the one form that titles are compared in, and its figures alone. */
interface Title {
  readonly plain: string;
  readonly figures: string;
}

/** The title in the one form that titles are compared in; empty where there is none. */
export function plainTitle(described: Described): string {
  return titleOf(described).plain;
}

/** A title is held against many others. */
const titleOf = oncePer(({ title = '' }: Described): Title => {
  const plain = title
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
  return { plain, figures: plain.replace(/\D+/g, ' ').trim() };
});

/**
 * What two descriptions of one source say otherwise, a key and both texts; none where they agree, and
 * where they are two sources. Under one short name, a title that is a slip away is the same paper, as
 * long as its figures are the same. Under two names one title is the same paper only where nothing
 * tells its printing from the other.
 */
export function saidOtherwise(
  one: SourceFact,
  two: SourceFact,
): readonly (readonly [key: string, one: string, two: string])[] {
  const [first, second] = [titleOf(one.described), titleOf(two.described)];
  const sameName = one.text === two.text;
  if (first.plain === '' || second.plain === '') return [];
  if (first.plain !== second.plain && !(sameName && isSlip(first, second))) return [];
  const apart = keys.flatMap((key) => {
    const [a, b] = [one.described[key], two.described[key]];
    if (a === undefined || b === undefined || plainText(a) === plainText(b)) return [];
    return [[key, a, b] as const];
  });
  const isPrinting = ([key]: readonly [string, string, string]) =>
    printings.some((each) => each === key);
  return sameName || !apart.some(isPrinting) ? apart : [];
}

/** Whether two descriptions say the same in the same words, key by key. */
export function isSameDescription(one: Described, two: Described): boolean {
  const names = Object.keys(one);
  return names.length === Object.keys(two).length && names.every((key) => one[key] === two[key]);
}

function plainText(text: string): string {
  return text.trim().replace(/\s+/g, ' ');
}

function isSlip(one: Title, two: Title): boolean {
  if (one.figures !== two.figures) return false;
  if (Math.abs(one.plain.length - two.plain.length) > slip) return false;
  return distance(one.plain, two.plain) <= slip;
}
