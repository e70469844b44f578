import { nearestName } from '../../text/index.ts';
import type { Kind } from '../model.ts';
import { levelName } from '../name-book.ts';
import type { KindEntry, KindReference } from './model.ts';

/**
 * The entries that a text names, in any case and spacing and by every alias: a name is often a setting
 * and an operation. Empty where there is none.
 */
export function entriesNamed(
  text: string,
  kind: Kind,
  reference: KindReference,
): readonly KindEntry[] {
  const level = levelName(text);
  const part = [...kind.parts.values()].find((each) =>
    [each.name, each.label, ...each.aliases].some((name) => levelName(name) === level),
  );
  const named = (entries: readonly KindEntry[], name: string | undefined) =>
    entries.filter((entry) => entry.name === name);
  return [
    ...named(reference.settings, kind.settingNamed(text)?.name),
    ...named(reference.operations, kind.operationNamed(text)?.name),
    ...named(reference.parts, part?.name),
    ...named(reference.hazards, kind.hazardNamed(text)?.name),
    ...named(reference.features, kind.featureNamed(text)?.name),
    ...named(reference.unit, level),
  ];
}

/** How many names are worth reading where one was refused. */
const MOST = 4;

/**
 * Names that a refused one was perhaps meant to be: the one that is a letter or two off, then those
 * that share its words, most words first; aliases stand for their names. At most four, each once.
 */
export function likeNames(
  text: string,
  entries: Iterable<{ readonly name: string; readonly aliases?: readonly string[] }>,
): readonly string[] {
  const byWord = new Map<string, string>();
  for (const { name, aliases = [] } of entries) {
    for (const each of [name, ...aliases]) {
      const level = levelName(each);
      if (!byWord.has(level)) byWord.set(level, name);
    }
  }
  const wanted = levelName(text);
  const near = nearestName(wanted, byWord.keys());
  const words = new Set(wanted.split('-').filter((word) => word.length > 2));
  const shared = new Map<string, number>();
  for (const [level, name] of byWord) {
    const parts = level.split('-');
    const count = parts.filter((word) => words.has(word)).length;
    // Of names that share as many words, the shorter is meant: less of it is something else.
    const weight = count === 0 ? 0 : count - parts.length / 100;
    if (weight > (shared.get(name) ?? 0)) shared.set(name, weight);
  }
  const ranked = [...shared].sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1));
  const names = [...(near === null ? [] : [byWord.get(near) ?? near]), ...ranked.map(([a]) => a)];
  return [...new Set(names)].slice(0, MOST);
}
