import { createHash } from 'node:crypto';
import { deserialize, serialize } from 'node:v8';
import Fraction from 'fraction.js';
import type { CheckContext, Finding } from '../checks/define.ts';
import { kindNamed } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import type { PartStore } from '../press/index.ts';
import type { Sheet } from '../sheet/model.ts';
import { LineIndex } from '../text/span.ts';

/** What was read from a sheet and found in it. */
export interface ReadAndChecked {
  readonly sheet: Sheet;
  readonly findings: readonly Finding[];
}

interface Kept {
  /** Without its lines, which are quickly found again. */
  readonly sheet: Omit<Sheet, 'lines'>;
  readonly findings: readonly Finding[];
  /** What the checks were told of pictures, which are files of their own. */
  readonly pictures: readonly (readonly [url: string, status: string])[];
}

/**
 * Reads and checks a sheet, or takes what came of the same text the last time: with the same kinds
 * of unit, edition and pictures. `digest` changes with any of them; null without a store.
 */
export function keptSheet(
  store: PartStore | null,
  text: string,
  file: string,
  context: CheckContext,
  examine: (context: CheckContext) => ReadAndChecked,
): ReadAndChecked & { readonly digest: string | null } {
  if (store === null) return { ...examine(context), digest: null };
  const { kinds, wireGauge, altitude, measuredUnits, usualOrder, sharedSources, kit } = context;
  const around = markOf(kinds, wireGauge, altitude, measuredUnits, usualOrder, sharedSources, kit);
  const name = store.nameOf(`sheet ${around} ${file}\n${text}`);
  const digestOf = (pictures: Kept['pictures']) =>
    store.nameOf(`${name} ${JSON.stringify(pictures)}`);
  const kept = unpack(store.read(name), kinds);
  if (kept?.pictures.every(([url, status]) => context.picture?.(url) === status)) {
    const sheet = { ...kept.sheet, lines: new LineIndex(text) };
    return { sheet, findings: kept.findings, digest: digestOf(kept.pictures) };
  }
  const pictures: [string, string][] = [];
  const { picture } = context;
  const asked: CheckContext['picture'] = (url) => {
    const status = picture?.(url) ?? 'found';
    pictures.push([url, status]);
    return status;
  };
  const examined = examine({ ...context, picture: picture === null ? null : asked });
  const { lines: _, ...sheet } = examined.sheet;
  const packed = pack({ sheet, findings: examined.findings, pictures });
  if (packed !== null) store.keep(name, packed);
  return { ...examined, digest: digestOf(pictures) };
}

let lastKinds: unknown = null;
let lastMark = '';

/** The kinds are the same for all sheets of a project, and large. */
function markOf(kinds: CheckContext['kinds'], ...rest: readonly unknown[]): string {
  if (kinds !== lastKinds) {
    lastMark = createHash('sha256')
      .update(JSON.stringify(dataOf([...kinds])))
      .digest('hex');
    lastKinds = kinds;
  }
  return `${lastMark} ${createHash('sha256').update(serialize(rest)).digest('hex')}`;
}

/** A value without its functions, which cannot be kept and come of the data beside them. */
function dataOf(value: unknown): unknown {
  if (typeof value === 'function') return null;
  if (typeof value === 'bigint' || value instanceof RegExp) return String(value);
  if (typeof value !== 'object' || value === null) return value;
  if (value instanceof Map) return [...value].map(dataOf);
  if (Array.isArray(value) || value instanceof Set) return [...value].map(dataOf);
  return Object.entries(value).map(([key, inner]) => [key, dataOf(inner)]);
}

/** Null where there is anything in it that would not come back as it was. */
function pack(kept: Kept): Uint8Array | null {
  const plain = withoutKind(kept, marksOf(kept.sheet.kind), new Map());
  return isPlain(plain, new Set()) ? serialize(plain) : null;
}

