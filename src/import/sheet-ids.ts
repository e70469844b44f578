import { asciiName } from '../text/index.ts';
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
  const differs = differences(first, unit);
  return {
    code: 'duplicate',
    at: cellName(row, column),
    row,
    column,
    shown: unit.model,
    message: `${unit.maker} ${unit.model} stands in row ${first.cell.row} already, ${
      differs.length === 0 ? 'the same in every cell' : 'and says otherwise'
    }`,
    could: differs,
    outcome: `row ${row} is no sheet`,
  };
}

/** All that two rows of one unit say otherwise: `float-level: 13/64 in there, 7/32 in here`. */
function differences(first: ListedUnit, unit: ListedUnit): readonly string[] {
  const [there, here] = [plainFacts(first), plainFacts(unit)];
  return [...new Set([...there.keys(), ...here.keys()])]
    .filter((name) => there.get(name) !== here.get(name))
    .map((name) => {
      const [one, two] = [there.get(name), here.get(name)];
      return `${name}: ${one === undefined ? 'nothing' : one} there, ${two === undefined ? 'nothing' : two} here`;
    });
}

/** Everything that a row says of its unit, each under the name that an editor knows it by. */
function plainFacts(unit: ListedUnit): ReadonlyMap<string, string> {
  const facts = new Map<string, string>();
  const put = (name: string, text: string | null) => {
    if (text !== null && text !== '') facts.set(name, text);
  };
  put('title', unit.title);
  put('features', unit.features.join(', '));
  const { fits } = unit;
  put('fits', fits && [fits.marque, fits.model, fits.years].filter((part) => part).join(' '));
  for (const [key, text] of unit.facts) put(key, text);
  put('note', unit.note);
  for (const [name, { value, also, says, paper }] of unit.settings) {
    put(name, value);
    put(`${name}, also`, also.join('; '));
    for (const [key, text] of says) put(`${name}, ${key}`, text);
    put(
      `${name}, source`,
      paper && [paper.title, paper.year, paper.page].filter((part) => part).join(', '),
    );
  }
  return facts;
}
