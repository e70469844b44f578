import { type Document, isCollection, visit, type YAMLError } from 'yaml';
import type { Span } from './span.ts';

/** A fault of a YAML text in a restorer's words; `span` as offsets into the YAML text itself. */
export interface YamlFault {
  readonly span: Span;
  readonly message: string;
  readonly fix: string | null;
  /** What may be meant in place of the words; absent where nobody can tell. */
  readonly write?: readonly string[];
}

/** A text as a YAML scalar that nothing can be mistaken in. */
export function quoted(text: string): string {
  // A message is no place for a page of text.
  if (text.length > 80) return `'${text.slice(0, 60)}...'`;
  return text.includes("'") ? JSON.stringify(text) : `'${text}'`;
}

/** Says what a syntax error of the YAML parser means and where the cause of it stands. */
export function explainYamlError(error: YAMLError, text: string, doc: Document): YamlFault {
  const at = Math.min(error.pos[0], text.length);
  const unclosed = unclosedQuote(text, doc, at);
  if (unclosed) return unclosed;
  switch (error.code) {
    case 'TAB_AS_INDENT':
      return fault(
        { start: at, end: at + 1 },
        'a tab stands where YAML wants spaces',
        'indent with spaces, two for each level',
      );
    case 'BAD_SCALAR_START': {
      const span = restOfLine(text, at);
      const sign = text.charAt(at);
      return unquotedFault(
        span,
        `a value cannot start with ${sign} in YAML unless it is quoted`,
        text.slice(span.start, span.end),
      );
    }
    case 'BLOCK_AS_IMPLICIT_KEY':
      return nestedMapping(text, at);
    case 'MULTILINE_IMPLICIT_KEY':
      return noSpaceAfterColon(text, at) ?? noColon(text, at);
    case 'BAD_INDENT':
      if (isInBrackets(text, doc, at)) return unclosedBracket(text, doc, at);
      return indentedOtherwise(text, at);
    case 'MULTIPLE_DOCS':
      return fault(
        restOfLine(text, at),
        'a second YAML document starts here; only the first is read',
        'take the line of --- or ... out',
      );
    case 'BAD_DQ_ESCAPE':
      return fault(
        { start: at, end: Math.min(at + 2, text.length) },
        'a backslash in double quotes starts an escape, and there is none of this name',
        'use single quotes, in which a backslash is only a backslash',
      );
    case 'TAG_RESOLVE_FAILED':
      return tagFault(restOfLine(text, at), text);
    case 'MISSING_CHAR':
      if (isInBrackets(text, doc, at)) return unclosedBracket(text, doc, at);
      if (/^\s*[\p{L}\p{N}_-]+:\s/u.test(text.slice(at))) return indentedOtherwise(text, at);
      return noSpaceAfterColon(text, at) ?? noColon(text, at);
    case 'UNEXPECTED_TOKEN':
      return unexpected(text, at);
    default:
  }
  return fault(
    firstWord(text, at),
    `this cannot be read as YAML (${error.message.replace(/[.:]\s*$/, '')})`,
    'put the value in quotes if it is one text',
  );
}

/** A value that starts with `!`: YAML takes that for the name of a type. */
export function tagFault(span: Span, text: string): YamlFault {
  return unquotedFault(
    span,
    'a value cannot start with ! in YAML unless it is quoted',
    text.slice(span.start, span.end),
  );
}

/** The comment that ate a value, `value: #29 drill`; null where `at` stands before none. */
export function swallowedValue(text: string, at: number, what: string): YamlFault | null {
  let start = at;
  if (text.charCodeAt(start) === 58) start += 1;
  while (text.charCodeAt(start) === 32 || text.charCodeAt(start) === 9) start += 1;
  // `# words` after an empty value is somebody's remark; `#29` is somebody's drill.
  if (text.charCodeAt(start) !== 35 || !/[\p{L}\p{N}.]/u.test(text.charAt(start + 1))) return null;
  return comment(text, start, `so ${what} is empty`);
}

