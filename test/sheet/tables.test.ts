import { readdirSync, readFileSync } from 'node:fs';
import remarkDirective from 'remark-directive';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { describe, expect, test } from 'vitest';
import { parseMarkdown } from '../../src/sheet/markdown.ts';
import { withoutBareLinks } from '../../src/sheet/without-bare-links.ts';

// A text in which no table can stand is parsed without looking for one; the tree has to be the same.
const whole = unified()
  .use(remarkParse)
  .use(remarkGfm)
  .use(withoutBareLinks)
  .use(remarkDirective)
  .freeze();

const tables = [
  'a | b\n-- | -\n1 | 2\n',
  '| a |\n| - |\n',
  // A head of one cell needs no bar at all: a colon tells the row of dashes from a heading's line.
  'one cell\n:-\n1\n',
  'one cell\n-:\n',
  '> | a | b |\n> |---|:-:|\n> | 1 | 2 |\n',
  '- | a | b |\n  |---|---|\n',
  '1. > a | b\n   > \t--|--\t\n',
  ':::note\na | b\n-|-\n:::\n',
  '[^a]: a | b\n    -|-\n',
  'a | b\r\n-- | -\r\n1 | 2\r\n',
  'a | b\r-- | -\r1 | 2\r',
  'a\\|b | c\n --- | --- \n',
];

describe('tables', () => {
  test.each(tables)('are found: %j', (text) => {
    expect(JSON.stringify(parseMarkdown(text, 0))).toContain('"type":"table"');
  });

  test.each([...tables, ...['a | b\n', '::: \n', 'a\n---\n', '- -\n', '|\n', ':\n', '> ---\n']])(
    'make the same tree as ever: %j',
    (text) => {
      const lines = text.replace(/\r\n?/g, '\n');
      expect(parseMarkdown(lines, 0)).toEqual(whole.parse(lines));
    },
  );

  test('are none on most sheets of the demo, whose trees are the same', () => {
    const folder = new URL('../../sheets/', import.meta.url);
    for (const name of readdirSync(folder).filter((each) => each.endsWith('.md'))) {
      const text = readFileSync(new URL(name, folder), 'utf8');
      const body = text.slice(text.indexOf('\n---\n', 4) + 5);
      expect(parseMarkdown(body, 0), name).toEqual(whole.parse(body));
    }
  });
});
