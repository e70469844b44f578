import { isBlank } from '../blank.ts';
import { defineAcrossCheck } from './define.ts';
import type { SheetFacts, SourceFact } from './facts.ts';
import { isSameDescription } from './same-source.ts';

/** One paper, described alike in several places: once would do. */
export default defineAcrossCheck({
  id: 'source-repeated',
  severity: 'note',
  group: 'across',
  summary: 'Several sheets describe one paper in the same words.',
  explain:
    'Described once, in `sources.yaml` beside edition.yaml, a paper is corrected once for all sheets ' +
    'that cite it. `gaugeleaf check --fix` moves it there, where nothing else stands on its lines.',
  messages: {
    sheets: {
      message: '`{source}` is described in the same words in {others}',
      fix: 'describe it once, in `sources.yaml`; check --fix moves it there',
    },
    shared: {
      message: '`{source}` is described in the same words in `sources.yaml`',
      fix: 'take the description out of this sheet; check --fix does',
    },
  },
  run(sheets, { sharedSources }, report) {
    for (const group of repeatedSources(sheets)) {
      const [first] = group;
      if (first === undefined) continue;
      const { text, described } = first.source;
      const shared = sharedSources?.get(text);
      if (shared !== undefined) {
        if (!isSameDescription(shared, described)) continue;
        for (const { sheet, source } of group) {
          const values = { source: text };
          report({ message: 'shared', sheet, at: source.at, others: [], values, subject: text });
        }
      } else if (group.length > 1) {
        const others = group.slice(1).map(({ sheet, source }) => ({
          sheet,
          at: source.at,
          label: 'the same paper there',
        }));
        const named = others.slice(0, 3).map(({ sheet }) => `\`${sheet.id}\``);
        const more = others.length - named.length;
        report({
          message: 'sheets',
          sheet: first.sheet,
          at: first.source.at,
          others,
          values: {
            source: text,
            others: `${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}`,
          },
          subject: text,
        });
      }
    }
  },
  examples: [
    {
      name: 'one manual on two sheets',
      sheets: {
        'orlo-f27': { front: 'sources: { m48: { title: Workshop Manual, year: 1948 } }' },
        'orlo-l83': { front: 'sources:\n  m48:\n    year: 1948\n    title: Workshop Manual' },
      },
      expect: [
        {
          in: 'orlo-f27',
          at: 'm48',
          message: '`m48` is described in the same words in `orlo-l83`',
          fix: 'describe it once, in `sources.yaml`; check --fix moves it there',
          see: [['orlo-l83', 'm48']],
        },
      ],
    },
    {
      name: 'described for all sheets, and again on one',
      sheets: {
        'orlo-f27': { front: 'sources: { shared: { title: Shared Manual, year: 1951 } }' },
      },
      expect: [
        {
          in: 'orlo-f27',
          at: 'shared',
          message: '`shared` is described in the same words in `sources.yaml`',
          fix: 'take the description out of this sheet; check --fix does',
          see: [],
        },
      ],
    },
    {
      name: 'blanks that two drafts have in common',
      sheets: {
        'orlo-f27': { front: 'sources: { s1: { title: fill in, kind: manual, year: 1948 } }' },
        'orlo-l83': { front: 'sources: { s1: { title: fill in, kind: manual, year: 1948 } }' },
      },
      expect: [],
    },
    {
      name: 'one more word on one of them, and units that were measured',
      sheets: {
        'orlo-f27': {
          front:
            'sources:\n  m48: { title: Workshop Manual }\n  bench: { title: Three units, kind: measured, units: 3 }',
        },
        'orlo-l83': {
          front:
            'sources:\n  m48: { title: Workshop Manual, year: 1948 }\n  bench: { title: Three units, kind: measured, units: 3 }',
        },
      },
      expect: [],
    },
  ],
});

/** A source with the sheet that describes it. */
export interface DescribedSource {
  readonly sheet: SheetFacts;
  readonly source: SourceFact;
}

/**
 * The sources of all sheets, those together that have one name and one description, in the order of
 * their first sheets; a source without a title is
 * left out, and one that is still to be filled in.
 */
export function repeatedSources(
  sheets: readonly SheetFacts[],
): readonly (readonly DescribedSource[])[] {
  const groups = new Map<string, DescribedSource[]>();
  for (const sheet of sheets) {
    for (const source of sheet.sources) {
      // Two blanks are alike and say nothing of one paper.
      const { title = '' } = source.described;
      if (
        title.trim() === '' ||
        Object.values(source.described).some((text) => isBlank(text ?? ''))
      )
        continue;
      const words = Object.entries(source.described).sort(([a], [b]) => (a < b ? -1 : 1));
      const key = JSON.stringify([source.text, words]);
      const group = groups.get(key) ?? [];
      group.push({ sheet, source });
      groups.set(key, group);
    }
  }
  return [...groups.values()];
}
