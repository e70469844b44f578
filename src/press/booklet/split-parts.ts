import { PressStopped } from '../orders/model.ts';

/** A booklet's HTML taken apart at the children of its one `main`. */
export interface SplitBooklet {
  /** The document with nothing in its `main`. */
  readonly shell: string;
  /** Each child with its own tags; every one begins a page. */
  readonly parts: readonly string[];
}

/** Elements that have no end (HTML, 13.1.2). */
const empty = new Set('area base br col embed hr img input link meta source track wbr'.split(' '));

/** Their content is no HTML, up to their end. */
const raw = new Set(['style', 'script', 'textarea', 'title']);

const token =
  /<!--[\s\S]*?-->|<(\/?)([a-zA-Z][\w:-]*)((?:\s+[^\s"'=<>`/]+(?:\s*=\s*(?:"[^"]*"|'[^']*'|[^\s"'=<>`]+))?)*)\s*(\/?)>/g;

/**
 * Splits what the template `booklet.hbs` gave. Fails with `PressStopped` where it has no `main`, or
 * an element in there that is not closed, which would make parts of other sizes than it looks.
 */
export function splitBooklet(html: string): SplitBooklet {
  const start = /<main\b[^>]*>/.exec(html);
  const end = html.lastIndexOf('</main>');
  if (start === null || end < 0) {
    throw new PressStopped(
      'The template booklet.hbs has no <main>: all parts of a booklet stand in one.',
    );
  }
  const from = start.index + start[0].length;
  return {
    shell: html.slice(0, from) + html.slice(end),
    parts: childrenOf(html.slice(from, end)).filter((part) => !hasNothing.test(part)),
  };
}

/** A child with nothing in it makes no page. */
const hasNothing = /^<(\w+)[^>]*>\s*<\/\1>$/;

function childrenOf(html: string): string[] {
  const parts: string[] = [];
  const open: string[] = [];
  const lower = html.toLowerCase();
  let start = 0;
  token.lastIndex = 0;
  for (let found = token.exec(html); found !== null; found = token.exec(html)) {
    const [, slash, written, , closed] = found;
    const name = written?.toLowerCase();
    if (name === undefined || empty.has(name)) continue;
    if (slash === '/') {
      const opened = open.pop();
      if (opened !== name) throw unclosed(opened ?? name);
    } else if (closed !== '/') {
      open.push(name);
      if (raw.has(name)) {
        const end = lower.indexOf(`</${name}`, token.lastIndex);
        if (end < 0) throw unclosed(name);
        token.lastIndex = end;
      }
    }
    if (open.length === 0) {
      parts.push(html.slice(start, token.lastIndex).trim());
      start = token.lastIndex;
    }
  }
  const [unended] = open;
  if (unended !== undefined) throw unclosed(unended);
  return parts;
}

function unclosed(name: string): PressStopped {
  return new PressStopped(
    `The booklet's templates open or close <${name}> once too often: every element in <main> needs its end.`,
  );
}
