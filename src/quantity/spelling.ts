const WORD = /[\p{L}\p{N}]/u;
const POINT = 46;
const BLANK = 32;
const SLASH = 47;

interface Node<T> {
  readonly next: Map<number, Node<T>>;
  /** The code of the character that led here. */
  readonly edge: number;
  /** What is spelled when the walk ends here; undefined where nothing is. */
  value: T | undefined;
}

/**
 * Spellings and what each stands for, looked up as papers write them. Abbreviations are pointed as
 * one pleases, so the text may have a full stop behind any letter (`lb./sq.in.` is `lb/sq in`),
 * blanks around a slash, and none where a stop parts two words. A spelling that ends in a letter or
 * figure ends the word: `in` is not read out of `index`.
 */
export class Spellings<T> {
  readonly #root: Node<T> = { next: new Map(), edge: 0, value: undefined };

  constructor(entries: Iterable<readonly [string, T]>) {
    for (const [spelling, value] of entries) {
      let node = this.#root;
      for (let i = 0; i < spelling.length; i++) {
        const code = spelling.charCodeAt(i);
        const next = node.next.get(code) ?? { next: new Map(), edge: code, value: undefined };
        node.next.set(code, next);
        node = next;
      }
      // The first of two that are spelled alike counts.
      node.value ??= value;
    }
  }

  /** The longest spelling at an offset of a normalized text; null where none stands there. */
  longest(lower: string, at: number): { readonly value: T; readonly end: number } | null {
    if (!this.#root.next.has(lower.charCodeAt(at))) return null;
    const found: Found<T> = { value: undefined, end: -1 };
    walk(this.#root, lower, at, at, false, found);
    return found.value === undefined ? null : { value: found.value, end: found.end };
  }
}

interface Found<T> {
  value: T | undefined;
  end: number;
}

function walk<T>(
  node: Node<T>,
  lower: string,
  start: number,
  here: number,
  pointed: boolean,
  found: Found<T>,
): void {
  const code = lower.charCodeAt(here);
  if (node.value !== undefined && !pointed) {
    const end = endOfSpelling(lower, here, node.edge);
    if (end > found.end) [found.value, found.end] = [node.value, end];
  }
  if (node.next.size === 0) return;
  const exact = code === BLANK ? undefined : node.next.get(code);
  if (exact) walk(exact, lower, start, here + 1, false, found);
  const stop = code === POINT && !pointed && here > start && isLetter(lower.charCodeAt(here - 1));
  if (stop) walk(node, lower, start, here + 1, true, found);
  const blank = code === BLANK || pointed ? node.next.get(BLANK) : undefined;
  if (blank) walk(blank, lower, start, code === BLANK ? here + 1 : here, false, found);
  if (code !== BLANK || lower.charCodeAt(here + 1) === BLANK) return;
  if (node.edge === SLASH) {
    const next = node.next.get(lower.charCodeAt(here + 1));
    if (next) walk(next, lower, start, here + 2, false, found);
  } else if (lower.charCodeAt(here + 1) === SLASH) {
    const slash = node.next.get(SLASH);
    if (slash) walk(slash, lower, start, here + 2, false, found);
  }
}

/** Where a spelling ends whose last character was `edge`; -1 where the word goes on. */
function endOfSpelling(lower: string, here: number, edge: number): number {
  if (!isWord(edge)) return here;
  const code = lower.charCodeAt(here);
  if (isWord(code)) return -1;
  // A stop that a letter or figure follows begins something else: `3 in.Hg` is no length.
  return code === POINT && isLetter(edge) && !isWord(lower.charCodeAt(here + 1)) ? here + 1 : here;
}

function isLetter(code: number): boolean {
  return code >= 97 && code <= 122;
}

function isWord(code: number): boolean {
  if (code < 128) return isLetter(code) || (code >= 48 && code <= 57) || (code >= 65 && code <= 90);
  return WORD.test(String.fromCharCode(code));
}
