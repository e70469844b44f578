import { commons } from '../generated/kinds.ts';
import { laidOver } from './lay-over.mjs';

type Table = Readonly<Record<string, unknown>>;

/** What a kind may build on, by name. */
export function commonNames(): readonly string[] {
  return Object.keys(commons);
}

/** Hazards that a kind has by building on common ones. */
export function commonHazards(): readonly string[] {
  return Object.values(commons).flatMap((common) => Object.keys(common().hazards ?? {}));
}

/**
 * What a kind's file says, laid over the common kinds that it builds on; as it is where it builds on none.
 * Of whatever a file may hold: the schema proves the whole afterward. Names that there are no common kinds of
 * are passed over here, and told by `commonFaults`.
 */
export function builtOn(data: unknown): unknown {
  if (!isTable(data)) return data;
  const { 'builds-on': names, ...own } = data;
  if (!Array.isArray(names) || names.length === 0) return data;
  let base: Table = {};
  for (const name of names)
    if (typeof name === 'string' && Object.hasOwn(commons, name))
      base = laidOver(base, commons[name]?.() ?? {});
  return { ...laidOver(base, own), 'builds-on': names };
}

/** Whether a kind's file says something itself, and does not only build on it. */
export function isOwn(data: unknown, path: readonly (string | number)[]): boolean {
  let at = data;
  for (const step of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, step)) return false;
    at = Reflect.get(at, step);
  }
  return true;
}

function isTable(value: unknown): value is Table {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
