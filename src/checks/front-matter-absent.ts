import { defineCheck } from './define.ts';

/** A Markdown file without front matter: no sheet yet. */
export default defineCheck({
  id: 'front-matter-absent',
  severity: 'error',
  group: 'reading',
  summary: 'The sheet has no front matter, so it has no settings.',
  explain:
    'Unit, sources and settings stand between two lines of `---` at the very top of a sheet. ' +
    'Without them there is nothing to prove and no card to print. It cannot be accepted.',
  unread: true,
  messages: {
    empty: {
      message: 'the sheet is empty',
      fix: 'write a first sheet with `gaugeleaf draft`, or take the file out of the folder',
    },
    absent: {
      message: 'there is no front matter: the first line is `{line}`, not `---`',
      fix: 'put the front matter above it: a line `---`, then `gaugeleaf: 1`, `sheet:`, `title:`, `unit:`, `sources:` and `settings:`, then a line `---`',
    },
  },
  run(sheet, _context, report) {
    if (sheet.frontMatter !== null || sheet.problems.some((problem) => problem.kind !== 'schema')) {
      return;
    }
    const first = /\S[^\r\n]*/.exec(sheet.text);
    if (first === null) {
      report({ message: 'empty', span: { start: 0, end: 0 } });
      return;
    }
    const line = first[0].trimEnd();
    const shown = line.length > 40 ? `${line.slice(0, 40)}...` : line;
    report({
      message: 'absent',
      span: { start: first.index, end: first.index + line.length },
      values: { line: shown },
    });
  },
  examples: [
    {
      name: 'a sheet that starts with its title',
      sheet: '# Orlo F27\n\n## Float level\n\n1. Set the float.\n',
      expect: [
        {
          at: '# Orlo F27',
          message: 'there is no front matter: the first line is `# Orlo F27`, not `---`',
          fix: 'put the front matter above it: a line `---`, then `gaugeleaf: 1`, `sheet:`, `title:`, `unit:`, `sources:` and `settings:`, then a line `---`',
        },
      ],
    },
    {
      name: 'an empty file',
      sheet: '\n',
      expect: [
        {
          at: '',
          message: 'the sheet is empty',
          fix: 'write a first sheet with `gaugeleaf draft`, or take the file out of the folder',
        },
      ],
    },
    {
      name: 'front matter at the top',
      sheet: '---\ngaugeleaf: 1\nsheet: orlo-f27\n---\n\n# Orlo F27\n',
      expect: [],
    },
  ],
});
