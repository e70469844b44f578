import { defineCheck } from './define.ts';

/** Front matter that reads as YAML and breaks the schema of a sheet. */
export default defineCheck({
  id: 'front-matter-invalid',
  severity: 'error',
  group: 'reading',
  summary: 'A key or value of the front matter is not what a sheet has in that place.',
  explain:
    'A misspelt or misplaced key is not printed and not checked: a tolerance or a source is lost ' +
    'silently. It cannot be accepted, only mended.',
  unread: true,
  messages: {
    mendable: { message: '{problem}', fix: '{cure}' },
    unexplained: { message: '{problem}', fix: null },
  },
  run(sheet, _context, report) {
    for (const { kind, span, message, fix, related = [] } of sheet.problems) {
      if (kind !== 'schema') continue;
      if (fix === null)
        report({ message: 'unexplained', span, values: { problem: message }, related });
      else report({ message: 'mendable', span, values: { problem: message, cure: fix }, related });
    }
  },
  examples: [],
});
