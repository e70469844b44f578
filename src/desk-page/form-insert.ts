import type { Edit } from '../checks/index.ts';
import { nodeAt, type PlacedMap, type PlacedNode } from '../text/index.ts';
import { endOf, lineEnd, lineStart, opens } from './form-lines.ts';
import type { FormPath } from './form-model.ts';
import { scalarFor } from './form-scalar.ts';

/** The order that keys are usually written in; what is not listed goes before the first of `last`. */
const usual: Readonly<Record<string, readonly string[]>> = {
  '': [
    'gaugeleaf',
    'sheet',
    'title',
    'based-on',
    'unit',
    'fits',
    'revision',
    'date',
    'status',
    'sources',
    'settings',
  ],
  unit: ['kind', 'maker', 'model', 'part-numbers', 'features'],
  settings: ['value', 'also', 'gauge', 'at'],
  sources: ['title', 'kind', 'year', 'units'],
};
const last: readonly string[] = ['from', 'but', 'follows', 'ruling', 'note'];

/**
 * Puts an entry in that is not there yet, with the keys above it that are not there either. `there` leads to
 * what is there, `rest` from it to the entry.
 */
export function insertEntry(
  text: string,
  content: { readonly start: number; readonly end: number },
  front: PlacedMap,
  there: FormPath,
  rest: FormPath,
  value: string | readonly string[],
  number: boolean,
): readonly Edit[] | null {
  const holder = nodeAt(front, there);
  if (holder === null || holder.kind === 'scalar') return null;
  if (holder.kind === 'list') {
    const [, key] = rest;
    if (typeof value !== 'string' || rest.length > 2) return null;
    if (key === undefined) return append(text, holder, scalarFor, value);
    return append(text, holder, (each) => `{ ${key}: ${scalarFor(each, 'flow')} }`, value);
  }
  const [name, ...below] = rest;
  if (typeof name !== 'string' || below.some((step) => typeof step !== 'string' && step !== 0))
    return null;
  if (holder.kind === 'null') {
    const indent = indentOf(text, keySpanOf(front, there)?.start ?? content.start);
    const at = keySpanOf(front, there);
    if (at === null || holder.span.end > holder.span.start) return null;
    const lines = linesFor([name, ...below], value, number, indent + 2);
    const end = lineEnd(text, at.end);
    return [{ span: { start: end, end }, text: `\n${lines.join('\n')}` }];
  }
  if (opens(text, holder)) {
    const entry = [`${name}: `, flow(below, value, number)].join('');
    const final = [...holder.entries.values()].at(-1);
    if (final === undefined) {
      const inside = holder.span.start + 1;
      return [{ span: { start: inside, end: inside }, text: ` ${entry} ` }];
    }
    const after = beforeThat(holder, there, name) ?? final;
    const end = Math.max(endOf(text, after.value), after.key.span.end);
    if (after.value.kind === 'null') return null;
    return [{ span: { start: end, end }, text: `, ${entry}` }];
  }
  const first = [...holder.entries.values()][0];
  if (first === undefined) return null;
  const indent = indentOf(text, first.key.span.start);
  if (text.slice(lineStart(text, first.key.span.start), first.key.span.start).trim() !== '')
    return null;
  const lines = linesFor([name, ...below], value, number, indent);
  const after = beforeThat(holder, there, name) ?? [...holder.entries.values()].at(-1) ?? first;
  const end = lineEnd(text, Math.max(endOf(text, after.value), after.key.span.end));
  return [{ span: { start: end, end }, text: `\n${lines.join('\n')}` }];
}

function keySpanOf(front: PlacedMap, path: FormPath) {
  const holder = nodeAt(front, path.slice(0, -1));
  return holder?.kind === 'map'
    ? (holder.entries.get(String(path.at(-1)))?.key.span ?? null)
    : null;
}

function indentOf(text: string, at: number): number {
  return at - lineStart(text, at);
}

/** The entry that a new one goes behind, by the order that keys are usually written in. */
function beforeThat(holder: PlacedMap, there: FormPath, name: string) {
  const entries = [...holder.entries.values()];
  const order = usual[there.length === 0 ? '' : String(there[0])] ?? [];
  if (there.length === 1 && (there[0] === 'settings' || there[0] === 'sources'))
    return entries.at(-1);
  const rank = (key: string): number => {
    if (last.includes(key) && there[0] === 'settings') return 1000 + last.indexOf(key);
    const place = order.indexOf(key);
    return place < 0 ? 500 : place;
  };
  const own = rank(name);
  return entries.filter(({ key }) => rank(key.text) <= own).at(-1);
}

/** An item behind the last of a list. */
function append(
  text: string,
  list: PlacedNode & { kind: 'list' },
  item: (value: string, place: 'block' | 'flow') => string,
  value: string,
): readonly Edit[] | null {
  const final = list.items.at(-1);
  if (opens(text, list)) {
    const end = final === undefined ? list.span.start + 1 : endOf(text, final);
    const written = item(value, 'flow');
    return [{ span: { start: end, end }, text: final === undefined ? written : `, ${written}` }];
  }
  if (final === undefined) return null;
  const start = lineStart(text, final.span.start);
  const head = /^(\s*)-\s+/.exec(text.slice(start, final.span.end))?.[0];
  if (head === undefined) return null;
  const end = lineEnd(text, endOf(text, final));
  return [{ span: { start: end, end }, text: `\n${head}${item(value, 'block')}` }];
}

function linesFor(
  path: FormPath,
  value: string | readonly string[],
  number: boolean,
  indent: number,
): string[] {
  const [name, ...below] = path;
  const pad = ' '.repeat(indent);
  const [, key] = below;
  if (below[0] === 0 && key !== undefined) {
    // An item of a list that is made of keys itself: another paper, and what it says.
    return [`${pad}${name}:`, `${pad}  - { ${key}: ${written(value, 'flow', number)} }`];
  }
  if (below.length === 0 || below[0] === 0) {
    return [
      `${pad}${name}: ${written(below[0] === 0 && typeof value === 'string' ? [value] : value, 'block', number)}`,
    ];
  }
  return [`${pad}${name}:`, ...linesFor(below, value, number, indent + 2)];
}

function flow(below: FormPath, value: string | readonly string[], number: boolean): string {
  const [name, ...rest] = below;
  if (name === undefined) return written(value, 'flow', number);
  const [key] = rest;
  if (name === 0 && key !== undefined) return `[{ ${key}: ${written(value, 'flow', number)} }]`;
  if (name === 0) return written(typeof value === 'string' ? [value] : value, 'flow', number);
  return `{ ${name}: ${flow(rest, value, number)} }`;
}

function written(
  value: string | readonly string[],
  place: 'block' | 'flow',
  number: boolean,
): string {
  if (typeof value === 'string') return scalarFor(value, place, { number });
  return `[${value.map((each) => scalarFor(each, 'flow')).join(', ')}]`;
}
