import { defineCheck } from './define.ts';
import { meantAt } from './problem-cures.ts';

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
  },
  run(sheet, _context, report) {
    for (const { kind, span, message, fix, write, related = [] } of sheet.problems) {
      if (kind !== 'front-matter') continue;
      const cure = fix ?? 'compare it with a sheet that `gaugeleaf draft` writes';
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
      name: 'a colon and a space in a title',
      sheet: { front: 'title: Orlo F27: single-barrel' },
      expect: [
        {
          at: 'Orlo F27: single-barrel',
          message:
            'a colon with a space after it starts a new key, so this value holds a second one',
          fix: "quote it: 'Orlo F27: single-barrel'",
        },
      ],
    },
    {
      name: 'never closed',
      sheet: '---\ngaugeleaf: 1\n\n# Orlo F27\n',
      expect: [
        {
          at: '---',
          message: 'the front matter opens here and is never closed',
          fix: 'put a line `---` below its last line',
        },
      ],
    },
    { name: 'a title in quotes', sheet: { front: "title: 'Orlo F27: single-barrel'" }, expect: [] },
  ],
});
