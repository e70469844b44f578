import { levelName } from '../kinds/index.ts';
import type { Kind, KindOperation, KindSetting } from '../kinds/model.ts';
import type { Operation, Setting, Sheet } from './model.ts';

/** What a key of `settings:` means. */
export interface MeantSetting {
  /** The kind's name for it; the key in the one spelling where the kind knows none. */
  readonly id: string;
  readonly known: KindSetting | null;
}

/**
 * What the keys of `settings:` mean, all of a sheet's together. A key that comes near a kind's name
 * only with words taken off (`idle-speed-in-drive`) is a setting of its own where another key has
 * that name outright.
 */
export function settingsMeant(
  keys: Iterable<string>,
  kind: Kind | null,
): ReadonlyMap<string, MeantSetting> {
  const found = new Map<string, KindSetting | null>();
  const taken = new Set<string>();
  for (const key of keys) {
    const known = kind?.settingNamed(key) ?? null;
    found.set(key, known);
    if (known && isNamedOutright(known, key)) taken.add(known.name);
  }
  const meant = new Map<string, MeantSetting>();
  for (const [key, known] of found) {
    if (known && (isNamedOutright(known, key) || !taken.has(known.name))) {
      taken.add(known.name);
      meant.set(key, { id: known.name, known });
    } else meant.set(key, { id: levelName(key) || key, known: null });
  }
  return meant;
}

/** The kind's name for a setting that a text names, or the text in the one spelling. */
export function settingId(text: string, kind: Kind | null): string {
  return kind?.settingNamed(text)?.name ?? (levelName(text) || text);
}

function isNamedOutright({ name, label, aliases }: KindSetting, key: string): boolean {
  if (key === name) return true;
  const level = levelName(key);
  return [name, label, ...aliases].some((each) => levelName(each) === level);
}

/**
 * The setting of a sheet that a text means: by its name there or by any that the kind has for it, in
 * any case and spacing. The first of two that have one name; null where there is none.
 */
export function settingNamed(
  text: string,
  { settings, kind }: Pick<Sheet, 'settings' | 'kind'>,
): Setting | null {
  return (
    settings.get(text) ??
    withId(levelName(text), settings) ??
    withId(settingId(text, kind), settings)
  );
}

function withId(id: string, settings: Sheet['settings']): Setting | null {
  for (const setting of settings.values()) if (setting.id === id) return setting;
  return null;
}

/**
 * What a kind says of an operation: the sheet's own kind, or as the sheet's rules have altered it
 * (`ownRules`). Null where it has no such operation, or where there is none.
 */
export function operationIn(
  kind: Kind,
  operation: Pick<Operation, 'known'> | null,
): KindOperation | null {
  return kind.operations.get(operation?.known?.name ?? '') ?? null;
}

/** The name among some that a text is, in any case and spacing; an exact one goes first. Null for none. */
export function nameAmong(text: string, names: ReadonlySet<string>): string | null {
  if (names.has(text)) return text;
  const level = levelName(text);
  for (const name of names) if (levelName(name) === level) return name;
  return null;
}
