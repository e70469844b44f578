import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { tablesModule } from '../../src/build/tables.mjs';
import { formulaInches } from '../../src/gauges/book.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import type { GaugeSystem } from '../../src/quantity/model.ts';
import { rational } from '../../src/quantity/rational.ts';
import { referenceRows } from './reference-tables.ts';

const book = gaugeBook();
const root = resolve(import.meta.dirname, '..', '..');
const INCH = rational('25.4');

function inches(system: GaugeSystem, name: string): string | undefined {
  return book.find(system, name)?.mm.div(INCH).toString();
}

test('the compiled tables are those of the data files (else run node src/build/tables.mjs)', () => {
  expect(readFileSync(join(root, 'src/generated/tables.ts'), 'utf8')).toBe(tablesModule(root));
});

describe('drills, row by row against the reference table (each row names its source)', () => {
  const rows = referenceRows('drills.tsv');

  test('the table is whole', () => expect(rows.length).toBe(97 + 26 + 32 + 232));

  test.each(rows)('$designation is $inch in', ({ designation = '', inch = '' }) => {
    if (designation.endsWith(' mm')) {
      const gauge = book.find('metric-drill', designation);
      expect(gauge?.mm.equals(rational(designation.slice(0, -3)))).toBe(true);
      // The reference rounds the inch to six places.
      expect(gauge?.mm.div(INCH).round(6).equals(rational(inch))).toBe(true);
      return;
    }
    const number = /^#(\d+)$/.exec(designation)?.[1];
    const system = number
      ? 'number-drill'
      : designation.includes('/')
        ? 'fraction-drill'
        : 'letter-drill';
    const gauge = book.find(system, number ?? designation);
    expect(gauge?.mm.equals(rational(inch).mul(INCH))).toBe(true);
    expect(gauge?.unit).toBe('in');
  });

  test('no drill of these systems is missing from the reference, up to its ends', () => {
    expect(book.all('number-drill').length).toBe(97);
    expect(book.all('letter-drill').length).toBe(26);
    expect(book.all('fraction-drill').filter((g) => g.mm.compare('12.7') <= 0).length).toBe(32);
    expect(book.all('metric-drill').length).toBe(232);
  });
});

test('metric drills by the steps of BS 328: 0.2 to 25 mm, and what stands opposite No. 97-93', () => {
  // Ends, steps and changes of step as two open descriptions of the standard have them.
  const all = new Set(book.all('metric-drill').map(({ name }) => name.replace(' mm', '')));
  const there = [
    '0.15',
    '0.19',
    '0.2',
    '0.28',
    '0.98',
    '1',
    '2.95',
    '3',
    '13.1',
    '13.9',
    '14',
    '14.25',
    '14.75',
    '25',
  ];
  expect(there.filter((each) => !all.has(each))).toEqual([]);
  const absent = [
    '0.14',
    '0.21',
    '0.96',
    '1.02',
    '2.98',
    '3.05',
    '13.25',
    '13.95',
    '14.1',
    '25.25',
  ];
  expect(absent.filter((each) => all.has(each))).toEqual([]);
});

test('steel wire No. 21 says both published values', () => {
  const wire = book.find('us-steel-wire', '21');
  expect(wire?.mm.div(INCH).equals(rational('0.0318'))).toBe(true);
  expect(wire?.source).toContain('.0317');
});

