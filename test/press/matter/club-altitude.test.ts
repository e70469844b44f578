import { describe, expect, test } from 'vitest';
import { bookletModel } from '../../../src/press/booklet/model.ts';
import { demoEdition, demoSheets } from '../demo-sheets.ts';

// In a booklet for a club's altitude the club's figure stands in the step and in the large type, with the
// source's beside it in small; the table of vacuum says the same.

const sheets = demoSheets();
const { facts } = demoEdition();
const model = bookletModel(sheets, facts, { paper: 'letter', draft: false, picture: null });
const chapter = (id: string) => model.chapters.find(({ face }) => face.id === id);
const plain = (html: string) => html.replace(/<[^>]*>/g, '');
const vacuum = (id: string) => chapter(id)?.settings.find(({ name }) => name === 'idle-vacuum');

describe('a reading of the demo, whose club is at 1350 ft', () => {
  test('stands as the sheet states it for the club, with the source’s behind it', () => {
    const row = vacuum('orlo-t71-wexcombe-six');
    expect(row?.values[0]).toMatchObject({
      large: '17.1 inHg min',
      written: '18-1/2 inHg min',
      club: { altitude: '1350 ft', readAt: 'sea level', worked: false },
    });
    expect(row?.where ?? '').not.toContain('at club');
  });

  test('stands as worked where the sheet has none for the club, and is told as that once', () => {
    const row = vacuum('dunnow-c31-tollgarth-eight');
    expect(row?.values[0]).toMatchObject({ large: '18.1 inHg min', club: { worked: true } });
    // What its five units came to stands there, and no second figure for the club.
    expect(row?.worked.map(({ label }) => label)).toEqual(['mean of 5 units']);
  });

  test('stands in the step with the source’s behind it', () => {
    const steps = chapter('orlo-t71-wexcombe-six')
      ?.operations.map(({ html }) => plain(html))
      .join('');
    expect(steps).toContain('Read the gauge: 17.1 inHg min (sea level 18');
  });

  test('is the same in the table of vacuum, and at its own altitude as the source wrote it', () => {
    const table = model.altitudes[0];
    const [column] = (table?.columns ?? []).flatMap((each, index) =>
      each.title.startsWith('Orlo T71') ? [index] : [],
    );
    const at = (altitude: string) =>
      table?.rows.find((row) => row.altitude === altitude)?.readings[column ?? -1];
    expect(at('1350 ft')).toBe('17.1 inHg min');
    expect(at('sea level')).toBe('18-1/2 inHg min');
  });

  test('is the source’s own where the edition names no altitude', () => {
    const other = bookletModel(
      sheets,
      { ...facts, altitude: null },
      { paper: 'letter', draft: false, picture: null },
    );
    const rows = other.chapters.flatMap(({ settings }) => settings.flatMap(({ values }) => values));
    expect(rows.filter(({ large, written, club }) => club !== null || large !== written)).toEqual(
      [],
    );
  });
});
