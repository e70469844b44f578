import type { Edit } from '../checks/index.ts';
import { type PlacedMap, type PlacedNode, readYaml } from '../text/index.ts';
import { insertEntry } from './form-insert.ts';
import { endOf, lineEnd, lineStart, opens, removeEntry, removeItem } from './form-lines.ts';
import type { FormEdit, FormPath } from './form-model.ts';
import { oneLine, scalarFor } from './form-scalar.ts';

/**
 * The edits of the text that an entry in the form comes to: of that entry's lines and no others. An empty
 * list where nothing is to be changed; null where the form cannot make it, and the text has to be edited.
 * `front` is the front matter with its places, `content` the stretch between its fences.
 */
export function formEdit(
  text: string,
  front: PlacedMap,
  content: { readonly start: number; readonly end: number },
  edit: FormEdit,
): readonly Edit[] | null {
  const wanted = normal(edit);
  const edits = editsFor(text, front, content, wanted);
  if (edits === null || edits.length === 0) return edits;
  // Whatever was overlooked: an edit that does not read back is none.
  return readsBack(text, content, edits, wanted) ? edits : null;
}

function normal({ path, value, number }: FormEdit): FormEdit {
  const kept =
    value === null
      ? null
      : typeof value === 'string'
        ? oneLine(value) || null
        : value.map(oneLine).filter((each) => each !== '');
  return { path, value: kept, ...(number === true ? { number } : {}) };
}

interface Found {
  readonly node: PlacedNode | null;
  /** The deepest mapping or list on the way that is there, and how many steps lead to it. */
  readonly holder: PlacedNode;
  readonly depth: number;
}

function find(front: PlacedMap, path: FormPath): Found {
  let holder: PlacedNode = front;
  let depth = 0;
  let node: PlacedNode | null = front;
  for (const [index, step] of path.entries()) {
    holder = node;
    depth = index;
    node = childOf(node, step);
    if (node === null) break;
  }
  return { node, holder, depth };
}

function childOf(node: PlacedNode, step: string | number): PlacedNode | null {
  if (node.kind === 'map') return node.entries.get(String(step))?.value ?? null;
  if (node.kind === 'list') return node.items[Number(step)] ?? null;
  return null;
}

function editsFor(
  text: string,
  front: PlacedMap,
  content: { readonly start: number; readonly end: number },
  edit: FormEdit,
): readonly Edit[] | null {
  const { path, value } = edit;
  const { node, holder, depth } = find(front, path);
  const last = path.at(-1);
  if (node === null) {
    if (value === null) return [];
    const rest = path.slice(depth);
    // What stands there as one may become the first of several.
    if (
      holder.kind === 'scalar' &&
      rest.length === 1 &&
      rest[0] === 1 &&
      typeof value === 'string'
    ) {
      return pair(text, holder, value);
    }
    if (holder.kind === 'scalar') return null;
    return insertEntry(
      text,
      content,
      front,
      path.slice(0, depth),
      rest,
      value,
      edit.number === true,
    );
  }
  if (holder.kind !== 'map' && holder.kind !== 'list') return null;
  if (isElsewhere(text, holder, node, last)) return null;
  if (value === null) {
    if (holder.kind === 'list') return removeItem(text, holder, Number(last));
    return removeEntry(text, holder, String(last));
  }
  if (typeof value !== 'string') return replaceList(text, node, holder, value);
  switch (node.kind) {
    case 'scalar':
      return replaceScalar(text, node, holder, value, edit.number === true);
    case 'null':
      return fillNull(text, node, holder, String(last), value, edit.number === true);
    default:
      return null;
  }
}

