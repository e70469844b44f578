import { fields, number, type Shape, text } from './shape.ts';

/** What the names in a part of a template stand for. */
export interface Scope {
  /** The values that `this` and `../` stand for, the innermost last. */
  readonly around: readonly Shape[];
  readonly root: Shape;
  /** Names given by `as |name|`. */
  readonly named: ReadonlyMap<string, Shape>;
  /** What `@` may be followed by besides `root`: inside `{{#each}}`, its counters. */
  readonly counters: ReadonlySet<string>;
}

/** The whole of a model, as a template begins with it. */
export function rootScope(root: Shape): Scope {
  return { around: [root], root, named: new Map(), counters: new Set() };
}

/** Inside `{{#with}}` or `{{#each}}`. */
export function inside(
  scope: Scope,
  shape: Shape,
  names: readonly string[] | undefined,
  isEach: boolean,
): Scope {
  const named = new Map(scope.named);
  const [first, second] = names ?? [];
  if (first !== undefined) named.set(first, shape);
  if (second !== undefined) named.set(second, isEach ? number('The place in the list.') : shape);
  const counters = isEach ? new Set(eachCounters) : scope.counters;
  return { ...scope, around: [...scope.around, shape], named, counters };
}

/** In a partial: it sees the value it is given, what it is handed by name, and no `../` beyond. */
export function partialScope(
  scope: Scope,
  given: Shape,
  handed: ReadonlyMap<string, Shape>,
): Scope {
  const own = given.is === 'fields' ? given.fields : {};
  const shape =
    handed.size === 0 ? given : fields(given.meaning, { ...own, ...Object.fromEntries(handed) });
  return { ...scope, around: [shape], named: new Map() };
}

/** What `{{#each}}` counts. */
const eachCounters = ['index', 'key', 'first', 'last'] as const;

/** The names that a value has; for a list its length and, in a message, nothing else. */
export function namesIn(shape: Shape): readonly string[] {
  if (shape.is === 'fields') return Object.keys(shape.fields);
  return shape.is === 'list' ? ['length'] : [];
}

/** What a name in a value stands for; null where it has none of that name. */
export function step(shape: Shape, name: string): Shape | null {
  if (shape.is === 'fields') {
    return Object.hasOwn(shape.fields, name) ? (shape.fields[name] ?? null) : null;
  }
  if (shape.is !== 'list') return null;
  if (name === 'length') return number('How many there are.');
  return /^\d+$/.test(name) ? shape.of : null;
}

/** What `{{#each}}` goes over: the items of a list, or the values by name. Null for what has none. */
export function itemOf(shape: Shape): Shape | null {
  if (shape.is === 'list') return shape.of;
  return shape.is === 'fields' ? (Object.values(shape.fields)[0] ?? null) : null;
}

/** A text of which no more is known. */
export const someText: Shape = text('A text.');
