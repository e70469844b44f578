import { beforeAll, describe, expect, test } from 'vitest';
import { builtInKinds } from '../../../src/kinds/index.ts';
import { type BookletModel, bookletModel } from '../../../src/press/booklet/model.ts';
import { render } from '../../../src/press/html/render.ts';
import { demoEdition, demoLast, demoSheets } from '../demo-sheets.ts';
import { builtInTemplates } from '../stand.ts';

const sheets = demoSheets();
const { facts } = demoEdition();
const options = { paper: 'half-letter', draft: false, picture: null } as const;
const model: BookletModel = bookletModel(sheets, facts, { ...options, last: demoLast(sheets) });
const chapterOf = (id: string) => {
  const chapter = model.chapters.find(({ face }) => face.id === id);
  if (!chapter) throw new Error(`no chapter ${id}`);
  return chapter;
};

describe('what is noticed when a setting is out', () => {
  const kind = builtInKinds().get('carburetor');

  // Common practice, no source.
  test.each([
    ['float-level', 'too high', 'flooding'],
    ['float-level', 'too high', 'stalling when hot'],
    ['float-level', 'too high', 'heavy consumption'],
    ['float-level', 'too low', 'flat spot on opening'],
    ['float-level', 'too low', 'surge at speed'],
    ['pump-stroke', 'too short', 'flat spot on opening'],
    ['pump-stroke', 'too long', 'loading up on opening'],
    ['metering-rods', 'too low', 'weak under load'],
    ['choke-cover-index', 'too lean', 'hard cold start'],
    ['choke-cover-index', 'too rich', 'black smoke while warming up'],
    ['fast-idle-cam', 'too early or too late', 'racing while warming up'],
    ['unloader', 'too small', 'flooded engine will not clear'],
    ['idle-mixture', 'out of place', 'rough or hunting idle'],
  ])('%s %s: %s', (setting, way, symptom) => {
    expect(kind?.settings.get(setting)?.symptoms.get(way)).toContain(symptom);
  });

  test('says on a unit what to look at, under the numbers of its settings', () => {
    const orlo = chapterOf('orlo-t71-wexcombe-six');
    const flooding = orlo.checks.find(({ symptom }) => symptom === 'Flooding');
    const level = orlo.settings.find(({ name }) => name === 'float-level');
    expect(flooding?.checks).toContainEqual(
      expect.objectContaining({ number: level?.number, label: 'Float level', way: 'too high' }),
    );
  });

  test('puts first what is cheap to look at: what is read running, then before the start, then on the bench', () => {
    const orlo = chapterOf('orlo-t71-wexcombe-six');
    const labels = (symptom: string) =>
      orlo.checks.find((row) => row.symptom === symptom)?.checks.map(({ label }) => label);
    expect(labels('Stalling when cold')).toEqual([
      'Fast idle speed',
      'Fast idle cam position',
      'Fast idle gap',
    ]);
    // The pressure is read at the inlet, with nothing taken apart; the float lies under the cover.
    expect(labels('Flooding')?.[0]).toBe('Fuel pressure');
  });

  test('fills its three columns, and counts what is left by number', () => {
    for (const { checks } of model.chapters) {
      expect(checks.length).toBeGreaterThan(5);
      for (const row of checks) {
        expect(row.checks.reduce((sum, { span }) => sum + span, 0)).toBe(3);
        if (row.checks.length < 3) expect(row.rest).toBeNull();
      }
    }
  });

  test('leads from a symptom to every unit that has it, by name', () => {
    const flooding = model.faults.find(({ title }) => title === 'Flooding');
    const having = model.chapters.filter(({ checks }) =>
      checks.some(({ symptom }) => symptom === 'Flooding'),
    );
    expect(having.length).toBeGreaterThan(3);
    expect(flooding?.units).toEqual(
      having.map(({ number, checksAnchor, face }) => ({
        number,
        anchor: checksAnchor,
        name: `${face.maker} ${face.model}`,
      })),
    );
  });

  test('stands in the order of the alphabet', () => {
    const titles = model.faults.map(({ title }) => title.toLowerCase());
    expect(titles).toEqual([...titles].sort());
  });
});

describe('the index', () => {
  const entries = model.index.flatMap((letter) => letter.entries);

  test('is in the order of the alphabet, each text once', () => {
    const texts = entries.map(({ text }) => text.toLowerCase());
    expect(texts).toEqual([...new Set(texts)].sort());
  });

  test('leads to a chapter once in a line, and says which it is', () => {
    for (const { places } of entries) {
      const numbers = places.map(({ number }) => number);
      expect(new Set(numbers).size).toBe(numbers.length);
    }
    const level = entries.find(({ text }) => text === 'Float level');
    expect(level?.places.length).toBeGreaterThan(4);
    for (const { number, anchor } of level?.places ?? []) {
      expect(anchor.startsWith(`unit-${number}-`)).toBe(true);
    }
  });

  test('has every part number, vehicle and setting', () => {
    const texts = entries.map(({ text }) => text);
    for (const { sheet } of sheets) {
      for (const { value } of sheet.unit.partNumbers) expect(texts).toContain(value);
    }
    for (const { face, settings } of model.chapters) {
      for (const fits of face.fits) expect(texts).toContain(fits);
      for (const { label } of settings) expect(texts).toContain(label);
    }
  });
});

