import type { Span } from './span.ts';

/** A mapping: keys in the order they are written, the first of a doubled key kept. */
export interface PlacedMap {
  readonly kind: 'map';
  readonly span: Span;
  readonly entries: ReadonlyMap<string, PlacedEntry>;
}

/** One `key: value` of a mapping. */
export interface PlacedEntry {
  readonly key: { readonly text: string; readonly span: Span };
  readonly value: PlacedNode;
}

export interface PlacedList {
  readonly kind: 'list';
  readonly span: Span;
  readonly items: readonly PlacedNode[];
}

/** A scalar with its text as written: `0.150` stays `0.150`, `010` stays `010`. */
export interface PlacedScalar {
  readonly kind: 'scalar';
  /** Quotes of a quoted scalar lie outside of it, so the span's text can be replaced as it is. */
  readonly span: Span;
  /** The text, quotes taken off and escapes resolved; otherwise the file's own characters. */
  readonly text: string;
  /** What YAML 1.2's core schema takes it for. */
  readonly value: string | number | boolean;
  readonly quoted: boolean;
}

/** Nothing was written (the span is then empty), or `null` or `~` was. */
export interface PlacedNull {
  readonly kind: 'null';
  readonly span: Span;
}

export type PlacedNode = PlacedMap | PlacedList | PlacedScalar | PlacedNull;

/** Which part of an entry a place is wanted of. */
export type Part = 'value' | 'key';

/**
 * The span of what a path of keys and indexes leads to, or of its key. Where the path leads nowhere
 * (a key that is missing), the span of the last key on the way that exists, or null for the root.
 */
export function lookup(
  root: PlacedNode | null,
  path: readonly (string | number)[],
  part: Part = 'value',
): Span | null {
  let node = root;
  let key: Span | null = null;
  for (const step of path) {
    if (node?.kind === 'map') {
      const entry = node.entries.get(String(step));
      if (!entry) return key;
      key = entry.key.span;
      node = entry.value;
    } else if (node?.kind === 'list') {
      const item = node.items[Number(step)];
      if (!item) return key;
      key = item.span;
      node = item;
    } else return key;
  }
  if (part === 'key' && key) return key;
  // An empty value has no characters to point at: its key has.
  if (!node || node.span.start === node.span.end) return key ?? node?.span ?? null;
  return node.span;
}

/** What a path of keys and indexes leads to; null where it leads nowhere. */
export function nodeAt(root: PlacedNode, path: readonly (string | number)[]): PlacedNode | null {
  let node: PlacedNode | undefined = root;
  for (const step of path) {
    if (node?.kind === 'map') node = node.entries.get(String(step))?.value;
    else if (node?.kind === 'list') node = node.items[Number(step)];
    else return null;
  }
  return node ?? null;
}

/** The steps of a JSON Pointer (RFC 6901): `/settings/a~1b/0` is `settings`, `a/b`, `0`. */
export function pointerSteps(pointer: string): readonly string[] {
  if (pointer === '') return [];
  return pointer
    .split('/')
    .slice(1)
    .map((step) => (step.includes('~') ? step.replaceAll('~1', '/').replaceAll('~0', '~') : step));
}

/** A node as plain values, for a schema: objects, arrays, strings, numbers, booleans and nulls. */
export function plainValue(node: PlacedNode): unknown {
  switch (node.kind) {
    case 'scalar':
      return node.value;
    case 'null':
      return null;
    case 'list':
      return node.items.map(plainValue);
    case 'map': {
      const plain: Record<string, unknown> = Object.create(null);
      for (const [key, { value }] of node.entries) plain[key] = plainValue(value);
      return plain;
    }
  }
}
