import { citing } from '../sheet/index.ts';
import type { Citation } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { allOf, nearest } from './vocabulary.ts';

/** `from:` names a source that the sheet does not list. */
export default defineCheck({
  id: 'source-unknown',
  severity: 'error',
  group: 'provenance',
  summary: 'A figure is said to come from a source that the sheet does not list.',
  explain:
    'The booklet prints the list of sources, and the reader finds no such one. It cannot be ' +
    'accepted: list the source, or correct its name.',
  messages: {
    near: {
      message: 'no source `{source}` is listed',
      fix: 'write `{near}`',
      suggest: [{ write: '{near}' }],
    },
    unknown: {
      message: 'no source `{source}` is listed; the sheet has {listed}',
      fix: 'add `{source}: { title: ... }` under `sources:`, or name one of those',
      suggest: [{ source: '{source}' }],
    },
    none: {
      message: 'no source `{source}` is listed; the sheet lists none',
      fix: 'add `sources:` with `{source}: { title: ... }` below it',
      suggest: [{ source: '{source}' }],
    },
  },
  run(sheet, { sharedSources }, report) {
    const known = [...sheet.sources.keys(), ...(sharedSources?.keys() ?? [])];
    const cite = ({ source, id }: Citation, subject: string): void => {
      if (sheet.sources.has(id)) return;
      const { span, value } = source;
      const near = nearest(value, known);
      if (near !== null)
        report({ message: 'near', span, values: { source: value, near }, subject });
      else if (sheet.sources.size === 0) {
        report({ message: 'none', span, values: { source: value }, subject });
      } else {
        const listed = allOf([...sheet.sources.keys()]);
        report({
          message: 'unknown',
          span,
          values: { source: value, listed },
          subject,
          suggest: () => [...sheet.sources.keys()].slice(0, 6).map((write) => ({ write })),
        });
      }
    };
    for (const { id, from, but } of citing(sheet)) {
      const subject = id;
      for (const citation of from) cite(citation, subject);
      for (const dissent of but) if (dissent.from !== null) cite(dissent.from, subject);
    }
  },
  examples: [
    {
      name: 'a source nobody listed',
      sheet: { settings: 'idle-mixture: { value: 1-1/4 turns out, from: leaflet p. 2 }' },
      expect: [
        {
          at: 'leaflet',
          message: 'no source `leaflet` is listed; the sheet has `m48`',
          fix: 'add `leaflet: { title: ... }` under `sources:`, or name one of those',
        },
      ],
    },
    {
      name: 'a misspelt source',
      sheet: {
        front:
          'sources:\n  m48: { title: Workshop Manual }\n  bench: { title: Three units measured }',
        settings: 'idle-mixture: { value: 1-1/4 turns out, from: bnech }',
      },
      expect: [{ at: 'bnech', message: 'no source `bnech` is listed', fix: 'write `bench`' }],
    },
    {
      name: 'a differing figure from a source nobody listed',
      sheet: {
        settings:
          'idle-mixture:\n  value: 1-1/4 turns out\n  from: m48 p. 40\n  but: [{ value: 1 turn out, from: kit, ruling: the leaflet is for a later needle }]',
      },
      expect: [
        {
          at: 'kit',
          message: 'no source `kit` is listed; the sheet has `m48`',
          fix: 'add `kit: { title: ... }` under `sources:`, or name one of those',
        },
      ],
    },
    {
      name: 'no list of sources',
      sheet: {
        front: 'sources: {}\nsettings: { idle-mixture: { value: 1 turn out, from: m48 p. 40 } }',
      },
      expect: [
        {
          at: 'm48',
          message: 'no source `m48` is listed; the sheet lists none',
          fix: 'add `sources:` with `m48: { title: ... }` below it',
        },
      ],
    },
    {
      name: 'listed',
      sheet: {
        front: 'sources:\n  m48: { title: Wexcombe Four Workshop Manual }',
        settings: 'idle-mixture: { value: 1-1/4 turns out, from: m48 p. 40 }',
      },
      expect: [],
    },
  ],
});
