import { citing } from '../sheet/index.ts';
import type { Citation } from '../sheet/model.ts';
import { defineCheck } from './define.ts';

/** A citation without its page, of a source whose pages the sheet gives elsewhere. */
export default defineCheck({
  id: 'page-unsaid',
  severity: 'note',
  group: 'provenance',
  summary: 'A figure is cited without its page, from a source that is cited by the page elsewhere.',
  explain:
    'Whoever doubts the figure has to read the whole paper to find it. The source has pages, since other ' +
    'figures of the sheet are cited by them: this one was left out.',
  messages: {
    unsaid: {
      message: '`{setting}` is cited from `{source}` without a page, and `{other}` with {page}',
      fix: 'add the page of `{source}` that states it',
      suggest: [{ before: '', behind: ' p. fill in' }],
    },
  },
  run(sheet, _context, report) {
    const paged = new Map<string, { readonly citation: Citation; readonly setting: string }>();
    const bare: { readonly citation: Citation; readonly setting: string; readonly name: string }[] =
      [];
    for (const { id, name, from, but } of citing(sheet)) {
      const cited = [...from, ...but.flatMap((dissent) => dissent.from ?? [])];
      for (const citation of cited) {
        if (citation.page === null) bare.push({ citation, setting: id, name: name.value });
        else if (!paged.has(citation.id)) paged.set(citation.id, { citation, setting: name.value });
      }
    }
    for (const { citation, setting, name } of bare) {
      const other = paged.get(citation.id);
      if (!other || sheet.sources.get(citation.id)?.kind?.value === 'measured') continue;
      report({
        message: 'unsaid',
        span: citation.span,
        values: {
          setting: name,
          source: citation.source.value,
          other: other.setting,
          page: `p. ${other.citation.page?.replace(/^pp?\.\s*/, '')}`,
        },
        related: [{ span: other.citation.span, label: 'with its page' }],
        subject: setting,
      });
    }
  },
  examples: [
    {
      name: 'one figure without the page that the others have',
      sheet: { settings: 'pump-stroke: { value: 7/16 in, link: middle hole, from: m48 }' },
      expect: [
        {
          at: 'm48',
          message: '`pump-stroke` is cited from `m48` without a page, and `float-level` with p. 31',
          fix: 'add the page of `m48` that states it',
        },
      ],
    },
    {
      name: 'a leaflet that no figure is cited from by the page',
      sheet: {
        front:
          'sources:\n  m48: { title: Wexcombe Four Workshop Manual, kind: manual, year: 1948 }\n  k: { title: Kit leaflet, kind: leaflet, year: 1950 }',
        settings: 'pump-stroke: { value: 7/16 in, link: middle hole, from: k }',
      },
      expect: [],
    },
  ],
});