function comment(text: string, start: number, consequence: string): YamlFault {
  const span = restOfLine(text, start);
  const eaten = text.slice(span.start, span.end).replace(/[\]}\s,]+$/, '');
  return fault(
    span,
    `YAML takes # and all that follows on the line for a comment, ${consequence}`,
    `quote it: ${quoted(eaten)}`,
  );
}

function fault(span: Span, message: string, fix: string | null): YamlFault {
  return { span, message, fix };
}

/** A value that says what it should only once it stands in quotes. */
function unquotedFault(span: Span, message: string, value: string): YamlFault {
  const written = quoted(value);
  const write = value.length > 80 ? {} : { write: [written] };
  return { span, message, fix: `quote it: ${written}`, ...write };
}

/** From `at` to the line's end, blanks at the end left out. */
function restOfLine(text: string, at: number): Span {
  let end = at;
  while (end < text.length && text.charCodeAt(end) !== 10 && text.charCodeAt(end) !== 13) end += 1;
  while (end > at && (text.charCodeAt(end - 1) === 32 || text.charCodeAt(end - 1) === 9)) end -= 1;
  return { start: at, end };
}

/** The first word from `at` on; at the very end of the text, the last word before it. */
function firstWord(text: string, at: number): Span {
  const after = /\S+/g;
  after.lastIndex = at;
  const match = after.exec(text);
  if (match) return { start: match.index, end: match.index + match[0].length };
  let end = at;
  while (end > 0 && /\s/.test(text.charAt(end - 1))) end -= 1;
  let start = end;
  while (start > 0 && !/\s/.test(text.charAt(start - 1))) start -= 1;
  return { start, end };
}

function lineStart(text: string, at: number): number {
  let start = at;
  while (start > 0 && text.charCodeAt(start - 1) !== 10 && text.charCodeAt(start - 1) !== 13) {
    start -= 1;
  }
  return start;
}

/** A quote that goes on past its line, up to the error: nearly always one that was never closed. */
function unclosedQuote(text: string, doc: Document, at: number): YamlFault | null {
  let start = -1;
  visit(doc, {
    Scalar(_, node) {
      const range = node.range;
      if (!range || range[0] > at || !node.type?.startsWith('QUOTE')) return;
      const written = text.slice(range[0], range[1]);
      const sign = written.charAt(0);
      if (written.length > 1 && written.endsWith(sign)) {
        // A quoted text may run over lines; it is suspect when the error follows right behind it.
        if (!/[\r\n]/.test(written) || /[\r\n]/.test(text.slice(range[1], at))) return;
      }
      start = range[0];
    },
  });
  if (start < 0) return null;
  const span = restOfLine(text, start);
  const sign = text.charAt(start);
  const rest = text.slice(start + 1, span.end);
  return fault(
    span,
    `a quotation mark ${sign} opens here and is not closed on its line`,
    `close it: ${sign}${rest.slice(0, 60)}${sign}; or, if the mark belongs to the text, put all of it in quotes`,
  );
}

/** Whether a place lies in brackets, closed or not. */
function isInBrackets(text: string, doc: Document, at: number): boolean {
  let found = false;
  visit(doc, {
    Node(_, node) {
      if (!isCollection(node) || !node.flow || !node.range || node.range[0] >= at) return;
      if (at < node.range[1] || !isClosed(node.range, text)) found = true;
    },
  });
  return found;
}

/** Whether what begins with a bracket ends with its own. */
function isClosed([start, end]: readonly [number, number, number], text: string): boolean {
  return text.charAt(end - 1) === (text.charAt(start) === '[' ? ']' : '}');
}

