import { safetyLines } from '../matter/index.ts';
import type { SheetToPrint } from '../orders/model.ts';
import { idMaker } from './ids.ts';
import type { CautionsPage } from './model.ts';

/**
 * The hazards that the work of an edition meets, by kind of unit in the order that the sheets have
 * them: what a fan does is told otherwise of a carburetor than of a distributor.
 */
export function cautionGroups(sheets: readonly SheetToPrint[]): CautionsPage['groups'] {
  const id = idMaker();
  const kinds = new Map<string, SheetToPrint[]>();
  for (const entry of sheets) {
    const { kind } = entry.sheet;
    if (kind !== null) kinds.set(kind.name, [...(kinds.get(kind.name) ?? []), entry]);
  }
  return [...kinds].map(([name, entries]) => ({
    id: id('kind', name),
    title: entries[0]?.sheet.kind?.title ?? name,
    cautions: safetyLines(entries).map((line) => ({
      ...line,
      id: id('caution', `${name} ${line.label}`),
    })),
  }));
}
