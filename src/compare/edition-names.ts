import type { EditionChanges } from './model.ts';

type Named = EditionChanges['before'];

/**
 * Whether the names and dates of two editions leave open which is which: the name was not changed,
 * and no two dates tell them apart. Editions without a name go by what the reader called them.
 */
export function areNamedAlike(before: Named, after: Named): boolean {
  if (before.edition === null || after.edition === null) return false;
  const level = (name: string) => name.trim().replace(/\s+/g, ' ').toLowerCase();
  if (level(before.edition) !== level(after.edition)) return false;
  return before.date === null || after.date === null || before.date === after.date;
}
