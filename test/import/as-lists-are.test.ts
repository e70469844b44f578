import { describe, expect, it } from 'vitest';
import { targetText } from '../../src/import/mapping.ts';
import { readMapping } from '../../src/import/read-mapping.ts';
import { namedSheets } from '../../src/import/sheet-ids.ts';
import { withUnit } from '../../src/import/written-size.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { proposed, tools, unitsOf } from './stand.ts';

const targets = (csv: string) =>
  proposed(csv).columns.map(({ to, unit, confidence }) => [targetText(to), unit, confidence]);

describe('a unit that is there twice', () => {
  const twice = (heads: string, first: string, second: string) => {
    const { units } = unitsOf(`Maker,Model,${heads}\nOrlo,F27,${first}\nOrlo,F27,${second}\n`);
    return namedSheets(units).slips.map(({ message, could }) => [message, ...could]);
  };

  it('is said to be the same only where every cell is', () => {
    expect(twice('Float level (in),Remarks', '13/64,early', '13/64,early')).toEqual([
      ['Orlo F27 stands in row 2 already, the same in every cell'],
    ]);
  });

  it.each([
    ['Float level (in)', '13/64', '7/32', 'float-level: 13/64 in there, 7/32 in here'],
    ['Float level (in)', '13/64', '', 'float-level: 13/64 in there, nothing here'],
    [
      'Float level (in),Float level (mm)',
      '13/64,5.16',
      '13/64,5.61',
      'float-level, also: 5.16 mm there, 5.61 mm here',
    ],
    [
      'Float level (in),Float level gasket',
      '13/64,removed',
      '13/64,fitted',
      'float-level, gasket: removed there, fitted here',
    ],
    [
      'Float level (in),Car',
      '13/64,Wexcombe',
      '13/64,Larkmoor',
      'fits: Wexcombe there, Larkmoor here',
    ],
    [
      'Float level (in),Years,Car',
      '13/64,1948,Wexcombe',
      '13/64,1950,Wexcombe',
      'fits: Wexcombe 1948 there, Wexcombe 1950 here',
    ],
    [
      'Float level (in),Throttle bore (in)',
      '13/64,1-1/4',
      '13/64,1-3/8',
      'throttle-bore: 1-1/4 in there, 1-3/8 in here',
    ],
    ['Float level (in),Remarks', '13/64,early', '13/64,late', 'note: early there, late here'],
    [
      'Float level (in),Pump',
      '13/64,yes',
      '13/64,no',
      'features: single-barrel, downdraft, pump there, single-barrel, downdraft here',
    ],
    [
      'Float level (in),Source',
      '13/64,Blue Book',
      '13/64,Red Book',
      'float-level, source: Blue Book there, Red Book here',
    ],
  ])('differs in %s, and that is told', (heads, first, second, difference) => {
    expect(twice(heads, first, second)).toEqual([
      ['Orlo F27 stands in row 2 already, and says otherwise', difference],
    ]);
  });
});

describe('a unit put around a number', () => {
  it.each([
    ['29', 'No. {} drill', 'No. 29 drill'],
    ['No. 29', 'No. {} drill', 'No. 29 drill'],
    ['no 29', 'No. {} drill', 'No. 29 drill'],
    ['#29', 'No. {} drill', 'No. 29 drill'],
    ['29 drill', 'No. {} drill', 'No. 29 drill'],
    ['No. 29 drill', 'No. {} drill', 'No. 29 drill'],
    ['No.29', 'No. {} drill', 'No. 29 drill'],
    ['22', '{} SWG', '22 SWG'],
    ['22 SWG', '{} SWG', '22 SWG'],
    ['22 swg', '{} SWG', '22 SWG'],
    ['13/64', 'in', '13/64 in'],
    ['1/2', '"', '1/2"'],
  ])('%s in %s is %s', (text, unit, written) => {
    expect(withUnit(text, unit)).toBe(written);
  });
});

describe('a head that the values below it speak against', () => {
  const list = (head: string, ...values: string[]) =>
    `Maker,Model,Float level (in),${head}\n${values.map((value, at) => `Orlo,F${at + 10},13/64,${value}`).join('\n')}\n`;
  it.each([
    ['Fast idle', ['1400', '1450', '1500'], 'fast-idle-speed'],
    ['Fast idle gap', ['0.026 in wire', '22 SWG', '0.028 in wire'], 'fast-idle-gap'],
    // A gap of the throttle and a clearance of the cam are both such sizes: the editor has to say.
    ['Fast idle', ['0.026 in wire', '22 SWG', '0.028 in wire'], 'nothing'],
    ['Fast idle', ['1400 rpm', '1450 rpm'], 'fast-idle-speed'],
    ['Idle mixture', ['1-1/4 turns out', '1 turn out'], 'idle-mixture'],
    ['Pump', ['12 cm3 per 10 strokes', '10 cm3 per 10 strokes'], 'pump-delivery'],
    ['Pump', ['7/16 in', '13/32 in'], 'pump-stroke'],
    ['Pump', ['yes', 'no'], 'has pump'],
    ['Idle', ['475 rpm', '500 rpm'], 'idle-speed'],
    ['Idle', ['19 inHg', '18 inHg'], 'idle-vacuum'],
    ['Unloader drill', ['29', '30'], 'unloader'],
  ])('%s over %s', (head, values, target) => {
    const [, , , guess] = targets(list(head, ...values));
    expect(guess?.[0]).toBe(target);
  });

  it('is never sure, and says what stands against it', () => {
    const { columns } = proposed(list('Idle speed', 'brass', 'zinc', 'brass'));
    expect(columns[3]).toMatchObject({ confidence: 'likely' });
    expect(columns[3]?.because).toContain('3 of 3 values below are no size of it');
  });
});

