import type { Document, YAMLError } from 'yaml';
import type { Span } from './span.ts';
import {
  fault,
  firstWord,
  lineStart,
  quoted,
  restOfLine,
  unquotedFault,
  type YamlFault,
} from './yaml-fault.ts';
import { isInBrackets, unclosedBracket, unclosedQuote } from './yaml-unclosed.ts';

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
