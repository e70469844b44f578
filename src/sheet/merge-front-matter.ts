import { levelName } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import type { PlacedEntry, PlacedMap, PlacedNode } from '../text/index.ts';
import { entriesOf, under } from './fields.ts';
import type { ReadProblem } from './model.ts';
import { settingsMeant } from './names.ts';
import { settingKeys } from './setting.ts';

/** What a variant says of itself; no base says it for another sheet. */
const ownKeys = new Set([
  'gaugeleaf',
  'sheet',
  'title',
  'based-on',
  'revision',
  'date',
  'status',
  'accept',
]);

/** A variant's front matter laid over its base's, every value with its own place. */
export interface MergedFrontMatter {
  readonly root: PlacedMap;
  /** Operations, by the kind's names, that the base does and the variant does not. */
  readonly dropped: ReadonlySet<string>;
  /** What the variant says of its base to no effect. */
  readonly problems: readonly ReadProblem[];
}

/**
 * Lays a variant's front matter over its base's. Unit, settings, sources and rules of work are laid
 * over key by key, acceptances are added, anything else that the variant states stands in place of the
 * base's. `none` drops a setting, a fact of the unit, or an operation under `work:`; what made only
 * dropped settings is dropped with them.
 */
export function mergeFrontMatter(
  own: PlacedMap,
  base: PlacedMap,
  kind: Kind | null,
): MergedFrontMatter {
  const problems: ReadProblem[] = [];
  const dropped = new Set<string>();
  const keys = [under(own, 'settings'), under(base, 'settings')].flatMap((node) => [
    ...entriesOf(node).keys(),
  ]);
  const meant = settingsMeant(keys, kind);
  const settingName = (key: string) => meant.get(key)?.id ?? key;
  const operationName = (key: string) => kind?.operationNamed(key)?.name ?? levelName(key);
  const drop = (what: string, { key }: PlacedEntry, known: boolean): void => {
    if (known) return;
    problems.push({
      kind: 'variant',
      span: key.span,
      message: `\`${key.text}: none\` drops nothing: the base has no such ${what}`,
      fix: `write the name that the base has, or take it out`,
      write: [''],
    });
  };

  const settings = laidOver(under(own, 'settings'), under(base, 'settings'), settingName, {
    none: (entry, name, known) => {
      drop('setting', entry, known);
      dropped.add(name);
    },
    merge: (one, two, name) => mergeSetting(one, two, kind, name),
  });
  const gone = new Set<string>();
  for (const operation of kind?.operations.values() ?? []) {
    const made = operation.settings;
    const left = entriesOf(settings);
    const isGone =
      made.some((name) => dropped.has(name)) &&
      made.every((name) => ![...left.keys()].some((key) => settingName(key) === name));
    if (isGone) gone.add(operation.name);
  }
  const work = laidOver(under(own, 'work'), under(base, 'work'), operationName, {
    none: (_, name) => gone.add(name),
    merge: (one) => one,
  });
  const unit = laidOver(under(own, 'unit'), under(base, 'unit'), (key) => key, {
    none: (entry, _, known) => drop('fact of the unit', entry, known),
    merge: (one) => one,
    notTaken: new Set(['interchanges']),
  });
  const sources = laidOver(under(own, 'sources'), under(base, 'sources'), levelName, {
    merge: (one) => one,
  });

  const entries = new Map<string, PlacedEntry>();
  const together: Readonly<Record<string, PlacedNode | undefined>> = {
    settings,
    work,
    unit,
    sources,
    accept: bothLists(under(own, 'accept'), under(base, 'accept')),
  };
  for (const [key, entry] of [...own.entries, ...base.entries]) {
    if (entries.has(key)) continue;
    const isOwn = own.entries.has(key);
    const merged = together[key];
    if (merged) entries.set(key, { ...entry, value: merged });
    else if (isOwn || !ownKeys.has(key)) entries.set(key, entry);
  }
  return { root: { ...own, entries }, dropped: gone, problems };
}

interface Laying {
  /** Told of each entry that says `none`; without it, `none` is a value like any other. */
  readonly none?: (entry: PlacedEntry, name: string, known: boolean) => void;
  readonly merge: (own: PlacedNode, base: PlacedNode, name: string) => PlacedNode;
  /** Keys that the base keeps for itself. */
  readonly notTaken?: ReadonlySet<string>;
}

/** One mapping laid over another: the base's order, what is new at the end. */
function laidOver(
  own: PlacedNode | undefined,
  base: PlacedNode | undefined,
  nameOf: (key: string) => string,
  { none, merge, notTaken }: Laying,
): PlacedNode | undefined {
  if (own !== undefined && own.kind !== 'map' && own.kind !== 'null') return own;
  const mine = new Map<string, { readonly key: string; readonly entry: PlacedEntry }>();
  // One thing under two names: the first is laid over, the second stands beside it to be told of.
  const second = new Map<string, PlacedEntry>();
  for (const [key, entry] of entriesOf(own)) {
    const name = nameOf(key);
    if (mine.has(name)) second.set(key, entry);
    else mine.set(name, { key, entry });
  }
  const used = new Set<string>();
  const entries = new Map<string, PlacedEntry>();
  const isNone = ({ value }: PlacedEntry) => value.kind === 'scalar' && value.text === 'none';
  for (const [key, entry] of entriesOf(base)) {
    if (notTaken?.has(key)) continue;
    const name = nameOf(key);
    const over = mine.get(name);
    if (over === undefined) {
      entries.set(key, entry);
      continue;
    }
    used.add(name);
    if (none && isNone(over.entry)) none(over.entry, name, true);
    else {
      entries.set(over.key, { ...over.entry, value: merge(over.entry.value, entry.value, name) });
    }
  }
  for (const [name, { key, entry }] of mine) {
    if (used.has(name)) continue;
    if (none && isNone(entry)) none(entry, name, false);
    else entries.set(key, entry);
  }
  for (const [key, entry] of second) if (!isNone(entry)) entries.set(key, entry);
  const node = own?.kind === 'map' ? own : base?.kind === 'map' ? base : own;
  return node?.kind === 'map' ? { ...node, entries } : node;
}

/**
 * One setting laid over another. A new figure stands for itself: of the base's only how it is
 * measured is kept, and nothing that is worked from the figure.
 */
function mergeSetting(
  own: PlacedNode,
  base: PlacedNode,
  kind: Kind | null,
  name: string,
): PlacedNode {
  if (own.kind !== 'map' || base.kind !== 'map') return own;
  const isNew = ['value', 'places', 'statements'].some((key) => own.entries.has(key));
  const worked = isNew ? workedKeys(kind, name) : null;
  const kept = [...base.entries].filter(
    ([key]) => worked === null || key === 'at' || !(settingKeys.has(key) || worked.has(key)),
  );
  return { ...own, entries: new Map([...kept, ...own.entries]) };
}

/** The keys beside a setting's value that its kind works from figures, those apart that it must say. */
function workedKeys(kind: Kind | null, name: string): ReadonlySet<string> {
  const keys = new Set<string>();
  for (const { quantities } of kind?.relations.bindings ?? []) {
    for (const place of quantities.values()) {
      if (place.is === 'setting' && place.setting === name && place.key !== null) {
        keys.add(place.key);
      }
    }
  }
  for (const key of kind?.settings.get(name)?.mustSay ?? []) keys.delete(key);
  return keys;
}

function bothLists(
  own: PlacedNode | undefined,
  base: PlacedNode | undefined,
): PlacedNode | undefined {
  if (own?.kind !== 'list' || base?.kind !== 'list') return own ?? base;
  return { ...own, items: [...own.items, ...base.items] };
}
