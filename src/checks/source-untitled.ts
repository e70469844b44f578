import { defineCheck } from './define.ts';

/** A source that nobody could find again. */
export default defineCheck({
  id: 'source-untitled',
  severity: 'warning',
  group: 'provenance',
  summary: 'A source has no title.',
  explain:
    'The sheet calls a source by a short name; the booklet prints its title, so that a reader can ' +
    'find the paper. Accept it for a paper that has none, and say what it looks like.',
  messages: {
    untitled: {
      message: 'the source `{source}` has no title',
      fix: 'add `title: ...` to it, as its cover says',
      suggest: [{ say: 'title', as: null }],
    },
  },
  run(sheet, _context, report) {
    for (const { name, title, shared } of sheet.sources.values()) {
      // What `sources.yaml` lacks is told of that file.
      if (shared) continue;
      if (title !== null && title.value.trim() !== '') continue;
      report({
        message: 'untitled',
        span: name.span,
        values: { source: name.value },
        subject: name.value,
      });
    }
  },
  examples: [
    {
      name: 'a short name alone',
      sheet: { front: 'sources:\n  m48: { kind: manual, year: 1948 }' },
      expect: [
        {
          at: 'm48',
          message: 'the source `m48` has no title',
          fix: 'add `title: ...` to it, as its cover says',
        },
      ],
    },
    {
      name: 'a title',
      sheet: {
        front: 'sources:\n  m48: { title: Wexcombe Four Workshop Manual }',
        settings: 'idle-mixture: { value: 1-1/4 turns out, from: m48 p. 40 }',
      },
      expect: [],
    },
  ],
});
