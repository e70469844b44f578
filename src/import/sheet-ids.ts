import { asciiName } from '../text/ascii-name.ts';
import { cellName } from './cell-address.ts';
import type { ListedUnit } from './listed-unit.ts';
import type { Slip } from './slip.ts';

/** Maker and model in small letters, digits and hyphens; `unit` where nothing is left of them. */
export function sheetIdOf(...names: readonly string[]): string {
  return asciiName(names.join(' ')).slice(0, 80).replace(/-+$/, '') || 'unit';
}

/** Units with the names of their sheets; a unit that the list has twice is there once, and listed. */
export function namedSheets(units: readonly ListedUnit[]): {
  readonly named: ReadonlyMap<string, ListedUnit>;
  readonly slips: readonly Slip[];
} {
  const groups = new Map<string, ListedUnit[]>();
  for (const unit of units) {
    const id = sheetIdOf(unit.maker, unit.model);
    groups.set(id, [...(groups.get(id) ?? []), unit]);
  }
  const named = new Map<string, ListedUnit>();
  const slips: Slip[] = [];
  for (const [id, group] of groups) {
    const byNumber = new Map<string, ListedUnit>();
    for (const unit of group) {
      const number = sheetIdOf(unit.maker, unit.model, ...unit.partNumbers);
      const first = byNumber.get(number);
      if (first === undefined) byNumber.set(number, unit);
      else slips.push(duplicate(unit, first));
    }
    // Part numbers tell units apart that share a model.
    for (const [number, unit] of byNumber) named.set(byNumber.size === 1 ? id : number, unit);
  }
  return { named, slips };
}

function duplicate(unit: ListedUnit, first: ListedUnit): Slip {
  const { row, column } = unit.cell;
  const names = new Set([...unit.settings.keys(), ...first.settings.keys()]);
  const other = [...names].filter(
    (name) => unit.settings.get(name)?.value !== first.settings.get(name)?.value,
  );
  const differs = other.map((name) => {
    const [one, two] = [first.settings.get(name), unit.settings.get(name)];
    return `${name}: ${one?.value ?? 'nothing'} there, ${two?.value ?? 'nothing'} here`;
  });
  return {
    code: 'duplicate',
    at: cellName(row, column),
    row,
    column,
    shown: unit.model,
    message: `${unit.maker} ${unit.model} stands in row ${first.cell.row} already${
      differs.length === 0 ? ', with the same settings' : ''
    }`,
    could: differs,
    outcome: `row ${row} is no sheet`,
  };
}
