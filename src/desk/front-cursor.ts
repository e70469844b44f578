import type { Span } from '../text/index.ts';

/** Where in the front matter the cursor stands: found by lines and brackets, since what is being typed reads as no YAML yet. */
export interface FrontCursor {
  /** The keys from the top down to what is being typed; of a list, `-`. */
  readonly path: readonly string[];
  /** Whether a key or a value stands at the cursor. A key's own name is not part of the path. */
  readonly part: 'key' | 'value';
  /** The word or value at the cursor, blanks at its ends left out; empty where there is none yet. */
  readonly span: Span;
  /** Columns before a key here, for lines that are put below it. */
  readonly indent: number;
  /** Whether brackets are open around it. */
  readonly inFlow: boolean;
  /** Whether a colon stands behind the key already. */
  readonly hasColon: boolean;
}

interface Level {
  readonly indent: number;
  readonly key: string;
}

interface Flow {
  readonly sign: '{' | '[';
  /** The key before the colon that was come to last; null while a key stands. */
  key: string | null;
}

const lineHead =
  /^([ \t]*)((?:-[ \t]+)*)(?:("[^"\n]*"|'[^'\n]*'|[^\s#:{}[\],"'&*!|>%@`-][^:#{}[\],\n]*?)[ \t]*:(?=[ \t]|$))?/;

/** The cursor in the front matter between `content`'s ends; null outside of it. */
export function frontCursor(text: string, content: Span, offset: number): FrontCursor | null {
  if (offset < content.start || offset > content.end) return null;
  const levels: Level[] = [];
  const flows: Flow[] = [];
  let at = content.start;
  let indent = 0;
  let token = at;
  let key = true;
  while (at <= offset) {
    const lineEnd = endOfLine(text, at, content.end);
    const last = offset <= lineEnd;
    const line = text.slice(at, lineEnd);
    token = at + (/^[ \t]*/.exec(line)?.[0].length ?? 0);
    if (flows.length === 0) {
      const [, blanks = '', dashes = '', name] = lineHead.exec(line) ?? [];
      const lead = blanks.length + dashes.length;
      const isEmpty = /^[ \t]*(?:#.*)?$/.test(line);
      if (!isEmpty || last) {
        const column = isEmpty ? Math.min(blanks.length, offset - at) : blanks.length;
        while (levels.length > 0 && isClosed(levels.at(-1), column, dashes !== '')) levels.pop();
        if (dashes !== '') levels.push({ indent: column, key: '-' });
        indent = isEmpty ? column : lead;
      }
      token = at + lead;
      // What brackets or quotes open is a value, even where no key stands before it.
      key =
        name === undefined
          ? !/^[[{"']/.test(line.slice(lead)) || offset <= token
          : offset <= token + name.length;
      if (last && key) break;
      if (name !== undefined) {
        levels.push({ indent: lead, key: unquoted(name) });
        token = at + lead + name.length + line.slice(lead + name.length).indexOf(':') + 1;
      }
    }
    token = scanValue(text, token, Math.min(lineEnd, offset), flows);
    if (last) break;
    at = nextLine(text, lineEnd);
  }
  const path = levels.map((level) => level.key);
  const innermost = flows.at(-1);
  for (const flow of flows) {
    if (flow.sign === '[') path.push('-');
    else if (flow.key !== null) path.push(flow.key);
  }
  const isKey = innermost ? innermost.sign === '{' && innermost.key === null : key;
  const word = wordAt(text, Math.min(token, offset), content.end, isKey, innermost !== undefined);
  // Blanks that are typed before or behind the word belong to it; behind anything else stands no word.
  if (!/^[ \t]*$/.test(text.slice(word.end, offset))) return null;
  const span = { start: Math.min(word.start, offset), end: Math.max(word.end, offset) };
  return {
    path,
    part: isKey ? 'key' : 'value',
    span,
    indent,
    inFlow: innermost !== undefined,
    hasColon: isKey && /^["']?[ \t]*:/.test(text.slice(span.end, span.end + 20)),
  };
}

/** Whether a level ends at a line of that column; a list may stand in the column of its key. */
function isClosed(level: Level | undefined, column: number, isItem: boolean): boolean {
  if (level === undefined) return false;
  if (isItem && level.key !== '-') return level.indent > column;
  return level.indent >= column;
}

/** Goes over a value up to `end`, and returns where the token that `end` stands in begins. */
function scanValue(text: string, start: number, end: number, flows: Flow[]): number {
  let token = start;
  let quote = '';
  for (let i = start; i < end; i++) {
    const sign = text[i] ?? '';
    if (quote !== '') {
      if (sign === quote) quote = '';
    } else if ((sign === '"' || sign === "'") && text.slice(token, i).trim() === '') {
      quote = sign;
    } else if (sign === '#' && /\s/.test(text[i - 1] ?? ' ')) return i;
    else if (
      (sign === '{' || sign === '[') &&
      (flows.length > 0 || text.slice(token, i).trim() === '')
    ) {
      flows.push({ sign, key: null });
      token = i + 1;
    } else if (flows.length === 0) continue;
    else if (sign === '}' || sign === ']') {
      flows.pop();
      token = i + 1;
    } else if (sign === ',') {
      const flow = flows.at(-1);
      if (flow) flow.key = null;
      token = i + 1;
    } else if (sign === ':' && /[\s,}\]]/.test(text[i + 1] ?? ' ')) {
      const flow = flows.at(-1);
      if (flow?.sign !== '{' || flow.key !== null) continue;
      flow.key = unquoted(text.slice(token, i).trim());
      token = i + 1;
    }
  }
  return token;
}

/** The word from `start` on, blanks at its ends left out, up to what ends a key or a value. */
function wordAt(text: string, start: number, end: number, isKey: boolean, inFlow: boolean): Span {
  const line = text.slice(start, endOfLine(text, start, end));
  const blanks = /^[ \t]*["']?/.exec(line)?.[0].length ?? 0;
  const rest = line.slice(blanks);
  const quote = /["']/.exec(line[blanks - 1] ?? '')?.[0];
  if (quote !== undefined) {
    const close = rest.indexOf(quote);
    const inner = close === -1 ? rest.trimEnd().length : close;
    return { start: start + blanks, end: start + blanks + inner };
  }
  const stop = isKey
    ? /^(?:[^:,{}[\]#"']|:(?!\s|$))*/
    : inFlow
      ? /^(?:[^,{}[\]#"']|(?<!\s)#)*/
      : /^(?:[^#"']|(?<!\s)#|(?<=\S)["'])*/;
  const word = (stop.exec(rest)?.[0] ?? '').trimEnd();
  return { start: start + blanks, end: start + blanks + word.length };
}

function unquoted(key: string): string {
  return /^(["']).*\1$/.test(key) ? key.slice(1, -1) : key.trim();
}

function endOfLine(text: string, from: number, most: number): number {
  for (let i = from; i < most; i++) if (text[i] === '\n' || text[i] === '\r') return i;
  return most;
}

function nextLine(text: string, end: number): number {
  return text.startsWith('\r\n', end) ? end + 2 : end + 1;
}