/** What stands in a kept sheet for its kind, or for a thing of it: these are the project's, and large. */
interface KindMark {
  readonly ofKind: (typeof sections)[number] | 'kind';
  readonly name: string;
}

const sections = ['settings', 'operations', 'hazards', 'features'] as const;

function marksOf(kind: Kind | null): ReadonlyMap<unknown, KindMark> {
  const marks = new Map<unknown, KindMark>();
  if (kind === null) return marks;
  marks.set(kind, { ofKind: 'kind', name: kind.name });
  for (const ofKind of sections) {
    for (const [name, thing] of kind[ofKind]) marks.set(thing, { ofKind, name });
  }
  return marks;
}

/** A copy in which marks stand for what is the kind's own; one thing that is held twice stays one. */
function withoutKind(
  value: unknown,
  marks: ReadonlyMap<unknown, KindMark>,
  copies: Map<unknown, unknown>,
): unknown {
  if (typeof value !== 'object' || value === null || value instanceof Fraction) return value;
  const mark = marks.get(value);
  if (mark !== undefined) return mark;
  const known = copies.get(value);
  if (known !== undefined) return known;
  const inner = (each: unknown) => withoutKind(each, marks, copies);
  if (value instanceof Map) {
    const copy = new Map<unknown, unknown>();
    copies.set(value, copy);
    for (const [key, each] of value) copy.set(key, inner(each));
    return copy;
  }
  if (value instanceof Set) return value;
  const copy: Record<string, unknown> | unknown[] = Array.isArray(value)
    ? []
    : Object.create(Object.getPrototypeOf(value));
  copies.set(value, copy);
  for (const [key, each] of Object.entries(value))
    (copy as Record<string, unknown>)[key] = inner(each);
  return copy;
}

function unpack(bytes: Uint8Array | null, kinds: CheckContext['kinds']): Kept | null {
  if (bytes === null) return null;
  try {
    const kept = deserialize(bytes);
    const name = kept.sheet.kind?.name;
    revive(kept, name === undefined ? null : kindNamed(name, kinds), new Set());
    return kept;
  } catch {
    // Another version of Node.js wrote it.
    return null;
  }
}

const plainPrototypes: ReadonlySet<unknown> = new Set([
  Object.prototype,
  Array.prototype,
  Map.prototype,
  Set.prototype,
  Fraction.prototype,
  null,
]);

function isPlain(value: unknown, seen: Set<unknown>): boolean {
  if (typeof value === 'function' || typeof value === 'symbol') return false;
  if (typeof value !== 'object' || value === null || seen.has(value)) return true;
  seen.add(value);
  if (!plainPrototypes.has(Object.getPrototypeOf(value))) return false;
  for (const inner of insides(value)) if (!isPlain(inner, seen)) return false;
  return true;
}

/** Exact numbers come back as their parts; they are made numbers again in place, and marks what they stand for. */
function revive(value: unknown, kind: Kind | null, seen: Set<unknown>): void {
  if (typeof value !== 'object' || value === null || seen.has(value)) return;
  seen.add(value);
  if ('s' in value && 'n' in value && 'd' in value && typeof value.d === 'bigint') {
    Object.setPrototypeOf(value, Fraction.prototype);
    return;
  }
  for (const key of ['known', 'kind'] as const) {
    const mark = (value as Partial<Record<typeof key, Partial<KindMark> | null>>)[key];
    if (mark?.ofKind === undefined) continue;
    const { ofKind, name = '' } = mark;
    const thing = ofKind === 'kind' ? kind : kind?.[ofKind].get(name);
    Object.assign(value, { [key]: thing ?? null });
    seen.add(thing);
  }
  for (const inner of insides(value)) revive(inner, kind, seen);
}

function* insides(value: object): Generator<unknown> {
  if (value instanceof Map) for (const [key, inner] of value) yield* [key, inner];
  else if (value instanceof Set) yield* value;
  else yield* Object.values(value);
}
