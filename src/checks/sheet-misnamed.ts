import { defineCheck } from './define.ts';

/** `sheet:` says another name than the file has. */
export default defineCheck({
  id: 'sheet-misnamed',
  severity: 'warning',
  group: 'reading',
  summary: 'The sheet calls itself by another name than its file.',
  explain:
    'The edition orders its sheets by name, and errata name them. A copied file that still carries ' +
    'the name of the sheet it was copied from prints one unit under the name of another. Accept it ' +
    'only while a file is being moved.',
  messages: {
    differs: {
      message: 'the sheet calls itself `{id}`, but its file is `{file}`',
      fix: 'write `sheet: {stem}`, or rename the file to `{id}.md`',
      suggest: [{ write: '{stem}' }],
    },
  },
  run(sheet, _context, report) {
    const file = sheet.file.slice(sheet.file.lastIndexOf('/') + 1);
    if (sheet.id === null || !file.endsWith('.md')) return;
    const stem = file.slice(0, -'.md'.length);
    if (sheet.id.value === stem) return;
    report({
      message: 'differs',
      span: sheet.id.span,
      values: { id: sheet.id.value, file, stem },
      compared: [sheet.id.value, stem],
    });
  },
  examples: [
    {
      name: 'the name of the sheet it was copied from',
      sheet: { front: 'sheet: orlo-t71' },
      expect: [
        {
          at: 'orlo-t71',
          message: 'the sheet calls itself `orlo-t71`, but its file is `orlo-f27.md`',
          fix: 'write `sheet: orlo-f27`, or rename the file to `orlo-t71.md`',
        },
      ],
    },
    { name: "the file's own name", sheet: { front: 'sheet: orlo-f27' }, expect: [] },
  ],
});
