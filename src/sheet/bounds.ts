import type { ReadProblem } from './model.ts';

/**
 * Bounds on what is handed to the Markdown parser. They are many times what the longest sheets of
 * the trade hold; within them no text takes the parser more than a few seconds. Measured with it:
 * nesting, lazy paragraphs and runs of brackets and stars cost it the square of their number or more.
 */
export const sheetBounds = {
  /** UTF-16 units of the whole file. */
  size: 128 * 1024,
  lines: 5000,
  /** Quotes and lists within one another, on one line. */
  nesting: 8,
  /** Items of lists, nested ones included. */
  items: 1500,
  /** Columns that a list item may be indented. */
  indent: 48,
  /** Containers that open with `:::`. */
  containers: 100,
  /** Headings underlined with --- or ===. */
  underlined: 100,
  /** Definitions of links and footnotes. */
  definitions: 300,
  /** Brackets, stars and the like between two empty lines. */
  marks: 2000,
  /** The same in the whole work. */
  allMarks: 15_000,
  /** Bars, which part the cells of tables. */
  bars: 12_000,
} as const;

const marks = new Uint8Array(128);
for (const sign of '*_[]!~`<&:@{}\\') marks[sign.charCodeAt(0)] = 1;

/**
 * Looks over a text before the parser does. Null where it is within bounds; otherwise the first
 * place that is not, and the parser must not see the text.
 */
export function beyondBounds(text: string, bodyStart: number): ReadProblem | null {
  const bounds = sheetBounds;
  if (text.length > bounds.size) {
    return beyond(
      bounds.size,
      `the file has ${text.length} characters; at most ${bounds.size} are read`,
      text,
    );
  }
  let line = bodyStart;
  let lines = 1;
  let containers = 0;
  let underlined = 0;
  let definitions = 0;
  let items = 0;
  let count = 0;
  let all = 0;
  let bars = 0;
  while (line < text.length) {
    lines += 1;
    if (lines > bounds.lines)
      return beyond(line, `there are more than ${bounds.lines} lines`, text);
    // What the line opens: quotes and list items, one in another.
    let at = line;
    let depth = 0;
    let column = 0;
    for (;;) {
      const code = text.charCodeAt(at);
      if (code === 32) column += 1;
      else if (code === 9) column += 4;
      else if (code === 62) depth += 1;
      else {
        const width = markerWidth(text, at, code);
        if (width === 0) break;
        depth += 1;
        items += 1;
        if (column > bounds.indent) return beyond(at, 'lists are nested too deep here', text);
        at += width - 1;
      }
      at += 1;
    }
    if (depth > bounds.nesting) {
      return beyond(
        line,
        `more than ${bounds.nesting} quotes and lists stand in one another here`,
        text,
      );
    }
    if (items > bounds.items) {
      return beyond(line, `there are more than ${bounds.items} items of lists`, text);
    }
    const code = text.charCodeAt(at);
    if (code === 58 && text.startsWith(':::', at)) {
      containers += 1;
      if (containers > bounds.containers * 2) {
        return beyond(at, `there are more than ${bounds.containers} containers (:::)`, text);
      }
    } else if (code === 91) {
      definitions += 1;
      if (definitions > bounds.definitions) {
        return beyond(at, `more than ${bounds.definitions} lines start with [`, text);
      }
    } else if (code === 45 || code === 61) {
      underlined += 1;
      if (underlined > bounds.underlined) {
        return beyond(at, `there are more than ${bounds.underlined} lines of --- or ===`, text);
      }
    }
    let blank = true;
    for (at = line; at < text.length; at += 1) {
      const sign = text.charCodeAt(at);
      if (sign === 10) break;
      if (sign === 13) break;
      if (sign !== 32 && sign !== 9) blank = false;
      if (sign === 124) bars += 1;
      else if (sign < 128 && marks[sign] === 1) {
        count += 1;
        all += 1;
      }
    }
    if (count > bounds.marks) {
      return beyond(
        line,
        `more than ${bounds.marks} brackets, stars and other marks stand without an empty line between`,
        text,
      );
    }
    if (all > bounds.allMarks) {
      return beyond(
        line,
        `there are more than ${bounds.allMarks} brackets, stars and other marks`,
        text,
      );
    }
    if (bars > bounds.bars) {
      return beyond(line, `there are more than ${bounds.bars} bars of tables`, text);
    }
    if (blank) count = 0;
    line = text.charCodeAt(at) === 13 && text.charCodeAt(at + 1) === 10 ? at + 2 : at + 1;
  }
  return null;
}

/** The width of a list marker with a blank after it, `-` or `12.`; 0 where there is none. */
function markerWidth(text: string, at: number, code: number): number {
  let width = 0;
  if (code === 45 || code === 42 || code === 43) width = 1;
  else {
    let end = at;
    while (text.charCodeAt(end) >= 48 && text.charCodeAt(end) <= 57 && end - at < 10) end += 1;
    if (end > at && (text.charCodeAt(end) === 46 || text.charCodeAt(end) === 41)) {
      width = end - at + 1;
    }
  }
  const next = text.charCodeAt(at + width);
  return width > 0 && (next === 32 || next === 9) ? width : 0;
}

function beyond(start: number, message: string, text: string): ReadProblem {
  const end = Math.min(start + 1, text.length);
  return {
    kind: 'limits',
    span: { start: Math.min(start, text.length), end },
    message: `${message}; the work below the front matter is not read`,
    fix: 'split the sheet, or take out what does not belong in it',
  };
}