function unclosedBracket(text: string, doc: Document, at: number): YamlFault {
  let start = -1;
  visit(doc, {
    Node(_, node) {
      if (!isCollection(node) || !node.flow || !node.range || node.range[0] >= at) return;
      if (!isClosed(node.range, text)) start = node.range[0];
    },
  });
  if (start < 0) {
    return fault(
      firstWord(text, at),
      'a list or mapping in brackets is not closed before this',
      'close it with ] or }',
    );
  }
  const hash = /\s(#[\p{L}\p{N}.])/gu;
  hash.lastIndex = start;
  const eaten = hash.exec(text);
  if (eaten && eaten.index < at) {
    return comment(text, eaten.index + 1, 'and the bracket that closes the list with it');
  }
  const closes = text.charAt(start) === '[' ? ']' : '}';
  return fault(
    restOfLine(text, start),
    `${text.charAt(start)} opens here and is not closed`,
    `close it with ${closes}`,
  );
}

function indentedOtherwise(text: string, at: number): YamlFault {
  return fault(
    firstWord(text, at),
    'this line is indented differently from the lines it belongs with',
    'start it at the same column as its neighbors',
  );
}

function nestedMapping(text: string, at: number): YamlFault {
  const span = restOfLine(text, at);
  const value = text.slice(span.start, span.end);
  if (/:(\s|$)/.test(value)) {
    return unquotedFault(
      span,
      'a colon with a space after it starts a new key, so this value holds a second one',
      value,
    );
  }
  const next = firstWord(text, span.end);
  return fault(
    next,
    `this line is indented as if it belonged inside the value above it, \`${value.slice(0, 60)}\``,
    'start it at the same column as the key above',
  );
}

function noSpaceAfterColon(text: string, at: number): YamlFault | null {
  const start = lineStart(text, at);
  const span = restOfLine(text, start);
  const match = /^[\s-]*([\p{L}\p{N}_-]+):(\S.*)$/u.exec(text.slice(span.start, span.end));
  if (!match) return null;
  const from = span.end - (match[1] ?? '').length - 1 - (match[2] ?? '').length;
  return fault(
    { start: from, end: span.end },
    'a key needs a space after its colon',
    `write \`${match[1]}: ${(match[2] ?? '').slice(0, 60)}\``,
  );
}

function noColon(text: string, at: number): YamlFault {
  return fault(
    restOfLine(text, firstWord(text, at).start),
    'this line is no `key: value`',
    'put a key and a colon before it, or take it out',
  );
}

function unexpected(text: string, at: number): YamlFault {
  const start = lineStart(text, at);
  const before = text.slice(start, at);
  if (/^-(?!\S)/.test(text.slice(at, at + 2)) && /:[ \t]+$/.test(before)) {
    const span = restOfLine(text, at);
    return fault(
      span,
      'a value cannot start with a dash and a space',
      `quote it: ${quoted(text.slice(span.start, span.end))}; or start the list on its own line`,
    );
  }
  const header = /[:\s-]([>|])[-+\d]*[ \t]*$/.exec(before);
  if (header?.[1]) {
    const span = restOfLine(text, start + header.index + header[0].indexOf(header[1]));
    return fault(
      span,
      `a value cannot start with ${header[1]} in YAML unless it is quoted`,
      `quote it: ${quoted(text.slice(span.start, span.end))}`,
    );
  }
  const line = text.slice(start, restOfLine(text, at).end);
  const opens = /(?:^\s*|[:\-,[{]\s+)(["'].*)$/.exec(line)?.[1];
  const quote = opens && text.slice(start + line.length - opens.length, at).trimEnd();
  if (opens && quote && quote.length > 1 && quote.endsWith(opens.charAt(0))) {
    const span = { start: start + line.length - opens.length, end: start + line.length };
    return fault(
      span,
      `a value that starts with ${opens.charAt(0)} ends at the next ${opens.charAt(0)}, and more follows`,
      `put all of it in quotes: ${quoted(opens)}`,
    );
  }
  return fault(
    firstWord(text, at),
    'this does not belong here',
    'take it out, or put the value in quotes if it is one text',
  );
}
