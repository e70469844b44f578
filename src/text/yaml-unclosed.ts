import { type Document, isCollection, visit } from 'yaml';
import { fault, firstWord, quoted, restOfLine, type YamlFault } from './yaml-fault.ts';

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

/** A quote that goes on past its line, up to the error: nearly always one that was never closed. */
export function unclosedQuote(text: string, doc: Document, at: number): YamlFault | null {
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
export function isInBrackets(text: string, doc: Document, at: number): boolean {
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

/** The bracket that opens before an error and is not closed, or the `#` that ate its end. */
export function unclosedBracket(text: string, doc: Document, at: number): YamlFault {
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
