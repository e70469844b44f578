import { levelName } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import { nearestName } from '../text/nearest-name.ts';
import type { CheckContext } from './define.ts';

/** The kind that a sheet's unit is of; null where it names none or one nobody knows. */
export function kindOf(sheet: Sheet, context: CheckContext): Kind | null {
  const named = sheet.unit.kind;
  if (named === null) return null;
  return context.kinds.get(named.value) ?? context.kinds.get(plainName(named.value)) ?? null;
}

/** A unit of the kind in a sentence: `a carburetor`, `an ignition-distributor`. */
export function oneUnit(kind: Kind): string {
  return `${/^[aeiou]/.test(kind.name) ? 'an' : 'a'} ${kind.name}`;
}

/** A name in the one spelling that names are compared in: `Choke Pull-Down ` → `choke-pull-down`. */
export function plainName(text: string): string {
  return levelName(text);
}

/** Everything one text may mean: itself, and the kind's names for it as an alias. */
export function namesOf(text: string, kind: Kind | null): readonly string[] {
  const names = [text, plainName(text)];
  if (kind === null) return names;
  for (const known of [
    kind.settingNamed(text),
    kind.operationNamed(text),
    kind.hazardNamed(text),
    kind.featureNamed(text),
  ]) {
    if (known !== null) names.push(known.name);
  }
  return names;
}

/** Names and aliases of a part of a kind's vocabulary. */
export function wordsOf(
  entries: ReadonlyMap<string, { readonly name: string; readonly aliases: readonly string[] }>,
): readonly string[] {
  const words: string[] = [];
  for (const entry of entries.values()) words.push(entry.name, ...entry.aliases);
  return words;
}

/** The one name that a misspelt one was probably meant to be; null where none is near. */
export function nearest(name: string, names: Iterable<string>): string | null {
  return nearestName(plainName(name), [...names]);
}

/** The settings of a sheet by every name that `:value[...]` may call them. */
export function settingsByName(sheet: Sheet): ReadonlyMap<string, Setting> {
  const known = byName.get(sheet);
  if (known !== undefined) return known;
  const map = new Map<string, Setting>();
  for (const setting of sheet.settings.values()) {
    map.set(plainName(setting.name.value), setting);
    if (setting.canonical !== null) map.set(setting.canonical, setting);
  }
  byName.set(sheet, map);
  return map;
}

const byName = new WeakMap<Sheet, ReadonlyMap<string, Setting>>();

/** The setting that `:value[name]` calls, by its name or an alias; null where there is none. */
export function settingCalled(name: string, sheet: Sheet, kind: Kind | null): Setting | null {
  const map = settingsByName(sheet);
  const plain = map.get(plainName(name));
  if (plain !== undefined) return plain;
  const canonical = kind?.settingNamed(name)?.name;
  return canonical === undefined ? null : (map.get(canonical) ?? null);
}

/** `a`, `b` or `c`: names in backticks, for people. */
export function eitherOf(names: readonly string[]): string {
  return listed(names, 'or');
}

/** `a`, `b` and `c`: names in backticks, for people. */
export function allOf(names: readonly string[]): string {
  return listed(names, 'and');
}

function listed(names: readonly string[], word: string): string {
  const quoted = names.map((name) => `\`${name}\``);
  const last = quoted.at(-1);
  if (last === undefined) return '';
  return quoted.length === 1 ? last : `${quoted.slice(0, -1).join(', ')} ${word} ${last}`;
}