/** Whether a node is an alias of one that stands before its key, or has an anchor or a tag of its own. */
function isElsewhere(
  text: string,
  holder: PlacedNode,
  node: PlacedNode,
  step: string | number | undefined,
): boolean {
  if (holder.kind !== 'map') {
    return node.span.start < holder.span.start || node.span.end > holder.span.end;
  }
  const key = holder.entries.get(String(step))?.key;
  if (key === undefined || node.span.start < key.span.end) return true;
  return /[&!*]/.test(text.slice(key.span.end, node.span.start).replace(/#.*/g, ''));
}

function replaceScalar(
  text: string,
  node: PlacedNode & { kind: 'scalar' },
  holder: PlacedNode,
  value: string,
  number: boolean,
): readonly Edit[] {
  if (node.text === value) return [];
  const place = opens(text, holder) ? 'flow' : 'block';
  const sign = node.quoted ? text.charAt(node.span.start - 1) : '';
  const isQuoted = sign === '"' || sign === "'";
  // Quotes that the old words needed say nothing of the new ones; those that somebody chose stay.
  const needed = isQuoted && scalarFor(node.text, place) !== node.text;
  const plain = scalarFor(value, place, { number: number || typeof node.value === 'number' });
  const quote = isQuoted && !(needed && plain === value) ? sign : null;
  const written = scalarFor(value, place, {
    number: number || typeof node.value === 'number',
    quote,
  });
  const span = isQuoted ? { start: node.span.start - 1, end: node.span.end + 1 } : node.span;
  return [{ span, text: written }];
}

function fillNull(
  text: string,
  node: PlacedNode,
  holder: PlacedNode,
  key: string,
  value: string,
  number: boolean,
): readonly Edit[] | null {
  const place = opens(text, holder) ? 'flow' : 'block';
  const written = scalarFor(value, place, { number });
  if (node.span.end > node.span.start) return [{ span: node.span, text: written }];
  if (holder.kind !== 'map') return null;
  const entry = holder.entries.get(key);
  if (entry === undefined) return null;
  const colon = text.indexOf(':', entry.key.span.end);
  if (colon < 0 || colon > lineEnd(text, entry.key.span.end)) return null;
  return [{ span: { start: colon + 1, end: colon + 1 }, text: ` ${written}` }];
}

/** A list in place of a list, on one line, what is kept of it as it was written. */
function replaceList(
  text: string,
  node: PlacedNode,
  holder: PlacedNode,
  value: readonly string[],
): readonly Edit[] | null {
  if (node.kind !== 'list') return null;
  const before = node.items.map((item) => (item.kind === 'scalar' ? item.text : null));
  if (before.includes(null)) return null;
  if (before.length === value.length && before.every((each, at) => each === value[at])) return [];
  const written = value.map((each) => {
    const old = node.items[before.indexOf(each)];
    if (old?.kind !== 'scalar') return scalarFor(each, 'flow');
    return old.quoted
      ? scalarFor(each, 'flow', { quote: quoteOf(text, old.span.start) })
      : scalarFor(each, 'flow');
  });
  const list = `[${written.join(', ')}]`;
  if (text.charAt(node.span.start) === '[') return [{ span: node.span, text: list }];
  if (holder.kind !== 'map' || opens(text, holder)) return null;
  // A list of lines: it goes behind its key, and its lines go.
  const start = lineEnd(text, lineStart(text, node.span.start) - 2);
  return [{ span: { start, end: endOf(text, node) }, text: ` ${list}` }];
}

function quoteOf(text: string, start: number): '"' | "'" {
  return text.charAt(start - 1) === '"' ? '"' : "'";
}

function pair(text: string, node: PlacedNode & { kind: 'scalar' }, value: string): readonly Edit[] {
  const start = node.quoted ? node.span.start - 1 : node.span.start;
  const end = node.quoted ? node.span.end + 1 : node.span.end;
  const old = node.quoted ? text.slice(start, end) : scalarFor(node.text, 'flow');
  return [{ span: { start, end }, text: `[${old}, ${scalarFor(value, 'flow')}]` }];
}

function readsBack(
  text: string,
  content: { readonly start: number; readonly end: number },
  edits: readonly Edit[],
  { path, value }: FormEdit,
): boolean {
  let changed = text;
  let grown = 0;
  for (const { span, text: insert } of [...edits].sort((a, b) => b.span.start - a.span.start)) {
    changed = changed.slice(0, span.start) + insert + changed.slice(span.end);
    grown += insert.length - (span.end - span.start);
  }
  const { root, problems } = readYaml(changed.slice(content.start, content.end + grown));
  const before = readYaml(text.slice(content.start, content.end)).problems.length;
  if (root?.kind !== 'map' || problems.length > before) return false;
  const { node } = find(root, path);
  if (value === null) return true;
  if (typeof value === 'string') return node?.kind === 'scalar' && node.text === value;
  return (
    node?.kind === 'list' &&
    node.items.length === value.length &&
    node.items.every((item, at) => item.kind === 'scalar' && item.text === value[at])
  );
}
