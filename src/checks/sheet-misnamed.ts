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
      sheet: { front: 'sheet: orlo-2d' },
      expect: [
        {
          at: 'orlo-2d',
          message: 'the sheet calls itself `orlo-2d`, but its file is `orlo-1a.md`',
          fix: 'write `sheet: orlo-1a`, or rename the file to `orlo-2d.md`',
        },
      ],
    },
    { name: "the file's own name", sheet: { front: 'sheet: orlo-1a' }, expect: [] },
  ],
});
