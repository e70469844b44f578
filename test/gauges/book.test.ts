import { describe, expect, test } from 'vitest';
import { gaugeBook, thread } from '../../src/gauges/index.ts';
import type { GaugeSystem } from '../../src/quantity/model.ts';

const book = gaugeBook();

describe('names that are found', () => {
  test.each([
    ['number-drill', '29', 'No. 29 drill'],
    ['number-drill', 'No. 29', 'No. 29 drill'],
    ['number-drill', '#29', 'No. 29 drill'],
    ['letter-drill', 'e', 'drill E'],
    ['letter-drill', 'E', 'drill E'],
    ['fraction-drill', '13/64', '13/64 drill'],
    ['fraction-drill', '1-1/16', '1-1/16 drill'],
    ['fraction-drill', '1 1/16', '1-1/16 drill'],
    ['fraction-drill', '13/64 in', '13/64 drill'],
    ['fraction-drill', '1', '1 in drill'],
    ['metric-drill', '3.5', '3.5 mm drill'],
    ['metric-drill', '3.50', '3.5 mm drill'],
    ['metric-drill', '3,5 mm', '3.5 mm drill'],
    ['metric-drill', '.22', '0.22 mm drill'],
    ['metric-drill', '13.5', '13.5 mm drill'],
    ['awg', '4/0', '4/0 AWG'],
    ['awg', '0000', '4/0 AWG'],
    ['awg', '1/0', '0 AWG'],
    ['awg', '0', '0 AWG'],
    ['awg', 'No. 20', '20 AWG'],
    ['swg', '7/0', '7/0 SWG imperial'],
    ['swg', '0000000', '7/0 SWG imperial'],
    ['swg', '22', '22 SWG imperial'],
    ['us-steel-wire', '22', 'No. 22 US steel wire'],
    ['music-wire', '10', 'No. 10 music wire'],
    ['bwg', '00', '2/0 BWG'],
  ] as const)('%s %s', (system, name, label) => {
    expect(book.find(system, name)?.label).toBe(label);
  });
});

describe('names that no gauge has', () => {
  test.each([
    ['number-drill', '0'],
    ['number-drill', '98'],
    ['number-drill', '029'],
    ['number-drill', 'E'],
    ['letter-drill', 'AA'],
    ['letter-drill', '1'],
    ['fraction-drill', '14/64'],
    ['fraction-drill', '2/4'],
    ['fraction-drill', '13/65'],
    ['fraction-drill', '0/64'],
    ['fraction-drill', '5/0'],
    ['fraction-drill', '65/64'],
    ['fraction-drill', ''],
    ['metric-drill', '3.55'],
    ['metric-drill', '0.21'],
    ['metric-drill', '0'],
    ['metric-drill', ''],
    ['metric-drill', 'mm'],
    ['awg', '7/0'],
    ['awg', '51'],
    ['awg', '-1'],
    ['swg', '8/0'],
    ['us-steel-wire', '22.5'],
    ['number-drill', 'toString'],
    ['awg', '__proto__'],
  ] as const)('%s %s', (system, name) => {
    expect(book.find(system, name)).toBeNull();
  });
});

describe('gauges named by their own size', () => {
  test.each([
    ['wire', '0.026 in', '0.026 in wire', '0.6604', 3, 'in'],
    ['wire', '.026"', '0.026 in wire', '0.6604', 3, 'in'],
    ['wire', '26 thou', '0.026 in wire', '0.6604', 3, 'in'],
    ['wire', '0,65 mm', '0.65 mm wire', '0.65', 2, 'mm'],
    ['wire', '0.650 mm', '0.650 mm wire', '0.65', 3, 'mm'],
    ['wire', '1/32 in', '1/32 in wire', '0.79375', null, 'in'],
    ['leaf', '0.0015 in', '0.0015 in leaf', '0.0381', 4, 'in'],
    ['leaf', '1 mm', '1 mm leaf', '1', 0, 'mm'],
    ['pin', '1-1/16 in', '1-1/16 in pin', '26.9875', null, 'in'],
  ] as const)('%s %s', (system, name, label, mm, places, unit) => {
    const gauge = book.find(system, name);
    expect(gauge).toMatchObject({ system, label, places, unit });
    expect(gauge?.mm.equals(mm)).toBe(true);
  });

  test.each([
    '0 in',
    '0.000 mm',
    '0/64 in',
    '1/0 in',
    '0.026',
    '26',
    '-0.026 in',
    'in',
    '. in',
    '',
  ])('`%s` is none', (name) => expect(book.find('wire', name)).toBeNull());

  test('they are not listed: any size is one', () => {
    for (const system of ['wire', 'leaf', 'pin'] as const) expect(book.all(system)).toEqual([]);
  });
});

test('a very long name is refused at once', () => {
  const long = `1${' '.repeat(100_000)}!`;
  const started = performance.now();
  for (const system of ['number-drill', 'fraction-drill', 'metric-drill', 'awg', 'wire'] as const) {
    expect(book.find(system, long)).toBeNull();
  }
  expect(thread(long)).toBeNull();
  expect(thread(`M${long}`)).toBeNull();
  expect(performance.now() - started).toBeLessThan(1_000);
});

test('every gauge of every table is found again by its name and by nothing that would be lost', () => {
  const systems: GaugeSystem[] = [
    'number-drill',
    'letter-drill',
    'fraction-drill',
    'metric-drill',
    'awg',
    'swg',
    'us-steel-wire',
    'music-wire',
    'bwg',
  ];
  for (const system of systems) {
    expect(book.all(system).length).toBeGreaterThan(25);
    for (const gauge of book.all(system)) expect(book.find(system, gauge.name)).toBe(gauge);
  }
});
