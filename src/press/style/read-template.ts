import type HandlebarsType from 'handlebars';
import { LineIndex, type Span } from '../../text/index.ts';

/** A template in its parts. */
export interface ReadTemplate {
  readonly program: hbs.AST.Program;
  /** Where a part of it stands in its text. */
  readonly spanOf: (node: hbs.AST.Node) => Span;
}

/** Why a template can't be taken apart, and where. */
export interface UnreadTemplate {
  readonly span: Span;
  readonly message: string;
  readonly fix: string | null;
}

/** Takes a template apart. Never throws: a fault of its braces comes back in plain words. */
export function readTemplate(
  text: string,
  handlebars: typeof HandlebarsType,
): ReadTemplate | UnreadTemplate {
  const lines = new LineIndex(text);
  const offset = ({ line, column }: hbs.AST.Position) => lines.lineStart(line) + column;
  try {
    const program = handlebars.parse(text);
    return {
      program,
      spanOf: ({ loc }) => ({ start: offset(loc.start), end: offset(loc.end) }),
    };
  } catch (error) {
    return unread(error, text, lines);
  }
}

function unread(error: unknown, text: string, lines: LineIndex): UnreadTemplate {
  const said = error instanceof Error ? error.message : String(error);
  const { lineNumber, column } = error as { lineNumber?: unknown; column?: unknown };
  const pair = /^(\S+) doesn't match (\S+) -/.exec(said);
  if (typeof lineNumber === 'number' && typeof column === 'number') {
    const start = lines.lineStart(lineNumber) + column;
    const [, opened = '', closed = ''] = pair ?? [];
    if (pair !== null) {
      return {
        span: { start, end: start + opened.length },
        message: `this {{#${opened}}} is closed by {{/${closed}}}`,
        fix: `write {{/${opened}}} where it ends, or close what stands open inside it first`,
      };
    }
    return { span: { start, end: start + 1 }, message: firstLine(said), fix: null };
  }
  const line = Number(/^Parse error on line (\d+)/.exec(said)?.[1] ?? 1);
  const got = /got '([A-Z_]+)'/.exec(said)?.[1] ?? '';
  const start = lines.lineStart(line);
  const end = Math.max(start, /[\r\n]|$/.exec(text.slice(start))?.index ?? 0) + start;
  const here = braces(text, start, line === lines.count ? text.length : end);
  if (got === 'EOF') {
    const open = lastOpen(text);
    return {
      span: open ?? here,
      message: 'the template ends before everything that it opens is closed',
      fix: 'close it with {{/...}} where it ends',
    };
  }
  if (got === 'OPEN_ENDBLOCK' || got === 'INVERSE' || got === 'OPEN_INVERSE_CHAIN') {
    return {
      span: here,
      message: 'nothing stands open here that this could end or turn',
      fix: 'take it out, or open it with {{#if ...}}, {{#unless ...}} or {{#each ...}} before',
    };
  }
  return {
    span: here,
    message: 'the braces on this line can’t be read',
    fix: 'two braces open and two close, {{title}}, or three and three, {{{html}}}',
  };
}

/** The last braces of a line that are not its first word; the line where it has none. */
function braces(text: string, start: number, end: number): Span {
  const line = text.slice(start, end);
  const at = line.indexOf('{{');
  return at < 0 ? { start, end: Math.max(start, end) } : { start: start + at, end };
}

/** The block that is opened last and not closed. */
function lastOpen(text: string): Span | null {
  const open: Span[] = [];
  for (const match of text.matchAll(/\{\{~?(?:[#^](?!\})|\/)[^}]*\}\}/g)) {
    if (match[0].startsWith('{{/') || match[0].startsWith('{{~/')) open.pop();
    else open.push({ start: match.index, end: match.index + match[0].length });
  }
  return open.at(-1) ?? null;
}

function firstLine(said: string): string {
  return said.split('\n')[0] ?? said;
}
