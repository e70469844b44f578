import { deserialize, serialize } from 'node:v8';
import Fraction from 'fraction.js';
import { kindNamed } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';

/**
 * What stands in packed bytes for an exact number, or for a thing of the sheet's kind, which is the
 * project's own and large. A map with a key that nothing else has: an object could be forged by a
 * directive's attributes.
 */
type Mark = ReadonlyMap<null, readonly [of: Section | 'kind', name: string] | NumberParts>;
type NumberParts = readonly [of: 'number', top: bigint, bottom: bigint];
type Section = (typeof sections)[number];

const sections = ['settings', 'operations', 'hazards', 'features'] as const;

/**
 * What was read of a sheet of some kind as bytes; null where there is anything in it that would not come
 * back as it was.
 */
export function pack(value: object, kind: Kind | null): Uint8Array | null {
  const copy = plainCopy(value, marksOf(kind));
  return copy === strange ? null : serialize(copy);
}

/** What was packed, with the project's own kinds; null for no bytes, or those of another version of Node.js. */
export function unpack<T extends { readonly sheet: { readonly kind: Kind | null } }>(
  bytes: Uint8Array | null,
  kinds: ReadonlyMap<string, Kind>,
): T | null {
  if (bytes === null) return null;
  try {
    const value = deserialize(bytes);
    const mark = markIn(value.sheet.kind);
    const kind = mark?.[0] === 'kind' ? kindNamed(mark[1], kinds) : null;
    return restored(value, kind, new Map()) as T;
  } catch {
    return null;
  }
}

function marksOf(kind: Kind | null): Map<unknown, unknown> {
  const marks = new Map<unknown, unknown>();
  if (kind === null) return marks;
  marks.set(kind, new Map([[null, ['kind', kind.name]]]));
  for (const of of sections) {
    for (const [name, thing] of kind[of]) marks.set(thing, new Map([[null, [of, name]]]));
  }
  return marks;
}

/** In place of a copy: something that bytes cannot hold. */
const strange = Symbol('strange');

/** A copy of plain data and marks; one thing that is held twice stays one. */
function plainCopy(value: unknown, copies: Map<unknown, unknown>): unknown {
  if (typeof value === 'function' || typeof value === 'symbol') return strange;
  if (typeof value !== 'object' || value === null) return value;
  const known = copies.get(value);
  if (known !== undefined) return known;
  let isWhole = true;
  const inner = (each: unknown) => {
    const copy = plainCopy(each, copies);
    isWhole &&= copy !== strange;
    return copy;
  };
  const keep = <C extends object>(copy: C): C => {
    copies.set(value, copy);
    return copy;
  };
  if (value instanceof Fraction) {
    return keep(new Map([[null, ['number', value.s * value.n, value.d]]]));
  }
  if (value instanceof Map) {
    const copy = keep(new Map());
    for (const [key, each] of value) copy.set(inner(key), inner(each));
    return isWhole ? copy : strange;
  }
  if (value instanceof Set) {
    const copy = keep(new Set());
    for (const each of value) copy.add(inner(each));
    return isWhole ? copy : strange;
  }
  if (Array.isArray(value)) {
    const copy = keep([] as unknown[]);
    for (const each of value) copy.push(inner(each));
    return isWhole ? copy : strange;
  }
  const prototype = Object.getPrototypeOf(value);
  if (prototype !== Object.prototype && prototype !== null) return strange;
  const copy = keep({} as Record<string, unknown>);
  for (const [key, each] of Object.entries(value)) {
    Object.defineProperty(copy, key, {
      value: inner(each),
      configurable: true,
      enumerable: true,
      writable: true,
    });
  }
  return isWhole ? copy : strange;
}

function markIn(value: unknown): ReturnType<Mark['get']> {
  return value instanceof Map && value.has(null) ? (value as Mark).get(null) : undefined;
}

/** Puts what marks stand for in their places, in the value itself. */
function restored(value: unknown, kind: Kind | null, known: Map<unknown, unknown>): unknown {
  if (typeof value !== 'object' || value === null) return value;
  const before = known.get(value);
  if (before !== undefined) return before;
  const mark = markIn(value);
  if (mark !== undefined) {
    const thing = meantBy(mark, kind);
    known.set(value, thing);
    return thing;
  }
  known.set(value, value);
  if (value instanceof Map) {
    for (const [key, each] of value) value.set(key, restored(each, kind, known));
  } else if (!(value instanceof Set)) {
    for (const [key, each] of Object.entries(value)) {
      const inner = restored(each, kind, known);
      if (inner !== each) (value as Record<string, unknown>)[key] = inner;
    }
  }
  return value;
}

function meantBy(mark: NonNullable<ReturnType<typeof markIn>>, kind: Kind | null): unknown {
  if (mark[0] === 'number') return new Fraction(mark[1], mark[2]);
  if (mark[0] === 'kind') return kind;
  const thing = kind?.[mark[0]].get(mark[1]);
  if (thing === undefined) throw new Error(`the kind has no ${mark[1]}`);
  return thing;
}
