import type { Nodes, Root } from 'mdast';
import remarkDirective from 'remark-directive';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { type Processor, unified } from 'unified';
import type { Point } from 'unist';
import { withoutBareLinks } from './without-bare-links.ts';

/**
 * The row of dashes below a table's head, as far as all of them have it. Without one in the whole text
 * there is no table, and the parser need not look for one in every line.
 */
const DELIMITER_ROW = /^[\t >|:]*-[\t |:-]*$/m;

// Front matter is found before (front-matter.ts, by remark-frontmatter's rule) and not handed to the
// parser: character by character, that costs it a seventh of its time on a sheet.
const processor = unified()
  .use(remarkParse)
  .use(remarkGfm)
  .use(withoutBareLinks)
  .use(remarkDirective)
  .freeze();

const withoutTables = processor()
  .use(function withoutTables(this: Processor) {
    const data = this.data() as { micromarkExtensions?: object[] };
    data.micromarkExtensions = [
      ...(data.micromarkExtensions ?? []),
      { disable: { null: ['table'] } },
    ];
  })
  .freeze();

/**
 * The Markdown tree of a text from an offset on, which is a line's start or stands behind a byte
 * order mark; null where the parser gives up. The tree's offsets and lines are the whole text's.
 */
export function parseMarkdown(text: string, from: number): Root | null {
  let tree: Root;
  try {
    const work = text.slice(from);
    tree = (DELIMITER_ROW.test(work) ? processor : withoutTables).parse(work);
  } catch {
    // Deep nesting empties the stack; the bounds keep that away from every text known to do it.
    return null;
  }
  if (from > 0) shift(tree, from, lineEnds(text, from));
  if (text.includes('\r')) unifyLineEnds(tree);
  return tree;
}

/**
 * Lines end alike in what a sheet says, however the file ends them: one that was checked out on
 * another system prints the same and has the same code. Places stay those of the file.
 */
function unifyLineEnds(node: Nodes): void {
  if ('value' in node) node.value = lineFeeds(node.value);
  if ('alt' in node && node.alt) node.alt = lineFeeds(node.alt);
  if ('title' in node && node.title) node.title = lineFeeds(node.title);
  if ('children' in node) for (const child of node.children) unifyLineEnds(child);
}

function lineFeeds(text: string): string {
  return text.replace(/\r\n?/g, '\n');
}

/** The one place where the parser's offsets become the file's. */
function shift(node: Nodes, offset: number, line: number): void {
  if (node.position) {
    const { start, end } = node.position;
    // Plugins let nodes share their points, so new ones are made.
    node.position = { start: shifted(start, offset, line), end: shifted(end, offset, line) };
  }
  if ('children' in node) for (const child of node.children) shift(child, offset, line);
}

function shifted(point: Point, offset: number, line: number): Point {
  return { line: point.line + line, column: point.column, offset: (point.offset ?? 0) + offset };
}

function lineEnds(text: string, before: number): number {
  let count = 0;
  for (let i = 0; i < before; i += 1) {
    const code = text.charCodeAt(i);
    if (code === 10 || (code === 13 && text.charCodeAt(i + 1) !== 10)) count += 1;
  }
  return count;
}