describe('wires, row by row against the reference table (each row names its source)', () => {
  const systems: Readonly<Record<string, GaugeSystem>> = {
    AWG: 'awg',
    'SWG(imperial, BS 3737)': 'swg',
    'US steel wire (W&M) - also called SWG': 'us-steel-wire',
    'music wire': 'music-wire',
    'BWG/Stubs iron': 'bwg',
  };
  const stubs = 'Stubs steel wire (NOT drill gauge)';
  const all = referenceRows('wire.tsv');
  const rows = all.filter((row) => row.system !== stubs);

  test('the table is whole', () => expect(all.length).toBe(56 + 57 + 57 + 51 + 41 + 80));

  test.each(rows)('$system $gauge is $inch_rounded in', (row) => {
    const system = systems[row.system ?? ''] ?? 'pin';
    const name = row.gauge ?? '';
    const gauge = book.find(system, name);
    expect(gauge?.mm.equals(rational(row.inch_rounded ?? '').mul(INCH))).toBe(true);
    expect(gauge?.places).toBe(row.inch_rounded?.split('.')[1]?.length);
    if (system === 'awg') expect(formulaInches('awg', name)).toBe(row.inch_full);
  });

  test('and has every gauge that the tables here have', () => {
    for (const [label, system] of Object.entries(systems)) {
      const names = rows.filter((row) => row.system === label).map((row) => row.gauge);
      expect(new Set(book.all(system).map((g) => g.name))).toEqual(new Set(names));
    }
  });

  test('the drill gauge meets the Stubs steel wire gauge at 20, 31, 54 and 71 alone', () => {
    const same = all
      .filter((row) => row.system === stubs)
      .filter((row) =>
        book
          .find('number-drill', row.gauge ?? '')
          ?.mm.equals(rational(row.inch_rounded ?? '').mul(INCH)),
      );
    expect(same.map((row) => row.gauge)).toEqual(['20', '31', '54', '71']);
  });
});

describe('spot values', () => {
  test.each([
    // ASME B94.11M sizes, two independent datasets.
    ['number-drill', '80', '0.0135'],
    ['number-drill', '70', '0.028'],
    ['number-drill', '69', '0.0292'],
    ['number-drill', '60', '0.04'],
    ['number-drill', '56', '0.0465'],
    ['number-drill', '50', '0.07'],
    ['number-drill', '30', '0.1285'],
    ['number-drill', '29', '0.136'],
    ['number-drill', '28', '0.1405'],
    ['number-drill', '1', '0.228'],
    ['letter-drill', 'A', '0.234'],
    ['letter-drill', 'E', '0.25'],
    ['letter-drill', 'Z', '0.413'],
    // ASTM B258; some printed tables chop No. 8 to .1284.
    ['awg', '4/0', '0.46'],
    ['awg', '36', '0.005'],
    ['awg', '8', '0.1285'],
    ['awg', '18', '0.0403'],
    // BS 3737:1964; one well-known library has No. 28 as .0149, which is its error.
    ['swg', '7/0', '0.5'],
    ['swg', '10', '0.128'],
    ['swg', '20', '0.036'],
    ['swg', '27', '0.0164'],
    ['swg', '28', '0.0148'],
    ['swg', '30', '0.0124'],
    ['swg', '50', '0.001'],
    // The same letters in America.
    ['us-steel-wire', '28', '0.0162'],
    ['music-wire', '10', '0.024'],
    ['music-wire', '20', '0.045'],
  ] as const)('%s %s is %s in', (system, name, inch) => {
    expect(inches(system, name)).toBe(inch);
  });

  test('AWG before rounding (ASTM B258, GNU units 2.22)', () => {
    const names = ['10', '18', '20', '24', '30', '40'];
    expect(names.map((name) => formulaInches('awg', name))).toEqual([
      '0.1018971',
      '0.0403027',
      '0.0319615',
      '0.0201008',
      '0.0100252',
      '0.0031445',
    ]);
    expect(formulaInches('swg', '20')).toBeNull();
    expect(formulaInches('awg', '99')).toBeNull();
  });

  test('drills 97 to 81 say that they rest on one source, and the others do not', () => {
    for (const gauge of book.all('number-drill')) {
      expect(gauge.source.includes('single source')).toBe(Number(gauge.name) > 80);
    }
  });

  test('every gauge has a source, and systems stand ascending', () => {
    for (const system of [
      'number-drill',
      'fraction-drill',
      'metric-drill',
      'awg',
      'bwg',
    ] as const) {
      const all = book.all(system);
      expect(all.every((gauge) => gauge.source !== '')).toBe(true);
      all.slice(1).forEach((gauge, i) => {
        expect(gauge.mm.compare(all[i]?.mm ?? 0)).toBe(1);
      });
    }
  });
});
