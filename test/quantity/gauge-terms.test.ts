import { describe, expect, test } from 'vitest';
import { namesOf } from '../../src/gauges/index.ts';
import type { GaugeSystem } from '../../src/generated/gauge-systems.ts';
import { referenceRows } from '../gauges/reference-tables.ts';
import { gauges, problemOf, size } from './reading.ts';

const TABLED: readonly GaugeSystem[] = [
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

describe('every gauge of the tables reads, converts exactly and comes back by name', () => {
  test.each(TABLED)('%s', (system) => {
    const all = gauges.all(system);
    expect(all.length).toBeGreaterThan(20);
    for (const gauge of all) {
      const statement = size(gauge.label);
      const amount = statement.nominal;
      expect(amount?.base.equals(gauge.mm), gauge.label).toBe(true);
      expect(amount?.gauge?.system, gauge.label).toBe(system);
      expect(amount?.gauge?.name, gauge.label).toBe(gauge.name);
      expect(statement.text).toBe(gauge.label);
      expect(statement.ambiguous, gauge.label).toEqual([]);
      const names = amount ? namesOf(amount.base).map((each) => each.label) : [];
      expect(names, gauge.label).toContain(gauge.label);
    }
  });

  test('the systems have as many gauges as their standards name', () => {
    const count = (system: GaugeSystem) => gauges.all(system).length;
    expect(count('number-drill')).toBe(97);
    expect(count('letter-drill')).toBe(26);
    // 7/0 to 50: seven above zero, then 0 to 50 (BS 3737:1964 as references.md gives it).
    expect(count('swg')).toBe(57);
  });

  test('every fraction of an inch to 64ths up to an inch is exactly itself', () => {
    for (const d of [2, 4, 8, 16, 32, 64]) {
      for (let n = 1; n < d; n++) {
        const amount = size(`${n}/${d} in`).nominal;
        expect(amount?.base.equals(size(`${(n / d).toFixed(6)} in`).nominal?.base ?? 0)).toBe(true);
        expect(amount?.places).toBeNull();
      }
    }
  });
});

describe('published sizes', () => {
  const drills = referenceRows('drills.tsv');

  test.each([
    // references.md, ASME B94.11M spot values, in inches.
    ['No. 80 drill', '.0135 in'],
    ['No. 70 drill', '.0280 in'],
    ['No. 69 drill', '.0292 in'],
    ['No. 60 drill', '.0400 in'],
    ['No. 56 drill', '.0465 in'],
    ['No. 50 drill', '.0700 in'],
    ['No. 30 drill', '.1285 in'],
    ['No. 28 drill', '.1405 in'],
    ['No. 1 drill', '.2280 in'],
    ['drill A', '.234 in'],
    ['drill E', '1/4 in'],
    ['drill Z', '.413 in'],
    // references.md, AWG rounded as ASTM B258 rounds; imperial SWG of BS 3737:1964; music wire.
    ['10 AWG', '.1019 in'],
    ['8 AWG', '.1285 in'],
    ['40 AWG', '.0031 in'],
    ['7/0 SWG imperial', '.500 in'],
    ['27 SWG imperial', '.0164 in'],
    ['28 SWG imperial', '.0148 in'],
    ['50 SWG imperial', '.0010 in'],
    ['No. 28 US steel wire', '.0162 in'],
    ['No. 10 music wire', '.024 in'],
    ['No. 20 music wire', '.045 in'],
  ])('%s is %s', (name, decimal) => {
    expect(size(name).nominal?.base.equals(size(decimal).nominal?.base ?? 0)).toBe(true);
  });

  test('every number and letter of drills.tsv, however it is typed', () => {
    const named = drills.filter(({ designation = '' }) => /^#\d|^[A-Z]$/.test(designation));
    expect(named).toHaveLength(97 + 26);
    for (const { designation = '', inch } of named) {
      const number = designation.replace('#', '');
      const forms = designation.startsWith('#')
        ? [
            `#${number} drill`,
            `No. ${number} drill`,
            `drill no. ${number}`,
            `NUMBER ${number} DRILL`,
          ]
        : [`drill ${number}`, `${number} drill`, `letter ${number} drill`];
      for (const form of forms) {
        expect(size(form).nominal?.base.equals(size(`${inch} in`).nominal?.base ?? 0), form).toBe(
          true,
        );
      }
    }
  });

  test('the drill gauge and the wire gauges end where they end', () => {
    expect(problemOf('No. 98 drill').code).toBe('no-such-gauge');
    expect(problemOf('51 SWG imperial').code).toBe('no-such-gauge');
    expect(problemOf('No. 46 music wire').code).toBe('no-such-gauge');
    expect(problemOf('8/0 AWG').code).toBe('no-such-gauge');
  });
});
