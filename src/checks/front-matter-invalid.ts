import { defineCheck } from './define.ts';
import { meantAt } from './problem-cures.ts';

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
  },
  run(sheet, _context, report) {
    for (const { kind, span, message, fix, write, related = [] } of sheet.problems) {
      if (kind !== 'schema') continue;
      const cure = fix ?? 'take it out, or compare it with a sheet that `gaugeleaf draft` writes';
      report({
        message: 'mendable',
        span,
        values: { problem: message, cure },
        related,
        suggest: () => meantAt(write),
      });
    }
  },
  examples: [
    {
      name: 'a key that sheets do not have',
      sheet: { front: 'titel: Orlo F27' },
      expect: [
        {
          at: 'titel',
          message: '`titel` is no key that is known here',
          fix: 'did you mean `title`?',
        },
      ],
    },
    {
      name: 'a word that may not stand there',
      sheet: { front: 'status: prof' },
      expect: [
        {
          at: 'prof',
          message: '`status` is `prof`; it may be draft, proof or released',
          fix: 'did you mean `proof`?',
        },
      ],
    },
    {
      name: 'a setting whose value is misspelt away',
      sheet: { settings: 'unloader: { valeu: No. 29 drill, from: m48 p. 33 }' },
      expect: [
        {
          at: 'unloader',
          message: '`settings › unloader` has neither `value`, `places`, `statements` nor `table`',
          fix: 'did you mean `value` where `valeu` stands?',
        },
      ],
    },
    {
      name: 'keys and values as they should be',
      sheet: { front: 'title: Orlo F27 single-barrel\nstatus: proof' },
      expect: [],
    },
  ],
});
