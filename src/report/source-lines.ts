import { entriesOf, type ReadSheetOptions, readSheet, under } from '../sheet/index.ts';
import { readYaml, type Span } from '../text/index.ts';

/**
 * A sheet's text without its description of a source; what is then an empty list is written `{}`.
 * Null where the description does not have its lines to itself: a comment, another entry, an anchor.
 */
export function withoutSource(
  text: string,
  name: string,
  options: ReadSheetOptions,
): string | null {
  const found = wholeLines(text, name, options);
  if (found === null) return null;
  const { lines, count } = found;
  const rest = text.slice(lines.end);
  if (count > 1) return text.slice(0, lines.start) + rest;
  const head = /^([ \t]*sources:)[ \t]*(\r?\n)$/m.exec(lastLine(text, lines.start));
  if (head === null) return null;
  const from = lines.start - head[0].length;
  return `${text.slice(0, from)}${head[1]} {}${head[2]}${rest}`;
}

/** The description of a source as a sheet writes it, its lines set in by two; null where there is none. */
export function sourceBlock(text: string, name: string, options: ReadSheetOptions): string | null {
  const found = wholeLines(text, name, options);
  if (found === null) return null;
  const lines = text
    .slice(found.lines.start, found.lines.end)
    .replace(/\r?\n$/, '')
    .split(/\r?\n/);
  const inset = /^ */.exec(lines[0] ?? '')?.[0].length ?? 0;
  return lines.map((line) => `  ${line.slice(inset)}`.trimEnd()).join('\n');
}

/**
 * The text of a `sources.yaml` with one more description at the end of its list. Null where the file
 * is no such list, or not written a source to a line.
 */
export function withSource(text: string | null, block: string): string | null {
  if (text === null) return `gaugeleaf-sources: 1\nsources:\n${block}\n`;
  const lineEnd = /\r\n|\n/.exec(text)?.[0] ?? '\n';
  const yaml = readYaml(text);
  const list = under(yaml.root, 'sources');
  if (yaml.problems.length > 0 || list?.kind !== 'map' || list.entries.size === 0) return null;
  const [first] = entriesOf(list).values();
  if (first === undefined || text.slice(0, first.key.span.start).split('\n').at(-1) !== '  ') {
    return null;
  }
  const ends = [...entriesOf(list).values()].map(({ value }) => value.span.end);
  const after = text.indexOf('\n', Math.max(...ends));
  const [head, rest] =
    after === -1 ? [text + lineEnd, ''] : [text.slice(0, after + 1), text.slice(after + 1)];
  return head + block.replaceAll('\n', lineEnd) + lineEnd + rest;
}

/** The lines of a sheet that hold a description and nothing else, and how many sources it describes. */
function wholeLines(
  text: string,
  name: string,
  options: ReadSheetOptions,
): { readonly lines: Span; readonly count: number } | null {
  // Of a variant only what it says itself: its base is no part of this file.
  const sheet = readSheet(text, '', { ...options, family: null, sharedSources: null });
  const source = sheet.sources.get(name);
  if (source === undefined) return null;
  const { span } = source;
  const start = text.lastIndexOf('\n', span.start - 1) + 1;
  const next = text.indexOf('\n', span.end);
  const end = next === -1 ? text.length : next + 1;
  const words = text.slice(span.start, span.end);
  const isAlone =
    /^ +$/.test(text.slice(start, span.start)) && /^[ \t\r\n]*$/.test(text.slice(span.end, end));
  if (!isAlone || /(?:^|\s)#|[\s:,[{](?:[&*!]|<<)/.test(words)) return null;
  return { lines: { start, end }, count: sheet.sources.size };
}

/** The line that ends just before `at`, its line end included. */
function lastLine(text: string, at: number): string {
  return text.slice(text.lastIndexOf('\n', at - 2) + 1, at);
}
