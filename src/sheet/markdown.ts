import type { Root } from 'mdast';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';

const processor = unified()
  .use(remarkParse)
  .use(remarkGfm)
  .use(remarkFrontmatter)
  .use(remarkDirective)
  .freeze();

/**
 * The Markdown tree of a text, null where the parser gives up on it. A byte order mark must be cut
 * off before: the parser would, and its offsets then count from behind it.
 */
export function parseMarkdown(text: string): Root | null {
  try {
    return processor.parse(text);
  } catch {
    // Deep nesting empties the stack; the bounds keep that away from every text known to do it.
    return null;
  }
}
