import remarkDirective from 'remark-directive';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { parseDocument } from 'yaml';

/**
 * How long the parsers alone take for a sheet's text, in milliseconds: Markdown with tables and directives,
 * and the YAML at its head. Nothing is looked for.
 */
export function bareParse(text: string): number {
  const start = performance.now();
  const end = text.indexOf('\n---', 4);
  parseDocument(text.slice(4, Math.max(4, end)));
  parser.parse(text.slice(end + 4));
  return performance.now() - start;
}

const parser = unified().use(remarkParse).use(remarkGfm).use(remarkDirective);
