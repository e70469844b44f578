import type { Edit } from '../checks/index.ts';
import type { PlacedNode } from '../text/index.ts';

/** Where the line of an offset starts. */
export function lineStart(text: string, at: number): number {
  return text.lastIndexOf('\n', Math.max(0, at - 1)) + 1;
}

/** Where the line of an offset ends, before its line end. */
export function lineEnd(text: string, at: number): number {
  const end = text.indexOf('\n', Math.max(0, at));
  const cut = end < 0 ? text.length : end;
  return text.charAt(cut - 1) === '\r' ? cut - 1 : cut;
}

/** Whether a mapping or list stands in brackets. */
export function opens(text: string, node: PlacedNode): boolean {
  return /[{[]/.test(text.charAt(node.span.start));
}

/** The end of the last character that is written of a node, its closing quote or bracket with it. */
export function endOf(text: string, node: PlacedNode): number {
  if (node.kind === 'scalar') return node.span.end + (node.quoted ? 1 : 0);
  if (node.kind === 'null' || opens(text, node)) return node.span.end;
  const last = node.kind === 'map' ? [...node.entries.values()].at(-1) : null;
  if (last != null) {
    const value = endOf(text, last.value);
    const colon = text.indexOf(':', last.key.span.end);
    return Math.max(value, colon < 0 ? last.key.span.end : colon + 1);
  }
  const item = node.kind === 'list' ? node.items.at(-1) : undefined;
  return item === undefined ? node.span.end : endOf(text, item);
}

/** Takes an entry out of a mapping: its lines, or between brackets what is written of it and one comma. */
export function removeEntry(
  text: string,
  holder: PlacedNode & { kind: 'map' },
  name: string,
): readonly Edit[] | null {
  const entries = [...holder.entries.values()];
  const at = entries.findIndex(({ key }) => key.text === name);
  const entry = entries[at];
  if (entry === undefined) return [];
  const start = keyStart(text, entry.key.span.start);
  const end = Math.max(endOf(text, entry.value), endOfKey(text, entry.key.span.end));
  if (opens(text, holder)) return betweenCommas(text, start, end);
  if (text.slice(lineStart(text, start), start).trim() !== '') return null;
  return wholeLines(text, start, end);
}

/** Takes an item out of a list. */
export function removeItem(
  text: string,
  holder: PlacedNode & { kind: 'list' },
  index: number,
): readonly Edit[] | null {
  const item = holder.items[index];
  if (item === undefined) return [];
  const quoted = item.kind === 'scalar' && item.quoted;
  const start = item.span.start - (quoted ? 1 : 0);
  const end = endOf(text, item);
  if (opens(text, holder)) return betweenCommas(text, start, end);
  const before = text.slice(lineStart(text, start), start);
  if (!/^\s*-\s+$/.test(before)) return null;
  return wholeLines(text, start, end);
}

function endOfKey(text: string, end: number): number {
  const colon = text.indexOf(':', end);
  return colon < 0 ? end : colon + 1;
}

/** A key in quotes begins before its text. */
function keyStart(text: string, start: number): number {
  return /["']/.test(text.charAt(start - 1)) ? start - 1 : start;
}

function wholeLines(text: string, start: number, end: number): readonly Edit[] {
  const last = text.indexOf('\n', end);
  return [
    { span: { start: lineStart(text, start), end: last < 0 ? text.length : last + 1 }, text: '' },
  ];
}

function betweenCommas(text: string, start: number, end: number): readonly Edit[] {
  const after = /^[ \t]*,[ \t]*/.exec(text.slice(end, end + 200))?.[0].length ?? 0;
  if (after > 0) return [{ span: { start, end: end + after }, text: '' }];
  const before = /,[ \t]*$/.exec(text.slice(Math.max(0, start - 200), start))?.[0].length ?? 0;
  return [{ span: { start: start - before, end }, text: '' }];
}
