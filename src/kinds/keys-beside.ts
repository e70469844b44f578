import type { Kind, KindSetting } from './model.ts';

/** A key that may be written beside a setting's value, by what its kind says of it. */
export interface KeyBeside {
  readonly key: string;
  /** Whether it has to be. */
  readonly needed: boolean;
  /** Words that say it where they stand behind the value; empty for none in particular. */
  readonly words: readonly string[];
}

/** Keys beside a setting that a formula of the kind, or an order of two figures, reads. */
export function boundKeys(kind: Kind | null, name: string | null): readonly string[] {
  const { bindings = [], orders = [] } = kind?.relations ?? {};
  const places = [
    ...bindings.flatMap(({ quantities }) => [...quantities.values()]),
    ...orders.flatMap(({ less, more }) => [less, more]),
  ];
  return places.flatMap((place) =>
    place.is === 'setting' && place.setting === name && place.key !== null ? [place.key] : [],
  );
}

/** The keys that a setting of a kind has use for, those that it needs first. */
export function keysBeside(
  kind: Kind,
  { name, mustSay, saidBy }: KindSetting,
): readonly KeyBeside[] {
  const asked = new Set(mustSay);
  return [...new Set([...mustSay, ...boundKeys(kind, name)])].map((key) => ({
    key,
    needed: asked.has(key),
    words: saidBy.get(key) ?? [],
  }));
}

/** All keys that a kind has use for beside some setting: what it asks for, and names of its parts. */
export function keysOfKind(kind: Kind): ReadonlySet<string> {
  return new Set([
    ...kind.parts.keys(),
    ...[...kind.settings.values()].flatMap((setting) =>
      keysBeside(kind, setting).map(({ key }) => key),
    ),
  ]);
}
