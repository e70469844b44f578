import type { Span } from '../text/index.ts';
import type { ReadProblem } from './model.ts';

/** Where the front matter of a sheet lies. */
export interface FrontMatterPlace {
  /** Between the fences, the last line end left out; null where there is no front matter. */
  readonly content: Span | null;
  /** Where the Markdown below starts. */
  readonly bodyStart: number;
  readonly problem: ReadProblem | null;
}

/**
 * Finds the front matter by the rule of remark-frontmatter: the first line is `---`, blanks after it
 * allowed, and so is the line that closes it. `start` is 1 after a byte order mark, else 0.
 */
export function findFrontMatter(text: string, start: number): FrontMatterPlace {
  const contentStart = fenceEnd(text, start);
  if (contentStart === null) return { content: null, bodyStart: start, problem: misplaced(text) };
  let line = contentStart;
  while (line < text.length) {
    const after = fenceEnd(text, line);
    if (after !== null) {
      return {
        content: { start: contentStart, end: beforeLineEnd(text, line, contentStart) },
        bodyStart: after,
        problem: null,
      };
    }
    line = nextLine(text, line);
  }
  return {
    content: null,
    bodyStart: start,
    problem: {
      kind: 'front-matter',
      span: { start, end: start + 3 },
      message: 'the front matter opens here and is never closed',
      fix: 'put a line `---` below its last line',
    },
  };
}

/** The offset behind a fence line that starts at `start`, its line end included; null if none does. */
function fenceEnd(text: string, start: number): number | null {
  if (!text.startsWith('---', start)) return null;
  let end = start + 3;
  while (text.charCodeAt(end) === 32 || text.charCodeAt(end) === 9) end += 1;
  if (end === text.length) return end;
  const code = text.charCodeAt(end);
  if (code === 10) return end + 1;
  if (code === 13) return text.charCodeAt(end + 1) === 10 ? end + 2 : end + 1;
  return null;
}

function nextLine(text: string, start: number): number {
  for (let i = start; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    if (code === 10) return i + 1;
    if (code === 13) return text.charCodeAt(i + 1) === 10 ? i + 2 : i + 1;
  }
  return text.length;
}

function beforeLineEnd(text: string, line: number, least: number): number {
  let end = line;
  if (end > least && text.charCodeAt(end - 1) === 10) end -= 1;
  if (end > least && text.charCodeAt(end - 1) === 13) end -= 1;
  return end;
}

/** A `---` with blanks before it, where the front matter was surely meant to start. */
function misplaced(text: string): ReadProblem | null {
  const match = /^\uFEFF?\s+(---)[ \t]*[\r\n]+[\w-]+:/.exec(text);
  if (!match) return null;
  const start = text.indexOf('---');
  return {
    kind: 'front-matter',
    span: { start, end: start + 3 },
    message: 'the front matter does not start at the very top of the file',
    fix: 'take out the blanks and empty lines above and before `---`',
  };
}

/**
 * Where a second sheet starts in the work of a first: the fence before a `gaugeleaf: 1` that begins a line,
 * or that line. Null where there is none, as in every file that was not put together from two.
 */
export function secondSheetAt(text: string, bodyStart: number): Span | null {
  const format = /^gaugeleaf[ \t]*:[ \t]*\d+[ \t]*\r?$/gm;
  format.lastIndex = bodyStart;
  const match = format.exec(text);
  if (match === null) return null;
  const key = { start: match.index, end: match.index + 'gaugeleaf'.length };
  const above = text.slice(bodyStart, key.start);
  // A sheet shown as an example stands in code.
  if ((above.match(/^(?:```|~~~)/gm)?.length ?? 0) % 2 === 1) return null;
  const fence = [...above.slice(-2000).matchAll(/^---[ \t]*\r?$/gm)].at(-1);
  if (fence === undefined) return key;
  const start = key.start - Math.min(above.length, 2000) + fence.index;
  return { start, end: start + 3 };
}
