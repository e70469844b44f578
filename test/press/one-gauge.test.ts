import { describe, expect, test } from 'vitest';
import { bookletModel } from '../../src/press/booklet/model.ts';
import { cardModel } from '../../src/press/card/model.ts';
import { gaugesToGather } from '../../src/press/matter/gauges-to-gather.ts';
import { unitMatter } from '../../src/press/site/unit-model.ts';
import { demoEdition, demoSheets } from './demo-sheets.ts';

// One resolved gauge a setting: card, booklet, pages and the list of gauges name the same.

const sheets = demoSheets();
const { facts } = demoEdition();
const booklet = bookletModel(sheets, facts, { paper: 'half-letter', draft: false, picture: null });
const { kit: gathered } = gaugesToGather(sheets, facts.kit ?? undefined);

type Rows = readonly { readonly label: string; readonly gauge: string | null }[];
const gauges = (rows: Rows) => rows.map(({ label, gauge }) => `${label}: ${gauge ?? 'none'}`);

describe.each(sheets.map((entry, index) => ({ name: entry.sheet.file, entry, index })))(
  'of $name',
  ({ entry, index }) => {
    const rows = booklet.chapters[index]?.settings ?? [];

    test('the card names what the chapter names, and so do the pages', () => {
      const card = cardModel(entry.sheet, [], facts, {
        paper: 'letter',
        draft: false,
        picture: null,
        capHeights: new Map(),
        readings: null,
        gathered,
      });
      const page = unitMatter(entry, index + 1, {
        facts: { altitude: null, kit: facts.kit ?? null, gathered },
        picture: null,
        texts: new Map(),
        pages: new Set(),
      });
      expect(gauges(card.settings)).toEqual(gauges(rows));
      expect(gauges(page.settings)).toEqual(gauges(rows));
      const isGauged = [...entry.sheet.settings.values()].some(({ gauge, go }) => gauge ?? go);
      if (isGauged) expect(rows.flatMap((row) => row.gauges).length).toBeGreaterThan(0);
    });

    test('whatever is chosen stands in the list of gauges, with what it is for', () => {
      const lines = booklet.gauges.flatMap((group) => group.gauges);
      for (const { label, gauges: resolved } of rows) {
        for (const { chosen, take, go, noGo } of resolved) {
          if (!chosen) continue;
          // Leaves that are laid together stand there one by one.
          const single = [take, go, noGo].filter(
            (each) => each !== null && !/together$/.test(each),
          );
          for (const gauge of single) {
            const line = lines.find((each) => each.label === gauge);
            const uses = line?.usedBy.filter(({ number }) => number === index + 1) ?? [];
            expect(
              uses.map(({ settings }) => settings).join(', '),
              `${gauge} for ${label}`,
            ).toContain(label);
          }
        }
      }
    });
  },
);
