import { nearestName } from '../text/index.ts';
import type { KindData, PlaceData, RelationData } from './data.ts';
import type { KindFault } from './faults.ts';
import { EACH } from './relations.ts';

/**
 * The formulas that the program knows, by name, each with its quantities and with those that may be
 * left out. They are handed in, for the rooms of kinds know no formulas.
 */
export type FormulaNames = ReadonlyMap<
  string,
  { readonly quantities: readonly string[]; readonly optional: ReadonlySet<string> }
>;

type Path = readonly (string | number)[];

const placeKeys = ['setting', 'unit', 'thread', 'count', 'edition', 'fixed', 'worked'] as const;

/** Keys of a place that say more of a setting or of a fixed figure, with the one they belong to. */
const belongTo = {
  key: 'setting',
  'at-place': 'setting',
  only: 'setting',
  unless: 'setting',
  because: 'fixed',
} as const;

/**
 * What is wrong among the counts and relations of a kind: a formula, a quantity, a setting, a size of
 * the unit, a count or a feature that is not there; a place that is none or two.
 */
export function relationFaults(data: KindData, formulas: FormulaNames | null): KindFault[] {
  const faults: KindFault[] = [];
  const settings = Object.keys(data.settings);
  const unit = data.unit ?? {};
  const threads = Object.keys(unit).filter((name) => unit[name]?.[0] === 'thread');

  const add = (path: Path, message: string, fix: string | null, onKey = false): void => {
    faults.push({ path, onKey, message, fix });
  };
  const known = (what: string, name: string, names: readonly string[], path: Path): void => {
    if (names.includes(name)) return;
    const near = nearestName(name, names);
    const fix = near ? `did you mean \`${near}\`?` : 'correct the name, or take it out';
    add(path, `this kind has no ${what} \`${name}\``, fix);
  };

  const placeFaults = (place: PlaceData, of: readonly string[], path: Path): void => {
    const said = placeKeys.filter((key) => place[key] !== undefined);
    if (said.length !== 1) {
      const found = said.length === 0 ? 'no place' : said.map((key) => `\`${key}\``).join(' and ');
      add(path, `a quantity stands in one place, and this one names ${found}`, 'name one');
      return;
    }
    for (const [key, owner] of Object.entries(belongTo)) {
      if (place[key as keyof typeof belongTo] === undefined || said[0] === owner) continue;
      add([...path, key], `\`${key}\` says nothing without \`${owner}\``, 'take it out', true);
    }
    if (place.fixed !== undefined && place.because === undefined)
      add([...path, 'fixed'], 'a fixed figure needs its reason', 'add `because:`');
    const { setting, thread } = place;
    for (const name of of) {
      const named = (text: string): string => text.replaceAll(EACH, name);
      if (setting !== undefined) known('setting', named(setting), settings, [...path, 'setting']);
      if (thread !== undefined)
        known('setting or thread', named(thread), [...settings, ...threads], [...path, 'thread']);
    }
  };

  const quantityFaults = (relation: RelationData, path: Path): void => {
    if (formulas === null) return;
    const formula = formulas.get(relation.relation);
    if (!formula) {
      const near = nearestName(relation.relation, [...formulas.keys()]);
      const fix = near ? `did you mean \`${near}\`?` : 'look it up in docs/relations.md';
      add([...path, 'relation'], `there is no formula \`${relation.relation}\``, fix);
      return;
    }
    const names = formula.quantities;
    for (const name of [...Object.keys(relation.quantities), ...(relation.silent ?? [])]) {
      if (names.includes(name)) continue;
      const message = `\`${relation.relation}\` has no quantity \`${name}\``;
      const at = Object.hasOwn(relation.quantities, name) ? ['quantities', name] : ['silent'];
      const near = nearestName(name, names);
      const fix = near ? `did you mean \`${near}\`?` : `it has ${names.join(', ')}`;
      add([...path, ...at], message, fix, true);
    }
    const left = names.filter(
      (name) => !formula.optional.has(name) && !Object.hasOwn(relation.quantities, name),
    );
    if (left.length > 0) {
      const message = `\`${relation.relation}\` does not say where ${left.map((name) => `\`${name}\``).join(', ')} stands`;
      add([...path, 'quantities'], message, 'name a place, or `worked:` with a name', true);
    }
  };

  data.orders?.forEach((order, i) => {
    for (const side of ['less', 'more'] as const)
      placeFaults(order[side], [''], ['orders', i, side]);
  });
  data.relations?.forEach((relation, i) => {
    const path = ['relations', i];
    const { of, each } = relation;
    if ((of === undefined) === (each === undefined))
      add(
        path,
        'a relation belongs to one setting under `of`, or to several under `each`',
        'write one of the two',
      );
    const owners = each ?? (of === undefined ? [] : [of]);
    quantityFaults(relation, path);
    for (const [name, place] of Object.entries(relation.quantities))
      placeFaults(place, owners, [...path, 'quantities', name]);
  });
  return faults;
}
