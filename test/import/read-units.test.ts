import { describe, expect, it } from 'vitest';
import { columnLetters, columnNumber, spans } from '../../src/import/cell-address.ts';
import { namedSheets } from '../../src/import/sheet-ids.ts';
import { tableOf, unitsOf } from './stand.ts';

const heads = 'Maker,Model,Part No.,Float level (in),Idle speed (rpm),Idle vacuum (inHg)';
const list = (...rows: readonly string[]) => [heads, ...rows, ''].join('\n');
const told = (csv: string) => unitsOf(csv).slips.map(({ at, code, could }) => [at, code, ...could]);

describe('rows of a list', () => {
  it('say their units, and nothing is told of sound ones', () => {
    const { units, slips, passed } = unitsOf(list('Orlo,F27,"F27-1, F27-2",13/64,450,19'));
    expect({ slips, passed }).toEqual({ slips: [], passed: [] });
    expect(units[0]).toMatchObject({
      maker: 'Orlo',
      model: 'F27',
      partNumbers: ['F27-1', 'F27-2'],
    });
    expect(
      [...(units[0]?.settings.values() ?? [])].map(({ value, cell }) => [value, cell]),
    ).toEqual([
      ['13/64 in', 'D2'],
      ['450 rpm', 'E2'],
      ['19 inHg', 'F2'],
    ]);
  });

  it('are passed over where they say the heads again, and listed where they name no unit', () => {
    expect(
      told(list('Orlo,F27,,13/64,450,19', heads, 'Larkmoor cars,,,,,', 'Orlo,,,7/32,450,19')),
    ).toEqual([
      ['A4', 'footnote'],
      ['A5', 'nameless'],
    ]);
  });

  it('that are hidden are passed over and told', () => {
    const csv = list('Orlo,F27,,13/64,450,19', 'Orlo,L83,,7/32,450,19', 'Orlo,R35,,7/32,450,19');
    const rows = tableOf(csv).rows.map((row) => ({ ...row, hidden: row.row > 2 }));
    const hidden = { rows, hiddenColumns: new Set([5]) };
    const { units, passed } = unitsOf(csv, {}, hidden);
    expect(units.map(({ model }) => model)).toEqual(['F27']);
    expect(units[0]?.settings.has('idle-speed')).toBe(false);
    expect(passed).toEqual([
      'Hidden and not read: rows 3-4 (`hidden: read` reads them).',
      'Hidden and not read: columns E (`hidden: read` reads them).',
    ]);
    expect(unitsOf(csv, { hidden: 'read' }, hidden).units).toHaveLength(3);
  });

  it('under a merged cell are listed, or taken as the mapping says', () => {
    const csv = list('Orlo,F27,,13/64,450,19', ',L83,,,450,19', 'Orlo,R35,,7/32,450,19');
    const merged = [
      { top: 2, left: 1, bottom: 3, right: 1 },
      { top: 4, left: 4, bottom: 4, right: 5 },
    ];
    const { units, slips } = unitsOf(csv, {}, { merged });
    expect(units.map(({ model }) => model)).toEqual(['F27', 'R35']);
    expect(slips.map(({ at, outcome }) => [at, outcome])).toEqual([
      ['A2:A3', 'row 3 left out'],
      ['D4:E4', 'D4, E4 left blank'],
    ]);
    expect(units[1]?.settings.get('float-level')).toMatchObject({
      value: null,
      unread: 'D4:E4 is one merged cell',
    });
    const repeated = unitsOf(csv, { merged: 'repeat' }, { merged: merged.slice(0, 1) });
    expect(repeated.units.map(({ maker, model }) => `${maker} ${model}`)).toEqual([
      'Orlo F27',
      'Orlo L83',
      'Orlo R35',
    ]);
    expect(repeated.slips).toEqual([]);
  });
});

describe('sizes that read and cannot be right', () => {
  const sound = ['F27', 'L83', 'R35', '1D', '1E'].map((model) => `Orlo,${model},,13/64,450,19`);

  it('are listed with the units in which they would be usual', () => {
    expect(told(list('Orlo,F27,,203,450,19'))).toEqual([['D2', 'unit-doubtful', '203 thou']]);
    expect(told(list('Orlo,F27,,3-8,450,19'))[0]?.slice(0, 3)).toEqual([
      'D2',
      'unit-doubtful',
      '3/8 in',
    ]);
    expect(told(list('Orlo,F27,,13/64,450,64'))).toEqual([
      ['F2', 'unit-doubtful', '64 kPa', '64 cmHg'],
    ]);
  });

  it('are found by the habit of their column where the usual range is too wide for them', () => {
    // Two inches lie inside the usual range of a float level; five sheets of a fifth of one do not.
    expect(told(list(...sound, 'Orlo,2A,,0.00203,450,19'))).toEqual([]);
    const metric = 'Maker,Model,Float level (mm)\n';
    const rows = ['5.1', '5.2', '5.0', '5.3', '5.16', '0.203'].map(
      (size, at) => `Orlo,${at}A,${size}`,
    );
    const { slips } = unitsOf(`${metric}${rows.join('\n')}\n`);
    expect(slips).toMatchObject([
      {
        at: 'C7',
        code: 'unit-doubtful',
        message: '0.203 mm is 25 times as small as the middle one of the 6 given as Float level',
        could: ['0.203 in'],
      },
    ]);
  });

  it('are two of a row that changed places', () => {
    const { slips, units } = unitsOf(list('Orlo,F27,,13/64,19,450'));
    expect(slips).toMatchObject([
      { at: 'E2 and F2', code: 'changed-places', outcome: 'both left blank' },
    ]);
    expect(units[0]?.settings.get('idle-speed')?.value).toBeNull();
  });

  it('are kept and told where nothing else could be meant', () => {
    const { slips, units } = unitsOf(list('Orlo,F27,,13/64,9000,19'));
    expect(slips).toMatchObject([{ at: 'E2', code: 'unusual', outcome: 'kept' }]);
    expect(units[0]?.settings.get('idle-speed')?.value).toBe('9000 rpm');
  });
});

describe('names of sheets', () => {
  const names = (...rows: readonly string[]) => {
    const { named, slips } = namedSheets(unitsOf(list(...rows)).units);
    return { ids: [...named.keys()], at: slips.map(({ at, could }) => [at, ...could]) };
  };

  it('take the part number in where a model is there twice', () => {
    expect(
      names('Orlo,F27,10,13/64,450,19', 'Orlo,F27,11,7/32,450,19', 'Tarn,K35,9,13/64,450,19'),
    ).toEqual({
      ids: ['orlo-f27-10', 'orlo-f27-11', 'tarn-k35'],
      at: [],
    });
  });

  it('stand once for a unit that is there twice, and what differs is told', () => {
    expect(names('Orlo,F27,10,13/64,450,19', 'Orlo,F27,10,7/32,450,19')).toEqual({
      ids: ['orlo-f27'],
      at: [['B3', 'float-level: 13/64 in there, 7/32 in here']],
    });
  });
});

describe('names of cells', () => {
  it('lead there and back', () => {
    for (const column of [1, 26, 27, 52, 702, 703]) {
      expect(columnNumber(columnLetters(column))).toBe(column);
    }
    expect([columnLetters(28), columnNumber('A1'), columnNumber('')]).toEqual(['AB', null, null]);
    expect(spans([3, 1, 2, 7])).toBe('1-3, 7');
  });
});
