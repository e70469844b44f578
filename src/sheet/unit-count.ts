import type { Span } from '../text/index.ts';
import type { Sheet } from './model.ts';

/**
 * How many there are of something that the kind counts by features (`lobes`, `barrels`), and the feature
 * that says so; null where none does, or where two differ.
 */
export function unitCount(
  sheet: Sheet,
  name: string,
): { readonly count: number; readonly span: Span } | null {
  const numbers = sheet.kind?.relations.counts.get(name);
  const found = sheet.unit.features.flatMap((feature) => {
    const count = numbers?.get(feature.id);
    return count === undefined ? [] : [{ count, span: feature.span }];
  });
  const [first] = found;
  return first && found.every(({ count }) => count === first.count) ? first : null;
}
