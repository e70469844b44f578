import type { ErrorObject } from 'ajv';
import { nearestName } from './nearest-name.ts';
import { keywordWords } from './schema-keywords.ts';
import { listed, named, type SchemaPath, shown } from './schema-names.ts';
import { pointerSteps } from './yaml-nodes.ts';

/** A fault that a schema found, in a restorer's words. */
export interface SchemaWord {
  /** Keys and 0-based list indexes that lead to it from the root; empty for the root itself. */
  readonly path: SchemaPath;
  /** Whether the key is at fault and not its value. For a missing key: the key that lacks it. */
  readonly onKey: boolean;
  readonly message: string;
  readonly fix: string | null;
  /** What may be meant in place of what stands there; absent where nothing is near. */
  readonly write?: readonly string[];
}

/** One text has no more than these told of; what lies behind the first twenty is often their echo. */
const MOST = 20;

/**
 * Ajv's errors over `data` (compiled with `allErrors` and `verbose`) in a restorer's words: the path
 * of keys, what was found, what may stand there, and the name that was perhaps meant. One fault is
 * told once: what the branches of a choice say is left out, and so is the absence of a key that
 * stands there misspelt. No text of the validator's own comes through.
 */
export function schemaWords(
  errors: readonly ErrorObject[] | null | undefined,
  data: unknown,
): SchemaWord[] {
  const kept = withoutEchoes(errors ?? []);
  const misspelt = meantKeys(kept);
  const words: SchemaWord[] = [];
  const told = new Set<string>();
  let more = 0;
  for (const error of kept) {
    if (error.keyword === 'required' && misspelt.has(keyOf(error, missing(error)))) continue;
    if (words.length === MOST) {
      more++;
      continue;
    }
    const word = wordOf(error, pathOf(error, data), data);
    const place = JSON.stringify([word.path, word.onKey ? word.message : '']);
    if (told.has(place)) continue;
    told.add(place);
    words.push(word);
  }
  if (more > 0) {
    const message = `${more} more ${more === 1 ? 'value is' : 'values are'} not as they should be`;
    words.push({ path: [], onKey: false, message, fix: 'mend the others first, then check again' });
  }
  return words;
}

/** Errors without those that only repeat another: branches of a choice, names inside a name rule. */
function withoutEchoes(errors: readonly ErrorObject[]): readonly ErrorObject[] {
  const kept: ErrorObject[] = [];
  const prefixes = new Map<unknown, readonly string[]>();
  for (const error of errors) {
    // The rule for names raises an error of its own behind this one.
    if (error.propertyName !== undefined) continue;
    if (error.keyword === 'anyOf' || error.keyword === 'oneOf') {
      const known = prefixes.get(error.schema) ?? [error.schemaPath, ...refs(error.schema)];
      prefixes.set(error.schema, known);
      // What its branches raised stands right before a choice's own error.
      for (let last = kept.at(-1); last && isBranch(last, error, known); last = kept.at(-1))
        kept.pop();
    }
    kept.push(error);
  }
  return kept;
}

function isBranch(error: ErrorObject, choice: ErrorObject, prefixes: readonly string[]): boolean {
  const outer = choice.instancePath;
  if (error.instancePath !== outer && !error.instancePath.startsWith(`${outer}/`)) return false;
  return prefixes.some((prefix) => error.schemaPath.startsWith(`${prefix}/`));
}

/** Every `$ref` in a schema: errors raised behind one carry its path and not the branch's. */
function refs(schema: unknown): readonly string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  return Object.entries(schema).flatMap(([key, value]) =>
    key === '$ref' && typeof value === 'string' ? [value] : refs(value),
  );
}

/** For every unknown key that is near a known one, the key that was meant, by its map. */
function meantKeys(errors: readonly ErrorObject[]): ReadonlySet<string> {
  const meant = new Set<string>();
  for (const error of errors) {
    const key = strayKey(error);
    const near = key === null ? null : nearestName(key.name, key.known);
    if (key !== null && near !== null) meant.add(`${key.map}\0${near}`);
  }
  return meant;
}

function keyOf(error: ErrorObject, key: string): string {
  return `${error.instancePath}\0${key}`;
}

function missing(error: ErrorObject): string {
  return String((error.params as { missingProperty?: string }).missingProperty ?? '');
}

interface StrayKey {
  readonly map: string;
  readonly name: string;
  readonly known: readonly string[];
}

/** A key that the schema does not know, with those it knows there; null for any other error. */
function strayKey(error: ErrorObject): StrayKey | null {
  if (error.keyword === 'additionalProperties' || error.keyword === 'unevaluatedProperties') {
    const params = error.params as { additionalProperty?: string; unevaluatedProperty?: string };
    const name = params.additionalProperty ?? params.unevaluatedProperty ?? '';
    const known = Object.keys((error.parentSchema?.properties as object | undefined) ?? {});
    return { map: error.instancePath, name, known };
  }
  // A free key whose value is of a type that no free key has: its schema's `$comment` lists the
  // keys that are not free, for a list below `featurs` is a list of features.
  const comment = error.parentSchema?.$comment;
  if (error.keyword !== 'type' || typeof comment !== 'string') return null;
  if (!comment.startsWith('keys: ')) return null;
  const name = pointerSteps(error.instancePath).at(-1) ?? '';
  const map = error.instancePath.slice(0, error.instancePath.lastIndexOf('/'));
  return { map, name, known: comment.slice('keys: '.length).split(' ') };
}

function wordOf(error: ErrorObject, base: SchemaPath, data: unknown): SchemaWord {
  const key = strayKey(error);
  if (key !== null) {
    const near = nearestName(key.name, key.known);
    const path = error.keyword === 'type' ? base : [...base, key.name];
    if (error.keyword !== 'type' || near !== null) {
      const fix = near === null ? among(key.known) : `did you mean ${shown(near)}?`;
      const message = `${named(path)} is no key that is known here`;
      return { path, onKey: true, message, fix, write: [near ?? ''] };
    }
  }
  return keywordWords(error, base, data);
}

function among(known: readonly string[]): string {
  return known.length === 0 ? 'take it out' : `known here: ${listed(known, 'and')}`;
}

/** The path of an error; list indexes as numbers. */
function pathOf(error: ErrorObject, data: unknown): SchemaPath {
  let node = data;
  return pointerSteps(error.instancePath).map((step) => {
    const isList = Array.isArray(node);
    const at = node as Readonly<Record<string, unknown>> | null | undefined;
    node = typeof at === 'object' && at !== null && Object.hasOwn(at, step) ? at[step] : undefined;
    return isList ? Number(step) : step;
  });
}
