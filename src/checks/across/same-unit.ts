import { plainName } from '../vocabulary.ts';
import type { Fact, FitFact, SheetFacts } from './facts.ts';

/** A part number in the one spelling that they are compared in: `t71-104 A` is `T71104A`. */
export function plainNumber(text: string): string {
  return text.toUpperCase().replace(/[^\p{L}\p{N}]+/gu, '');
}

/** A maker's part number as a key; the same number of another maker is another part. */
export function partKey({ kind, maker }: SheetFacts, { text }: Fact): string {
  return `${kind} ${plainName(maker ?? '')} ${plainNumber(text)}`;
}

/** A maker's model as a key; null where one of the two is unsaid. */
export function modelKey({ kind, maker, model }: SheetFacts): string | null {
  if (maker === null || model === null) return null;
  return `${kind} ${plainName(maker)} ${plainNumber(model)}`;
}

/**
 * Whether two sheets of one maker's model are of one unit: they share a part number, or one of them
 * names none. Sheets that name different ones tell two parts of a model apart.
 */
export function isSameUnit(first: SheetFacts, second: SheetFacts): boolean {
  if (first.partNumbers.length === 0 || second.partNumbers.length === 0) return true;
  const numbers = new Set(first.partNumbers.map((number) => partKey(first, number)));
  return second.partNumbers.some((number) => numbers.has(partKey(second, number)));
}

/**
 * Whether two sheets are for one vehicle in one year: a marque, a model or a year that is unsaid may
 * be any.
 */
export function fitsOverlap(first: SheetFacts, second: SheetFacts): boolean {
  if (first.fits.length === 0 || second.fits.length === 0) return true;
  return first.fits.some((one) => second.fits.some((two) => overlap(one, two)));
}

function overlap(one: FitFact, two: FitFact): boolean {
  const same = (a: string | null, b: string | null) =>
    a === null || b === null || plainName(a) === plainName(b);
  return (
    same(one.marque, two.marque) &&
    same(one.model, two.model) &&
    (one.first ?? 0) <= (two.last ?? 9999) &&
    (two.first ?? 0) <= (one.last ?? 9999)
  );
}
