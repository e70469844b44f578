import { kinds } from '../generated/kinds.ts';
import { buildKind } from './build.ts';
import type { Kind } from './model.ts';
import { levelName } from './name-book.ts';

/** Kinds that are made when they are first asked for: a sheet needs one, and start-up counts. */
class KindShelf implements ReadonlyMap<string, Kind> {
  readonly #made = new Map<string, Kind>();

  get size(): number {
    return Object.keys(kinds).length;
  }

  get(name: string): Kind | undefined {
    const known = this.#made.get(name);
    if (known !== undefined || !this.has(name)) return known;
    const data = kinds[name]?.();
    if (data === undefined) return undefined;
    const kind = buildKind(data);
    this.#made.set(name, kind);
    return kind;
  }

  has(name: string): boolean {
    return Object.hasOwn(kinds, name);
  }

  keys(): MapIterator<string> {
    return Object.keys(kinds).values();
  }

  *values(): MapIterator<Kind> {
    for (const [, kind] of this.entries()) yield kind;
  }

  *entries(): MapIterator<[string, Kind]> {
    for (const name of Object.keys(kinds)) {
      const kind = this.get(name);
      if (kind !== undefined) yield [name, kind];
    }
  }

  [Symbol.iterator](): MapIterator<[string, Kind]> {
    return this.entries();
  }

  forEach(each: (kind: Kind, name: string, map: ReadonlyMap<string, Kind>) => void): void {
    for (const [name, kind] of this.entries()) each(kind, name, this);
  }
}

const shelf = new KindShelf();

/** The kind that a text names, in any case and spacing (`Fuel pump`); null where none has that name. */
export function kindNamed(text: string, kinds: ReadonlyMap<string, Kind>): Kind | null {
  const exact = kinds.get(text);
  if (exact) return exact;
  const level = levelName(text);
  for (const name of kinds.keys()) {
    if (levelName(name) === level) return kinds.get(name) ?? null;
  }
  return null;
}

/** The kinds that come with the program, by name; the same at every call. */
export function builtInKinds(): ReadonlyMap<string, Kind> {
  return shelf;
}
