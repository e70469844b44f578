import { readYaml, type Span } from '../text/index.ts';
import type { Comparison, Settled } from './model.ts';

/** A replacement of part of a reading's file. */
export interface FileEdit {
  readonly span: Span;
  readonly text: string;
}

const readHead =
  '# Made by gaugeleaf reread: what was compared, by digests of the words on either side.\n';

/**
 * What a reading's file has to become so that it keeps what was compared: its `read:` block anew, and its
 * `settled:` block where something was settled. Nothing else of the file is touched.
 */
export function keepEdits(
  text: string,
  { compared }: Comparison,
  settled: readonly Settled[],
): readonly FileEdit[] {
  const read = compared
    .filter(({ verdict }) => verdict !== 'unread')
    .map(({ asked, verdict, sheet, answer }) =>
      flow({ page: asked.page, setting: asked.key, verdict, sheet, answer }),
    );
  const found = [
    ...block(text, 'read', read, readHead),
    ...(settled.length === 0 ? [] : block(text, 'settled', settled.map(settledLine), '')),
  ];
  // What is put behind the end is one edit: two at one place have no order.
  const added = found.filter(({ span }) => span.start === text.length);
  const [first] = added;
  if (first === undefined) return found;
  const lead = text === '' || text.endsWith('\n') ? '' : '\n';
  const words = lead + added.map((edit) => edit.text).join('');
  return [...found.filter((edit) => !added.includes(edit)), { ...first, text: words }];
}

function settledLine(settled: Settled): string {
  const { page, setting, first, second, by, why, sheet, answer } = settled;
  return flow({ page, setting, for: settled.for, first, second, by, why, sheet, answer });
}

function block(text: string, key: string, lines: readonly string[], head: string): FileEdit[] {
  const body = `${key}:${lines.length === 0 ? ' []' : ''}\n${lines.map((line) => `  - ${line}\n`).join('')}`;
  const base = text.startsWith('\ufeff') ? 1 : 0;
  const { root } = readYaml(text.slice(base), base);
  const entry = root?.kind === 'map' ? root.entries.get(key) : undefined;
  if (entry) {
    const end = text.indexOf('\n', Math.max(entry.value.span.end, entry.key.span.end) - 1);
    const span = { start: entry.key.span.start, end: end === -1 ? text.length : end + 1 };
    return text.slice(span.start, span.end) === body ? [] : [{ span, text: body }];
  }
  return [{ span: { start: text.length, end: text.length }, text: head + body }];
}

/** One entry on one line; all words in quotes that YAML and JSON read alike. */
function flow(entry: Readonly<Record<string, string>>): string {
  const words = Object.entries(entry).map(([key, text]) => `${key}: ${quotedWords(text)}`);
  return `{ ${words.join(', ')} }`;
}

function quotedWords(text: string): string {
  return /^[a-z][a-z-]*$/.test(text) ? text : JSON.stringify(text);
}
