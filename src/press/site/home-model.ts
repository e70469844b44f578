import type { Fit, Sheet } from '../../sheet/model.ts';
import { idMaker } from './ids.ts';
import type { HomePage, PageLink, UnitEntry } from './model.ts';

/** A unit to be listed. */
export interface UnitToList {
  readonly sheet: Sheet;
  readonly entry: Omit<UnitEntry, 'fits'>;
}

const noMarque = 'No marque named';

/**
 * The units by the marques that they fit, in the order of their names; within one in the edition's
 * own. A unit of two marques stands under both; one that names none stands last.
 */
export function byMarque(units: readonly UnitToList[]): HomePage['marques'] {
  const marques = new Map<string, UnitEntry[]>();
  for (const { sheet, entry } of units) {
    const fits = new Map<string, string[]>();
    for (const fit of sheet.fits) {
      const marque = fit.marque ?? noMarque;
      const machine = machineWords(fit);
      const known = fits.get(marque) ?? [];
      fits.set(marque, machine === '' ? known : [...known, machine]);
    }
    if (fits.size === 0) fits.set(noMarque, []);
    for (const [marque, machines] of fits) {
      const fitting = machines.length === 0 ? null : machines.join(' · ');
      marques.set(marque, [...(marques.get(marque) ?? []), { ...entry, fits: fitting }]);
    }
  }
  const id = idMaker();
  return [...marques]
    .sort(([first], [second]) => {
      const last = Number(first === noMarque) - Number(second === noMarque);
      return last === 0 ? byCode(first, second) : last;
    })
    .map(([marque, listed]) => ({ id: id('marque', marque), marque, units: listed }));
}

/** Every part number with its unit, ascending, numbers in it by their size: `T71-9` before `T71-104`. */
export function byPartNumber(
  units: readonly UnitToList[],
): readonly (PageLink & { readonly number: string })[] {
  return units
    .flatMap(({ sheet, entry }) =>
      sheet.unit.partNumbers.map(({ value }) => ({
        number: value,
        href: entry.href,
        label: entry.label,
      })),
    )
    .sort((first, second) => byCode(sortable(first.number), sortable(second.number)));
}

function sortable(text: string): string {
  return text.toLowerCase().replace(/\d+/g, (figures) => figures.padStart(12, '0'));
}

function byCode(first: string, second: string): number {
  return first < second ? -1 : first > second ? 1 : 0;
}

function machineWords({ model, years }: Fit): string {
  return [model, years].filter((part) => part !== null && part !== '').join(', ');
}
