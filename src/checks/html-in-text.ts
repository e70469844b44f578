import { defineCheck } from './define.ts';

/** HTML tags, which are never printed. */
export default defineCheck({
  id: 'html-in-text',
  severity: 'warning',
  group: 'reading',
  summary: 'The sheet has HTML in it, which is not printed.',
  explain:
    'Tags are left out on paper, so that no sheet can bring in script, a frame or a picture of ' +
    'somebody else. What was meant by them is lost: an emphasis, a line break, a table. Comments ' +
    'are no finding. Accept it where losing the tag loses nothing.',
  messages: {
    markdown: {
      message: '`{tag}` is not printed',
      fix: 'write it in Markdown: `{markdown}`',
      suggest: [{ write: '{markdown}' }],
    },
    other: {
      message: '`{tag}` is not printed',
      fix: 'take it out; Markdown has headings, lists, tables, emphasis and pictures',
      suggest: [{ takeOut: 'words' }],
    },
  },
  run(sheet, _context, report) {
    for (const span of sheet.html) {
      const value = sheet.text.slice(span.start, span.end);
      // Comments may hold anything that looks like a tag; blanking them keeps the offsets.
      const bare = value.replace(/<!--[\s\S]*?(?:-->|$)/g, (comment) => ' '.repeat(comment.length));
      for (const match of bare.matchAll(/<([a-zA-Z][\w-]*)[^<>]*>?/g)) {
        const start = span.start + match.index;
        const [whole] = match;
        const tag = whole.length > 60 ? `${whole.slice(0, 60)}...` : whole;
        const markdown = inMarkdown.get((match[1] ?? '').toLowerCase());
        const place = { start, end: start + whole.length };
        if (markdown === undefined) report({ message: 'other', span: place, values: { tag } });
        else report({ message: 'markdown', span: place, values: { tag, markdown } });
      }
    }
  },
  examples: [
    {
      name: 'bold in tags',
      sheet: { body: '## Float level\n\n1. Bend the arm, <b>never</b> the tab.\n' },
      expect: [
        {
          at: '<b>',
          message: '`<b>` is not printed',
          fix: 'write it in Markdown: `**strong**`',
        },
      ],
    },
    {
      name: 'a script',
      sheet: { body: '## Float level\n\n<script src="x.js"></script>\n' },
      expect: [
        {
          at: '<script src="x.js">',
          message: '`<script src="x.js">` is not printed',
          fix: 'take it out; Markdown has headings, lists, tables, emphasis and pictures',
        },
      ],
    },
    {
      name: 'strong in Markdown, and a comment',
      sheet: {
        body: '## Float level\n\n<!-- measure <b>again</b> -->\n\n1. Bend the arm, **never** the tab.\n',
      },
      expect: [],
    },
  ],
});

const inMarkdown: ReadonlyMap<string, string> = new Map([
  ['b', '**strong**'],
  ['strong', '**strong**'],
  ['i', '*emphasis*'],
  ['em', '*emphasis*'],
  ['code', '`code`'],
  ['hr', '---'],
  ['img', '![what it shows](pictures/name.png)'],
  ['a', '[words](address)'],
  ['ol', '1. first step'],
  ['ul', '- first point'],
  ['li', '- a point'],
  ['table', '| head | head |'],
]);