describe('the pages of the booklet', () => {
  let html = '';
  beforeAll(async () => {
    html = await render('booklet.hbs', model, builtInTemplates());
  });

  test('no page number and no link leads nowhere, and no id stands twice', () => {
    const ids = [...html.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const asked = [...html.matchAll(/(?:data-page-of="|href="#)([^"]+)"/g)].map(([, id]) => id);
    expect(asked.length).toBeGreaterThan(300);
    expect([...new Set(asked)].filter((id) => !ids.includes(id))).toEqual([]);
  });

  test('chapters state no page number, so that none depends on where another stands', () => {
    const chapters = html.split('<section class="chapter"').slice(1);
    const own = chapters.map((each) => each.slice(0, each.indexOf('<section class="part"') >>> 0));
    expect(own.length).toBe(sheets.length);
    for (const chapter of own) expect(chapter).not.toContain('data-page-of');
  });

  test('what changed since the last edition bears a bar, and nothing else does', () => {
    const changed =
      html.match(/<(?:tbody|li|h2|div|p)[^>]* class="[^"]*\bchanged\b[^"]*"[^>]*>/g) ?? [];
    // Float level, dwell and pump nozzle; a table of advance and its whole; two new steps beside one of another.
    expect(changed.filter((each) => each.startsWith('<tbody'))).toHaveLength(5);
    expect(changed.filter((each) => each.startsWith('<li'))).toHaveLength(4);
    expect(changed.filter((each) => each.startsWith('<div'))).toHaveLength(1);
    expect(changed).toHaveLength(10);
  });
});

describe('what changed', () => {
  test('is told by unit with both figures, in the order of the chapters', () => {
    const units = model.changes?.units ?? [];
    expect(units.map(({ number }) => number)).toEqual(
      [...units.map(({ number }) => number)].sort((a, b) => a - b),
    );
    const orlo = units.find(({ title }) => title.startsWith('Orlo T71'));
    expect(orlo?.revision).toBe('revision 1 to 2');
    const level = orlo?.lines.find(({ size }) => size !== null);
    expect(level?.label).toBe('Float level');
    const words = level?.html.replace(/<[^>]*>/g, '').replaceAll('⁄', '/');
    expect(words).toBe('13/64 ± 1/64 in; was 7/32 ± 1/64 in');
    // 7/32 - 13/64 in is 1/64 in, 0.015625 in.
    expect(level?.size).toContain('0.016 in less');
    const row = chapterOf('orlo-t71-wexcombe-six').settings.find(
      ({ label }) => label === 'Float level',
    );
    expect(level?.anchor).toBe(row?.anchor);
    expect(row?.changed).toBe(true);
  });

  test('a new sheet is new as a whole and bears no bar', () => {
    const chapter = chapterOf('tamsel-t15-drayle-350');
    expect(chapter.isNew).toBe(true);
    expect(chapter.settings.some(({ changed }) => changed)).toBe(false);
    const unit = model.changes?.units.find(({ number }) => number === chapter.number);
    expect(unit).toMatchObject({ isNew: true, lines: [] });
  });

  test('nothing is told without a last edition', () => {
    const plain = bookletModel(sheets.slice(0, 1), facts, options);
    expect(plain.changes).toBeNull();
  });
});

describe('figures gathered from the sheets', () => {
  test('a vacuum falls with the barometer, and a least one is rounded up', () => {
    const columns = model.altitudes.flatMap((table) =>
      table.columns.map((column, at) => ({
        ...column,
        at: (altitude: string) =>
          table.rows.find((row) => row.altitude === altitude)?.readings[at] ?? null,
      })),
    );
    const column = columns.find(({ stated }) => stated === '19-1/2 inHg min');
    // The standard barometer is 29.9213 inHg at the sea and 28.8557 at 1000 ft (references: ISO 2533):
    // 19.5 less 1.0656 is 18.4344, and no less may pass.
    expect(column?.at('sea level')).toBe('19-1/2 inHg min');
    expect(column?.at('1000 ft')).toBe('18.5 inHg min');
    const rows = model.altitudes[0]?.rows ?? [];
    expect(rows.filter(({ isClubs }) => isClubs).map(({ altitude }) => altitude)).toEqual([
      '1350 ft',
    ]);
  });

  test('a gauge stands among its neighbors in the table of its sizes', () => {
    const drills = model.gaugeTables.find(({ title }) => title === 'Twist drills in inch sizes');
    const at = drills?.rows.findIndex(({ label }) => label === 'No. 29 drill') ?? -1;
    // ASME B94.11M: No. 30 is .1285, No. 29 .1360, No. 28 .1405, and no fraction lies between.
    expect(
      drills?.rows.slice(at - 1, at + 2).map(({ label, inch, isUsed }) => [label, inch, isUsed]),
    ).toEqual([
      ['No. 30 drill', '0.1285', false],
      ['No. 29 drill', '0.1360', true],
      ['No. 28 drill', '0.1405', false],
    ]);
    for (const { rows } of model.gaugeTables) {
      for (const [index, row] of rows.entries()) {
        const near = [rows[index - 1], row, rows[index + 1]];
        expect(near.some((each) => each?.isUsed)).toBe(true);
      }
    }
  });

  test('a formula is printed for every chapter that shows a figure worked by it, and no other', () => {
    const worked = model.chapters.filter(({ settings }) =>
      settings.some((row) => row.worked.some(({ told }) => told !== null)),
    );
    const named = model.formulas.flatMap(({ usedBy }) => usedBy.map(({ number }) => number));
    expect([...new Set(named)].sort()).toEqual(worked.map(({ number }) => number).sort());
  });
});
