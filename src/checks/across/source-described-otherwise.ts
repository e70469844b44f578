import type { SharedSources } from '../../sheet/index.ts';
import { defineAcrossCheck } from './define.ts';
import type { SheetFacts, SourceFact } from './facts.ts';
import { plainTitle, saidOtherwise } from './same-source.ts';

/** Very many papers of one name or title are held against the first of them only. */
const most = 40;

interface Standing {
  /** Null for `sources.yaml`. */
  readonly sheet: SheetFacts | null;
  readonly source: SourceFact;
}

/** One paper, described in two ways. */
export default defineAcrossCheck({
  id: 'source-described-otherwise',
  severity: 'warning',
  group: 'across',
  summary: 'Two sheets describe one paper, and not in the same way.',
  explain:
    'The booklet lists the paper twice, with two years or two titles, and a reader who wants to see ' +
    'it looks for one that was never printed. Accept it, on either sheet, where they are two papers ' +
    'that only look like one.',
  messages: {
    sheet: {
      message: 'the {key} of `{source}` is `{own}`, but `{theirs}` in `{other}`',
      fix: 'look at the paper and correct one of the two, or describe it once in `sources.yaml`',
    },
    shared: {
      message: 'the {key} of `{source}` is `{own}`, but `{theirs}` in `sources.yaml`',
      fix: 'look at the paper and correct one of the two, or take the description out of the sheet',
    },
  },
  run(sheets, { sharedSources }, report) {
    const known: Known = new Map();
    for (const standing of sharedStandings(sharedSources ?? null)) keep(known, standing);
    for (const sheet of sheets) {
      for (const source of sheet.sources) {
        const standing = { sheet, source };
        const [other, apart] = firstApart(known, standing) ?? [];
        if (other === undefined || apart === undefined) {
          keep(known, standing);
          continue;
        }
        const [key, own, theirs] = apart;
        const values = { key, source: source.text, own, theirs };
        const where = { sheet, at: source.at, values, compared: [own, theirs] as const };
        const subject = source.text;
        if (other.sheet === null) report({ ...where, message: 'shared', others: [], subject });
        else {
          report({
            ...where,
            message: 'sheet',
            values: { ...values, other: other.sheet.id },
            others: [{ sheet: other.sheet, at: other.source.at, label: 'the same paper there' }],
            subject,
          });
        }
      }
    }
  },
  examples: [
    {
      name: 'two years of one manual',
      sheets: {
        'orlo-f27': {
          front: 'sources: { m48: { title: Wexcombe Four Workshop Manual, year: 1948 } }',
        },
        'orlo-l83': {
          front: 'sources: { m48: { title: Wexcombe Four Workshop Manual, year: 1949 } }',
        },
      },
      expect: [
        {
          in: 'orlo-l83',
          at: 'm48',
          message: 'the year of `m48` is `1949`, but `1948` in `orlo-f27`',
          fix: 'look at the paper and correct one of the two, or describe it once in `sources.yaml`',
          see: [['orlo-f27', 'm48']],
        },
      ],
    },
    {
      name: 'a title with a letter left out, and one under two names',
      sheets: {
        'orlo-f27': {
          front:
            'sources:\n  m48: { title: Wexcombe Four Workshop Manual }\n  b: { title: Bulletin 17, kind: bulletin }',
        },
        'orlo-l83': {
          front:
            'sources:\n  m48: { title: Wexcombe Four Worshop Manual }\n  b17: { title: Bulletin 17, kind: letter }',
        },
      },
      expect: [
        {
          in: 'orlo-l83',
          at: 'm48',
          message:
            'the title of `m48` is `Wexcombe Four Worshop Manual`, but `Wexcombe Four Workshop Manual` in `orlo-f27`',
          fix: 'look at the paper and correct one of the two, or describe it once in `sources.yaml`',
          see: [['orlo-f27', 'm48']],
        },
        {
          in: 'orlo-l83',
          at: 'b17',
          message: 'the kind of `b17` is `letter`, but `bulletin` in `orlo-f27`',
          fix: 'look at the paper and correct one of the two, or describe it once in `sources.yaml`',
          see: [['orlo-f27', 'b']],
        },
      ],
    },
    {
      name: 'otherwise than the shared description',
      sheets: {
        'orlo-f27': { front: 'sources: { shared: { title: Shared Manual, year: 1950 } }' },
      },
      expect: [
        {
          in: 'orlo-f27',
          at: 'shared',
          message: 'the year of `shared` is `1950`, but `1951` in `sources.yaml`',
          fix: 'look at the paper and correct one of the two, or take the description out of the sheet',
          see: [],
        },
      ],
    },
    {
      name: 'two bulletins, two printings under two names, more said in one than in the other',
      sheets: {
        'orlo-f27': {
          front:
            'sources:\n  b: { title: Bulletin 8, year: 1948 }\n  m48: { title: Manual, year: 1948 }\n  x: { title: Leaflet }',
        },
        'orlo-l83': {
          front:
            'sources:\n  b: { title: Bulletin 9, year: 1949 }\n  m50: { title: Manual, year: 1950 }\n  x: { title: Leaflet, kind: leaflet }',
        },
      },
      expect: [],
    },
  ],
});

function sharedStandings(shared: SharedSources | null): Standing[] {
  const at = { file: 'sources.yaml', line: 1, column: 1, endLine: 1, endColumn: 1 };
  return [...(shared ?? [])].map(([text, described]) => ({
    sheet: null,
    source: { text, at, described },
  }));
}

/** What is known under a name or a title, each description once. */
type Known = Map<string, Map<string, Standing>>;

function keep(known: Known, standing: Standing): void {
  const words = JSON.stringify([standing.source.text, standing.source.described]);
  for (const key of keysOf(standing.source)) {
    const all = known.get(key) ?? new Map<string, Standing>();
    if (all.size >= most || all.has(words)) continue;
    all.set(words, standing);
    known.set(key, all);
  }
}

function keysOf({ text, described }: SourceFact): readonly string[] {
  return [`name ${text}`, `title ${plainTitle(described)}`];
}

function firstApart(known: Known, { source }: Standing) {
  for (const key of keysOf(source)) {
    for (const other of known.get(key)?.values() ?? []) {
      const [apart] = saidOtherwise(source, other.source);
      if (apart) return [other, apart] as const;
    }
  }
  return null;
}
