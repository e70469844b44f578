import type { Nodes } from 'mdast';
import type { Kind, KindHazard } from '../kinds/model.ts';
import type { Placed, Span } from '../text/index.ts';
import type { Named } from './model.ts';

/**
 * A heading's words and the `{#id}` at its end, which no plugin in use reads. `inner` is the
 * heading without its `##`.
 */
export function readHeading(
  node: Nodes,
  text: string,
  inner: Span,
): { readonly heading: Placed<string>; readonly id: Placed<string> | null } {
  const source = text.slice(inner.start, inner.end);
  const open = source.endsWith('}') ? source.lastIndexOf('{#') : -1;
  const name = open < 0 ? '' : source.slice(open + 2, -1);
  const placed = (value: string, start: number, end: number): Placed<string> => ({
    value,
    span: { start, end },
    source: text.slice(start, end),
  });
  if (name === '' || /[\s{}]/.test(name)) {
    return { heading: placed(words(node).trim(), inner.start, inner.end), id: null };
  }
  const kept = source.slice(0, open).trimEnd();
  const all = words(node);
  return {
    heading: placed(
      all.slice(0, all.lastIndexOf('{#')).trim(),
      inner.start,
      inner.start + kept.length,
    ),
    id: placed(name, inner.start + open + 2, inner.end - 1),
  };
}

/** The hazards that a message names, parted by commas or blanks; `start` is where its `:::` stands. */
export function readHazards(
  attributes: Readonly<Record<string, string | null | undefined>> | null | undefined,
  text: string,
  start: number,
  kind: Kind | null,
): readonly Named<KindHazard>[] {
  const key = attributes?.hazards !== undefined ? 'hazards' : 'hazard';
  const value = attributes?.[key];
  if (!value) return [];
  const lineEnd = /[\r\n]|$/g;
  lineEnd.lastIndex = start;
  const end = lineEnd.exec(text)?.index ?? text.length;
  let from = Math.max(text.indexOf(key, text.indexOf('{', start)), start);
  from = Math.max(text.indexOf('=', from), start);
  const hazards: Named<KindHazard>[] = [];
  for (const name of value.split(/[\s,]+/)) {
    if (name === '') continue;
    const at = text.indexOf(name, from);
    // A name written with entities stands nowhere as it is: the whole line is then its place.
    const span = at < 0 || at >= end ? { start, end } : { start: at, end: at + name.length };
    if (at >= 0 && at < end) from = span.end;
    const known = kind?.hazardNamed(name) ?? null;
    const source = text.slice(span.start, span.end);
    hazards.push({ value: name, span, source, known, id: known?.name ?? name });
  }
  return hazards;
}

/** A heading's words: of `:value[float-level]` the name, of a picture its text. */
function words(node: Nodes): string {
  if ('value' in node) return node.value;
  if ('children' in node) {
    let text = '';
    for (const child of node.children) text += words(child);
    return text === '' && node.type === 'textDirective' ? `:${node.name}` : text;
  }
  return 'alt' in node ? (node.alt ?? '') : '';
}