describe('a row that gives a setting in one of two columns only', () => {
  const heads = 'Maker,Model,Float level (in),Float level (mm),Idle speed (rpm)';
  const level = (row: string, order = heads) =>
    unitsOf(`${order}\n${row}\n`).units[0]?.settings.get('float-level');

  it('has that one for its value, with its cell', () => {
    expect(level('Orlo,F27,,5.16,450')).toMatchObject({ value: '5.16 mm', cell: 'D2', also: [] });
    expect(level('Orlo,F27,13/64,,450')).toMatchObject({ value: '13/64 in', cell: 'C2', also: [] });
    expect(level('Orlo,F27,13/64,5.16,450')).toMatchObject({
      value: '13/64 in',
      also: ['5.16 mm'],
    });
  });

  it('keeps its blank where the other column cannot be read', () => {
    expect(level('Orlo,F27,3-Aug-48,5.16,450')).toMatchObject({ value: null, also: ['5.16 mm'] });
  });
});

describe('cells that changed places', () => {
  const heads =
    'Maker,Model,Float level (in),Idle speed (rpm),Idle vacuum (inHg),Fuel pressure (psi)';
  const told = (row: string) =>
    unitsOf(`${heads}\n${row}\n`).slips.map(({ at, code, outcome }) => [at, code, outcome]);
  it.each([
    ['Orlo,F27,13/64,19,450,4', 'D2 and E2'],
    ['Orlo,F27,450,13/64,19,4', 'C2 and D2'],
    ['Orlo,F27,13/64,19 inHg,450 rpm,4', 'D2 and E2'],
    ['Orlo,F27,13/64,4 psi,19,450 rpm', 'D2 and F2'],
    ['Orlo,F27,450 rpm,13/64 in,19,4', 'C2 and D2'],
  ])('%s are named as such', (row, at) => {
    expect(told(row)).toEqual([[at, 'changed-places', 'both left blank']]);
  });

  it('are no more than unreadable where one alone is', () => {
    expect(told('Orlo,F27,13/64,19 inHg,19,4')).toEqual([['D2', 'dimension', 'left blank']]);
  });
});

describe('columns of words', () => {
  const featuresOf = (csv: string) =>
    unitsOf(csv, { features: [] }).units.map(({ features }) => features.join(' '));

  it('say features, by themselves or with their head', () => {
    expect(
      featuresOf(
        'Maker,Model,Barrels,Draft,Choke,Pump,Float level (in)\nOrlo,F27,2,down,auto,yes,13/64\nOrlo,L83,1,side,manual,no,13/64\n',
      ),
    ).toEqual(['two-barrel downdraft automatic-choke pump', 'single-barrel side-draft hand-choke']);
    expect(
      featuresOf(
        'Maker,Model,Bores,Draught,Float level (in)\nOrlo,F27,2 barrel,downdraught,13/64\nOrlo,L83,single barrel,updraught,13/64\n',
      ),
    ).toEqual(['two-barrel downdraft', 'single-barrel updraft']);
  });

  it('may be several `features` columns of a mapping', () => {
    const text =
      'gaugeleaf-mapping: 1\nheads: 1\nlayout: row-is-unit\nkind: carburetor\ncolumns:\n' +
      '  A: { head: A, to: maker }\n  B: { head: B, to: model }\n  C: { head: C, to: features }\n  D: { head: D, to: features }\n';
    expect(readMapping(text, builtInKinds(), tools).faults).toEqual([]);
  });

  it('are told where a word is no feature', () => {
    const { slips } = unitsOf(
      'Maker,Model,Barrels,Draft,Float level (in)\nOrlo,F27,2,down,13/64\nOrlo,L83,7,down,13/64\nOrlo,R35,1,down,13/64\n',
      { features: [] },
    );
    expect(slips.filter(({ at }) => at === 'C3').map(({ message }) => message)).toContain(
      'a carburetor has no feature called `7`',
    );
  });
});
