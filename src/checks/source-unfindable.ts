import { citing, isMeasured } from '../sheet/index.ts';
import { isBlank } from './blank.ts';
import { defineCheck } from './define.ts';

/** What tells one printing of a paper from another. */
const marks = ['year', 'date', 'edition', 'number'] as const;

/** A paper with a title and nothing else by which it could be found. */
export default defineCheck({
  id: 'source-unfindable',
  severity: 'warning',
  group: 'provenance',
  summary: 'A paper has no year, and no figure names its page.',
  explain:
    'A title alone fits every printing of a paper, and without a page the figure has to be looked for ' +
    'in all of it. Accept it for a paper that has neither year nor pages, and say what it looks like.',
  messages: {
    unfindable: {
      message: 'nobody can find `{title}` again: it has no year, and no figure names its page',
      fix: 'add `year: ...` to `{source}`, or the page to each `from: {source}`',
      suggest: [{ say: 'year', as: null }],
    },
  },
  run(sheet, _context, report) {
    const cited = new Set<string>();
    const paged = new Set<string>();
    for (const { from, but } of citing(sheet)) {
      for (const citation of [...from, ...but.flatMap((dissent) => dissent.from ?? [])]) {
        cited.add(citation.id);
        if (citation.page !== null) paged.add(citation.id);
      }
    }
    for (const source of sheet.sources.values()) {
      const { name, title, described } = source;
      // Without a title `source-untitled` speaks of it, without a figure `source-unused`.
      if (isMeasured(source) || !title?.value.trim() || !cited.has(name.value)) continue;
      // A card on a wall has neither; what is of no stated kind is not asked.
      if (isBlank(title.value) || source.kind === null) continue;
      if (paged.has(name.value) || marks.some((key) => described.has(key))) continue;
      report({
        message: 'unfindable',
        span: name.span,
        values: { title: title.value, source: name.value },
        subject: name.value,
      });
    }
  },
  examples: [
    {
      name: 'a title alone',
      sheet: {
        front:
          'sources:\n  m48: { title: Workshop Manual, kind: manual }\n  kit: { title: Kit leaflet, kind: leaflet }',
        settings: 'idle-mixture: { value: 1-1/4 turns out, from: kit }',
      },
      expect: [
        {
          at: 'kit',
          message:
            'nobody can find `Kit leaflet` again: it has no year, and no figure names its page',
          fix: 'add `year: ...` to `kit`, or the page to each `from: kit`',
        },
      ],
    },
    {
      name: 'a page, a year, a number, and units on the bench',
      sheet: {
        front:
          'sources:\n  m48: { title: Workshop Manual }\n  kit: { title: Kit leaflet, year: 1951 }\n  b17: { title: Bulletin, kind: bulletin, number: 17 }\n  card: { title: Shop card }\n  bench: { title: Three units, kind: measured, units: 3 }',
        settings: 'idle-mixture: { value: 1-1/4 turns out, from: [kit, b17, bench, card] }',
      },
      expect: [],
    },
  ],
});
