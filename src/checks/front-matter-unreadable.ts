import { defineCheck } from './define.ts';

/** YAML that cannot be read. */
export default defineCheck({
  id: 'front-matter-unreadable',
  severity: 'error',
  group: 'reading',
  summary: 'The front matter is not YAML that can be read.',
  explain:
    'The settings stand in the front matter. Where it breaks off, the numbers below the break ' +
    'would be missing from the card, or land under the wrong name. The other checks wait until it ' +
    'reads. It cannot be accepted, only mended.',
  unread: true,
  messages: {
    mendable: { message: '{problem}', fix: '{cure}' },
    unexplained: { message: '{problem}', fix: null },
  },
  run(sheet, _context, report) {
    for (const { kind, span, message, fix, related = [] } of sheet.problems) {
      if (kind !== 'front-matter') continue;
      if (fix === null)
        report({ message: 'unexplained', span, values: { problem: message }, related });
      else report({ message: 'mendable', span, values: { problem: message, cure: fix }, related });
    }
  },
  examples: [],
});
