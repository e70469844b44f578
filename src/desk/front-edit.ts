import type { Edit } from '../checks/index.ts';
import type { PlacedEntry, PlacedList, PlacedMap, PlacedNode, Span } from '../text/index.ts';
import { lineEnd, lineStart } from './lines.ts';

/** An entry of keys, or an item of a list, that holds a place. */
export type Holder =
  | {
      readonly kind: 'entry';
      readonly key: string;
      readonly entry: PlacedEntry;
      readonly of: PlacedMap;
    }
  | { readonly kind: 'item'; readonly node: PlacedNode; readonly of: PlacedList };

/** What holds a place in the front matter, from the outermost inward; none for a place outside. */
export function holders(front: PlacedMap, span: Span): readonly Holder[] {
  const found: Holder[] = [];
  let node: PlacedNode = front;
  for (;;) {
    const next = holderIn(node, span);
    if (next === null) return found;
    found.push(next);
    node = next.kind === 'entry' ? next.entry.value : next.node;
  }
}

function holderIn(node: PlacedNode, span: Span): Holder | null {
  if (node.kind === 'map') {
    for (const [key, entry] of node.entries) {
      const end = Math.max(entry.key.span.end, entry.value.span.end);
      if (span.start >= entry.key.span.start && span.end <= end) {
        return { kind: 'entry', key, entry, of: node };
      }
    }
  } else if (node.kind === 'list') {
    for (const item of node.items) {
      if (span.start >= item.span.start && span.end <= item.span.end) {
        return { kind: 'item', node: item, of: node };
      }
    }
  }
  return null;
}

/** Whether a node stands in brackets. */
export function isFlow(text: string, node: PlacedNode): boolean {
  return /[[{]/.test(text[node.span.start] ?? '') && node.kind !== 'scalar';
}

/** Takes an entry or an item out, and what held nothing but it; null where that cannot be told. */
export function takeOut(text: string, chain: readonly Holder[]): Edit | null {
  const last = chain.at(-1);
  if (last === undefined) return null;
  const count = last.kind === 'entry' ? last.of.entries.size : last.of.items.length;
  if (count === 1 && chain.length > 1) return takeOut(text, chain.slice(0, -1));
  const span = last.kind === 'entry' ? entrySpan(last.entry) : last.node.span;
  if (isFlow(text, last.of)) return { span: withComma(text, quoted(text, span)), text: '' };
  const start = lineStart(text, span.start);
  // Behind `- ` of a list the first key shares its line with the dash.
  if (last.kind === 'entry' && /^\s*(?:- +)+$/.test(text.slice(start, span.start))) {
    const next = [...last.of.entries.values()][1];
    return next === undefined
      ? null
      : { span: { start: span.start, end: next.key.span.start }, text: '' };
  }
  return { span: { start, end: lineEnd(text, contentEnd(text, span)) }, text: '' };
}

/** Where the last sign of a span stands that is no blank: keys and values may end with the line ends below them. */
function contentEnd(text: string, { start, end }: Span): number {
  return start + text.slice(start, end).trimEnd().length;
}

/** An entry with its key, and with quotes or brackets that its value ends in. */
export function entrySpan({ key, value }: PlacedEntry): Span {
  return { start: key.span.start, end: Math.max(key.span.end, value.span.end) };
}

/** A span with the quotes around it, which a scalar's place leaves out. */
export function quoted(text: string, { start, end }: Span): Span {
  const sign = text[end] ?? '';
  const isOpen = sign === '"' || sign === "'";
  if (!isOpen) return { start, end };
  return { start: text[start - 1] === sign ? start - 1 : start, end: end + 1 };
}

/** An item in brackets with the comma and blanks that go with it. */
function withComma(text: string, { start, end }: Span): Span {
  const behind = /^\s*,[ \t]*/.exec(text.slice(end))?.[0];
  if (behind !== undefined) return { start, end: end + behind.length };
  const before = /,?\s*$/.exec(text.slice(0, start))?.[0] ?? '';
  return before.startsWith(',') ? { start: start - before.length, end } : { start, end };
}

/** Adds a key to keys; below their last, or behind it in brackets. */
export function addKey(text: string, map: PlacedMap, key: string, value: string): Edit | null {
  const last = [...map.entries.values()].at(-1);
  if (isFlow(text, map)) {
    const close = text[map.span.end - 1] === '}' ? map.span.end - 1 : null;
    if (close === null) return null;
    const end = close - (/\s*$/.exec(text.slice(0, close))?.[0].length ?? 0);
    const comma = last === undefined ? ' ' : text[end - 1] === ',' ? ' ' : ', ';
    return { span: { start: end, end }, text: `${comma}${key}: ${inFlow(value)}` };
  }
  if (last === undefined) return null;
  const end = lineEnd(text, contentEnd(text, entrySpan(last)));
  const first = [...map.entries.values()][0];
  const column = (first ?? last).key.span.start - lineStart(text, (first ?? last).key.span.start);
  return below(text, end, `${' '.repeat(column)}${key}: ${value}`);
}

/** A line put in at the start of a line, or behind a text that ends without one. */
export function below(text: string, at: number, line: string): Edit {
  const needsBreak = at > 0 && text[at - 1] !== '\n' && text[at - 1] !== '\r';
  return { span: { start: at, end: at }, text: needsBreak ? `\n${line}` : `${line}\n` };
}

/** A value as it may stand in brackets. */
export function inFlow(value: string): string {
  return /[,[\]{}]/.test(value) && !/^["'{[]/.test(value) ? JSON.stringify(value) : value;
}

/** Adds an item to a list, in brackets or on a line of its own; null for an empty one that stands in no brackets. */
export function addItem(text: string, list: PlacedList, value: string): Edit | null {
  const last = list.items.at(-1);
  if (isFlow(text, list)) {
    const close = list.span.end - 1;
    const end = close - (/\s*$/.exec(text.slice(0, close))?.[0].length ?? 0);
    return { span: { start: end, end }, text: `${last === undefined ? '' : ', '}${inFlow(value)}` };
  }
  if (last === undefined) return null;
  const start = lineStart(text, list.items[0]?.span.start ?? last.span.start);
  const indent = /^[ \t]*/.exec(text.slice(start))?.[0] ?? '';
  return below(text, lineEnd(text, contentEnd(text, last.span)), `${indent}- ${value}`);
}
