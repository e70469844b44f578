import { levelName, likeNames } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import type { Sheet } from '../sheet/model.ts';
import { nearestName } from '../text/index.ts';

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

/**
 * Behind a cure that asks for a name of the kind: the names that are like the refused one, and where the
 * rest is. E.g. (perhaps `idle-stop`; `gaugeleaf kind carburetor` lists all)
 */
export function ofTheKind(
  name: string,
  entries: Iterable<{ readonly name: string; readonly aliases?: readonly string[] }>,
  kind: Kind,
): string {
  const like = likeNames(name, entries);
  const such = like.length === 0 ? '' : `perhaps ${eitherOf(like)}; `;
  return `(${such}\`gaugeleaf kind ${kind.name}\` lists all)`;
}

/** Every name that a sheet's settings have there or in the kind, for the nearest to a misspelt one. */
export function settingNames(sheet: Sheet): readonly string[] {
  const names = new Set<string>();
  for (const { name, id } of sheet.settings.values()) names.add(plainName(name.value)).add(id);
  return [...names];
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
