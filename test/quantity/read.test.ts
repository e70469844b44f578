import { describe, expect, test } from 'vitest';
import { exactText, inUnit } from '../../src/quantity/index.ts';
import type { Dimension } from '../../src/quantity/model.ts';
import { writeStatement } from '../../src/quantity/write.ts';
import { facts, gauges, problemOf, size } from './reading.ts';

/*
 * The forms are those of trade.md, "How settings are written"; the values were worked by hand from
 * 1 in = 25.4 mm and the gauge sizes of references.md. Base units: mm, turns, rpm, Pa, mL a stroke.
 */
type Row = readonly [text: string, facts: Record<string, unknown>];

function length(is: string, more: Record<string, unknown> = {}) {
  return { dimension: 'length', form: 'exact', is, ...more };
}

function turns(is: string, more: Record<string, unknown> = {}) {
  return { dimension: 'turns', form: 'exact', is, ...more };
}

const fractions: readonly Row[] = [
  ['13/64 in', length('5.159375')],
  ['1-7/16 in', length('36.5125')],
  ['1 7/16"', length('36.5125')],
  ['.203 in', length('5.1562', { places: 3 })],
  ['0.203"', length('5.1562', { places: 3 })],
  ['0.2030 in', length('5.1562', { places: 4 })],
  ['5.16 mm', length('5.16', { places: 2 })],
  ['5,16 mm', length('5.16', { places: 2 })],
  ['5 mm', length('5', { places: 0 })],
  // Ways of typing and typesetting the same.
  ['13⁄64 in', length('5.159375')],
  ['¹³⁄₆₄ in', length('5.159375')],
  ['13/64\u00A0in', length('5.159375')],
  ['13/64in', length('5.159375')],
  ['13/64-inch', length('5.159375')],
  ['13/64 in.', length('5.159375')],
  ['13/64 INCHES', length('5.159375')],
  ['13/64 of an inch', length('5.159375')],
  ['13/64″', length('5.159375')],
  ['13/64”', length('5.159375')],
  ["13/64''", length('5.159375')],
  ['1–7/16 in', length('36.5125')],
  ['1 ½ in', length('38.1')],
  ['1½ ins.', length('38.1')],
  ['½"', length('12.7')],
  ['·018 in', length('0.4572', { places: 3 })],
  ['5·16 mm', length('5.16', { places: 2 })],
  ['5.16 millimetres', length('5.16', { places: 2 })],
  ['5.16 Millimeters', length('5.16', { places: 2 })],
  ['18 thou', length('0.4572', { places: 0 })],
  ['18 thousandths of an inch', length('0.4572', { places: 0 })],
  ['  13/64 in ', length('5.159375')],
];

const named: readonly Row[] = [
  ['No. 29 drill', length('3.4544', { gauge: 'No. 29 drill' })],
  ['#29 drill', length('3.4544', { gauge: 'No. 29 drill' })],
  ['No 29 drill', length('3.4544', { gauge: 'No. 29 drill' })],
  ['No.29 twist drill', length('3.4544', { gauge: 'No. 29 drill' })],
  ['drill No. 29', length('3.4544', { gauge: 'No. 29 drill' })],
  ['drill #29', length('3.4544', { gauge: 'No. 29 drill' })],
  ['number 29 drill bit', length('3.4544', { gauge: 'No. 29 drill' })],
  ['№ 29 drill', length('3.4544', { gauge: 'No. 29 drill' })],
  ['drill E', length('6.35', { gauge: 'drill E' })],
  ['letter E drill', length('6.35', { gauge: 'drill E' })],
  ['E drill', length('6.35', { gauge: 'drill E' })],
  ['drill size e', length('6.35', { gauge: 'drill E' })],
  ['3.5 mm drill', length('3.5', { gauge: '3.5 mm drill' })],
  ['3,5 mm drill', length('3.5', { gauge: '3.5 mm drill' })],
  ['9/64 drill', length('3.571875', { gauge: '9/64 drill' })],
  ['9/64" drill', length('3.571875', { gauge: '9/64 drill' })],
  ['9/64-in. drill', length('3.571875', { gauge: '9/64 drill' })],
  ['0.136 in drill', length('3.4544', { gauge: 'No. 29 drill' })],
  ['0.026 in wire', length('0.6604', { places: 3, gauge: '0.026 in wire' })],
  ['.026" wire feeler', length('0.6604', { places: 3, gauge: '0.026 in wire' })],
  ['0.65 mm wire', length('0.65', { places: 2, gauge: '0.65 mm wire' })],
  ['22 SWG imperial', length('0.7112', { gauge: '22 SWG imperial' })],
  ['No. 20 AWG', length('0.8128', { places: 4, gauge: '20 AWG' })],
  ['AWG 20', length('0.8128', { places: 4, gauge: '20 AWG' })],
  ['4/0 AWG', length('11.684', { places: 4, gauge: '4/0 AWG' })],
  ['No. 10 music wire', length('0.6096', { gauge: 'No. 10 music wire' })],
  ['0.015 in leaf', length('0.381', { places: 3, gauge: '0.015 in leaf' })],
  ['15 thou feeler', length('0.381', { places: 0, gauge: '0.015 in leaf' })],
];

function limits(form: string, low: string | null, high: string | null, more = {}) {
  const ends = { ...(low === null ? {} : { low }), ...(high === null ? {} : { high }) };
  return { dimension: 'length', form, ...ends, ...more };
}

const FLOAT = limits('tolerance', '4.7625', '5.55625', { is: '5.159375' });
const PLUS = limits('tolerance', '5.1562', '5.4102', { is: '5.1562', places: 3 });
const FEELER = limits('range', '0.4572', '0.5588');

const limited: readonly Row[] = [
  ['13/64 ± 1/64 in', FLOAT],
  ['13/64 +/- 1/64 in', FLOAT],
  ['13/64±1/64"', FLOAT],
  ['13/64 in ± 1/64 in', FLOAT],
  ['13/64 in (± 1/64 in)', FLOAT],
  ['13/64 (± 1/64) in', FLOAT],
  ['13/64 plus or minus 1/64 inch', FLOAT],
  ['13/64 IN +- 1/64 IN', FLOAT],
  ['0.203 +0.010/-0 in', PLUS],
  ['0.203 +0.010/−0 in', PLUS],
  ['0.203 in +0.010, -0', PLUS],
  ['0.203 -0 +0.010 in', PLUS],
  ['0.203 (+0.010/-0) in', PLUS],
  ['13/64 in ± 0.4 mm', limits('tolerance', '4.759375', '5.559375', { is: '5.159375' })],
  ['0.018–0.022 in', FEELER],
  ['0.018-0.022 in', FEELER],
  ['0.018 — 0.022 in', FEELER],
  ['.018"-.022"', FEELER],
  ['.018/.022 in', FEELER],
  ['18 to 22 thou', FEELER],
  ['between 18 and 22 thou', FEELER],
  ['from 18 to 22 thou', FEELER],
  ['0.018 in to 0.5588 mm', FEELER],
  ['No. 55 to No. 53 drill', limits('range', '1.3208', '1.5113')],
  ['0.020 in min', limits('min', '0.508', null)],
  ['0.020 in (min.)', limits('min', '0.508', null)],
  ['min. 0.020 in', limits('min', '0.508', null)],
  ['at least 0.020 in', limits('min', '0.508', null)],
  ['≥ 0.020 in', limits('min', '0.508', null)],
  ['0.020 in or more', limits('min', '0.508', null)],
  ['0.5 mm max', limits('max', null, '0.5')],
  ['0.5 mm maximum', limits('max', null, '0.5')],
  ['not more than 0.5 mm', limits('max', null, '0.5')],
  ['0.5 mm or less', limits('max', null, '0.5')],
];

const counted: readonly Row[] = [
  ['about 1/2 turn', turns('0.5', { about: true })],
  ['approx. ½ turn', turns('0.5', { about: true })],
  ['half a turn', turns('0.5')],
  ['1 turn out', turns('1', { sense: 'out' })],
  ['one turn out', turns('1', { sense: 'out' })],
  ['three-quarters of a turn out', turns('0.75', { sense: 'out' })],
  ['one and a half turns out', turns('1.5', { sense: 'out' })],
  [
    '1-1/2 ± 1/4 turns out',
    turns('1.5', { form: 'tolerance', low: '1.25', high: '1.75', sense: 'out' }),
  ],
  [
    '1-1/4 to 1-3/4 turns out',
    { dimension: 'turns', form: 'range', low: '1.25', high: '1.75', sense: 'out' },
  ],
  ['1–1½ turns out', { dimension: 'turns', form: 'range', low: '1', high: '1.5', sense: 'out' }],
  ['1.5 turns', turns('1.5', { places: 1 })],
  [
    '1/2 turn in after contact',
    turns('0.5', { sense: 'in', datum: 'contact', qualifier: 'after contact' }),
  ],
  [
    '1 turn out from lightly seated',
    turns('1', { sense: 'out', datum: 'seated', qualifier: 'from lightly seated' }),
  ],
  ['1 turn out (each screw)', turns('1', { sense: 'out', qualifier: 'each screw' })],
  // A hex nut: 6 flats a turn.
  ['12 flats down', turns('2', { sense: 'down' })],
  ['1 flat down', turns('1/6', { sense: 'down' })],
  [
    '12 flats down from flush',
    turns('2', { sense: 'down', datum: 'flush', qualifier: 'from flush' }),
  ],
  ['index', { dimension: 'notches', form: 'exact', is: '0', datum: 'index' }],
  ['on index', { dimension: 'notches', form: 'exact', is: '0', datum: 'index' }],
  ['1 notch rich', { dimension: 'notches', form: 'exact', is: '1', sense: 'rich' }],
  ['2 notches lean', { dimension: 'notches', form: 'exact', is: '-2', sense: 'lean' }],
  ['two notches leaner', { dimension: 'notches', form: 'exact', is: '-2', sense: 'lean' }],
  [
    '1 to 2 notches lean',
    { dimension: 'notches', form: 'range', low: '-2', high: '-1', sense: 'lean' },
  ],
  ['2nd notch from the top', { dimension: 'notches', form: 'exact', is: '2', datum: 'top' }],
];

function vacuum(is: string, more: Record<string, unknown> = {}) {
  return { dimension: 'vacuum', form: 'exact', is, places: 0, reference: 'unstated', ...more };
}

/** 19 inHg of 3386.38864 Pa (NIST SP 811 rounds to 3386.389). */
const NINETEEN = '64341.384166479';

const others: readonly Row[] = [
  ['475 rpm', { dimension: 'speed', form: 'exact', is: '475', places: 0 }],
  ['475 R.P.M.', { dimension: 'speed', form: 'exact', is: '475', places: 0 }],
  ['475 rev/min', { dimension: 'speed', form: 'exact', is: '475', places: 0 }],
  ['1,300 rpm', { dimension: 'speed', form: 'exact', is: '1300', places: 0 }],
  [
    '475 ± 25 rpm',
    { dimension: 'speed', form: 'tolerance', is: '475', places: 0, low: '450', high: '500' },
  ],
  ['475 rpm (hot).', { dimension: 'speed', form: 'exact', is: '475', places: 0, qualifier: 'hot' }],
  ['19 inHg', vacuum(NINETEEN)],
  ['19 in. Hg', vacuum(NINETEEN)],
  ['19" Hg', vacuum(NINETEEN)],
  ['19 inches of mercury', vacuum(NINETEEN)],
  ['19 in. vacuum', vacuum(NINETEEN, { reference: 'depression' })],
  ['19 inches of vacuum', vacuum(NINETEEN, { reference: 'depression' })],
  [
    '64 kPa',
    { dimension: 'pressure', form: 'exact', is: '64000', places: 0, reference: 'unstated' },
  ],
  ['64 kPa vacuum', vacuum('64000', { reference: 'depression' })],
  [
    '64 kPa abs',
    { dimension: 'pressure', form: 'exact', is: '64000', places: 0, reference: 'absolute' },
  ],
  [
    '650 mbar',
    { dimension: 'pressure', form: 'exact', is: '65000', places: 0, reference: 'unstated' },
  ],
  [
    '0.3 bar',
    { dimension: 'pressure', form: 'exact', is: '30000', places: 1, reference: 'unstated' },
  ],
  ['12 cm3 per 10 strokes', { dimension: 'delivery', form: 'exact', is: '1.2', places: 0 }],
  ['12 cc./10 strokes', { dimension: 'delivery', form: 'exact', is: '1.2', places: 0 }],
  ['12 cc/10 strokes', { dimension: 'delivery', form: 'exact', is: '1.2', places: 0 }],
  ['12 c.c. per ten strokes', { dimension: 'delivery', form: 'exact', is: '1.2', places: 0 }],
  [
    '12 ± 1 ml in 10 strokes',
    { dimension: 'delivery', form: 'tolerance', is: '1.2', places: 0, low: '1.1', high: '1.3' },
  ],
  ['8° BTDC', { dimension: 'angle', form: 'exact', is: '8', places: 0, sense: 'before' }],
  ['8 deg. before TDC', { dimension: 'angle', form: 'exact', is: '8', places: 0, sense: 'before' }],
  ['32° dwell', { dimension: 'angle', form: 'exact', is: '32', places: 0, qualifier: 'dwell' }],
  ['35 s per 100 ml', { dimension: 'flow', form: 'exact', is: '20/7', places: 0 }],
  ['170 ml/min', { dimension: 'flow', form: 'exact', is: '17/6', places: 0 }],
  ['18 L/h', { dimension: 'flow', form: 'exact', is: '5', places: 0 }],
  ['1 imp gal per hour', { dimension: 'flow', form: 'exact', is: '454609/360000', places: 0 }],
  ['18 kg/h', { dimension: 'mass-flow', form: 'exact', is: '5', places: 0 }],
  ['9 lb an hour', { dimension: 'mass-flow', form: 'exact', is: '1.133980925', places: 0 }],
  ['0.74 kg/l', { dimension: 'density', form: 'exact', is: '740', places: 2 }],
  // 2 × 453.59237 g in 3785.411784 mL.
  ['2 lb/US gal', { dimension: 'density', form: 'exact', is: '1472702500/6145149', places: 0 }],
  ['4.0 ms', { dimension: 'time', form: 'exact', is: '0.004', places: 1 }],
  ['2.5 N', { dimension: 'force', form: 'exact', is: '2.5', places: 1 }],
  ['100 gf', { dimension: 'force', form: 'exact', is: '0.980665', places: 0 }],
  ['9-1/2 cm²', { dimension: 'area', form: 'exact', is: '950' }],
];

const conditions: readonly Row[] = ['parallel', 'flush', 'just touches'].flatMap((words): Row[] => [
  [words, { dimension: 'condition', form: 'condition', condition: words }],
  [`${words.toUpperCase()}.`, { dimension: 'condition', form: 'condition', condition: words }],
]);

const every = [...fractions, ...named, ...limited, ...counted, ...others, ...conditions];

describe('how settings are written', () => {
  test.each(every)('%s', (text, expected) => {
    const statement = size(text);
    expect(facts(statement)).toEqual(expected);
    expect(writeStatement(statement)).toBe(text);
  });

  test('a pound and an inch are a torque, not a weight', () => {
    for (const text of ['40 lb. in.', '40 lb-in', '40 in-lb', '40 lbs. in.', '40 LB. IN.']) {
      expect(size(text).nominal?.unit, text).toBe('in-lb');
    }
  });

  test('torque and fuel pressure, whose base values have long tails', () => {
    // references.md: lbf·ft 1.3558179483314 N·m, psi 6894.757293168 Pa, both rounded.
    for (const text of ['12 ft-lb', '12 lb-ft', '12 ft. lbs.', '12 lbf·ft', '12 foot-pounds']) {
      expect(size(text).nominal?.base.valueOf(), text).toBeCloseTo(12 * 1.3558179483314, 12);
    }
    for (const text of ['4.5 psi', '4-1/2 psi', '4.5 lb/in²', '4½ lbs. per sq. in.']) {
      expect(size(text).nominal?.base.valueOf(), text).toBeCloseTo(4.5 * 6894.757293168, 5);
    }
    expect(size('4-1/2 to 5 psi').low?.base.valueOf()).toBeCloseTo(31026.407819256, 5);
  });

  test('a decimal stands for all that rounds to it, a fraction for itself', () => {
    const could = (text: string) => {
      const amount = size(text).nominal;
      return amount && [exactText(amount.could.low), exactText(amount.could.high)];
    };
    expect(could('5.16 mm')).toEqual(['5.155', '5.165']);
    expect(could('5.160 mm')).toEqual(['5.1595', '5.1605']);
    expect(could('.203 in')).toEqual(['5.1435', '5.1689']);
    expect(could('13/64 in')).toEqual(['5.159375', '5.159375']);
    expect(could('No. 29 drill')).toEqual(['3.4544', '3.4544']);
    expect(could('3.5 mm drill')).toEqual(['3.5', '3.5']);
    expect(could('2 turns out')).toEqual(['2', '2']);
  });

  test('amounts keep the words they were written in', () => {
    const range = size('0.018–0.022 in');
    expect(range.low?.amount?.text).toBe('0.018');
    expect(range.high?.amount?.text).toBe('0.022 in');
    expect(size('13/64 ± 1/64 in').nominal?.text).toBe('13/64');
  });
});

describe('what a setting expects', () => {
  const expect_ = (text: string, dimension: Dimension) => size(text, { expect: [dimension] });

  test('kPa is a depression where a vacuum is expected, over ambient where a pressure is', () => {
    expect(facts(expect_('64 kPa', 'vacuum'))).toMatchObject({
      dimension: 'vacuum',
      reference: 'depression',
    });
    expect(facts(expect_('64 kPa', 'pressure'))).toMatchObject({
      dimension: 'pressure',
      reference: 'gauge',
    });
    expect(facts(expect_('64 kPa abs', 'vacuum'))).toMatchObject({
      dimension: 'pressure',
      reference: 'absolute',
    });
  });

  test('plain words are a condition only where one is expected', () => {
    expect(expect_('level with the seam', 'condition').condition).toBe('level with the seam');
    expect(problemOf('level with the seam').code).toBe('unreadable');
  });
});

describe('a name of a size is not a size in every system', () => {
  test('a bare SWG is imperial, marked as ambiguous, unless the system is said', () => {
    // references.md: imperial No. 28 is .0148 in, US steel No. 28 .0162 in.
    const bare = size('28 SWG');
    expect(bare.nominal && exactText(inUnit(bare.nominal.base, 'length', 'in'))).toBe('0.0148');
    expect(bare.ambiguous.map((gauge) => gauge.label)).toEqual(['No. 28 US steel wire']);
    const steel = size('28 SWG', { swg: 'us-steel' });
    expect(steel.nominal && exactText(inUnit(steel.nominal.base, 'length', 'in'))).toBe('0.0162');
    expect(steel.ambiguous).toEqual([]);
    expect(size('28 SWG', { swg: 'imperial' }).ambiguous).toEqual([]);
    expect(size('28 SWG imperial').ambiguous).toEqual([]);
  });

  test('a bare number lists what it could be', () => {
    expect(problemOf('No. 60')).toEqual({
      code: 'bare-number',
      message:
        'No. 60 has no system: it could be No. 60 drill, 0.0400 in, a jet marked in hundredths of a millimeter, 0.60 mm, a jet marked in thousandths, 0.060 in or a flow number',
      fix: 'say which: `No. 60 drill`, for example',
      start: 0,
      end: 6,
      candidates: ['No. 60 drill', '0.60 mm', '0.060 in'],
      offered: 1,
    });
    for (const text of ['No. 60 jet', '#60 (0.040)', 'size 60']) {
      expect(problemOf(text), text).toMatchObject({
        code: 'bare-number',
        candidates: problemOf('No. 60').candidates,
      });
    }
    expect(problemOf('60 jet').code).toBe('no-unit');
    expect(problemOf('60')).toMatchObject({ code: 'no-unit', candidates: { length: 3 } });
    expect(problemOf('No. 20 wire').candidates).toEqual([
      '20 SWG imperial',
      '20 AWG',
      'No. 20 US steel wire',
      'No. 20 music wire',
    ]);
    expect(problemOf('1.5').candidates).toEqual(['1.5 in', '1.5 mm']);
    expect(problemOf('13/64').candidates).toEqual(['13/64 in']);
    expect(problemOf('3/4').candidates).toEqual(['3/4 in', '3/4 turn']);
    expect(problemOf('29 drill')).toMatchObject({
      code: 'bare-number',
      candidates: ['No. 29 drill'],
    });
    expect(problemOf('4 fl oz')).toMatchObject({
      code: 'bare-number',
      candidates: ['4 US fl oz', '4 imp fl oz'],
    });
  });

  test.each([
    [
      'No. 98 drill',
      'there is no drill No. 98; number drills run from 1 to 97',
      ['No. 97 drill', 'No. 89 drill', 'No. 8 drill'],
    ],
    ['No. 0 drill', 'there is no drill No. 0; number drills run from 1 to 97', ['No. 1 drill']],
    ['55 AWG', 'there is no AWG 55; AWG runs from 6/0 to 50', ['50 AWG', '5 AWG']],
    [
      '52 SWG',
      'there is no SWG 52; imperial SWG runs from 7/0 to 50',
      ['50 SWG imperial', '25 SWG imperial', '2 SWG imperial'],
    ],
    ['14/64 drill', 'no drill goes by the name 14/64; that size is 7/32 drill', ['7/32 drill']],
    [
      '0.137 in drill',
      'there is no 0.137 in drill; the nearest are No. 29 drill (0.1360 in) and No. 28 drill (0.1405 in)',
      ['No. 29 drill', 'No. 28 drill'],
    ],
    [
      '3.57 mm drill',
      'there is no 3.57 mm drill; the nearest are 3.5 mm drill (3.5 mm) and 3.6 mm drill (3.6 mm)',
      ['3.5 mm drill', '3.6 mm drill'],
    ],
  ])('no such gauge: %s', (text, message, candidates) => {
    const problem = problemOf(text);
    expect(problem.code).toBe('no-such-gauge');
    expect(problem.message.startsWith(message), problem.message).toBe(true);
    expect(problem.candidates).toEqual(candidates);
    expect(problem.fix).toContain(candidates[0]);
  });

  test('the ranges told in those messages are those of the tables', () => {
    const ends = (
      system: 'number-drill' | 'awg' | 'swg' | 'us-steel-wire' | 'music-wire' | 'bwg',
    ) => {
      const all = gauges.all(system);
      const names = [all[0]?.name, all[all.length - 1]?.name];
      return system === 'music-wire' ? names : names.reverse();
    };
    for (const [system, text] of [
      ['number-drill', '999 drill'],
      ['awg', '999 AWG'],
      ['swg', '999 SWG imperial'],
      ['us-steel-wire', '999 US steel wire'],
      ['music-wire', '999 music wire'],
      ['bwg', '999 BWG'],
    ] as const) {
      const [first, last] = ends(system);
      expect(problemOf(`No. ${text}`).message).toContain(`from ${first} to ${last}`);
    }
  });
});

describe('what does not read, and says why', () => {
  test.each([
    ['', 'empty', 'the size is empty', 'write the size, with its unit'],
    ['   ', 'empty', 'the size is empty', 'write the size, with its unit'],
    [
      '0.022–0.018 in',
      'limits-inverted',
      'the lower, 0.022, is above the upper, 0.018 in',
      'write 0.018–0.022 in',
    ],
    [
      '1 - 1/2 turns out',
      'limits-inverted',
      'the lower, 1, is above the upper, 1/2 turns',
      'write 1-1/2 turns out, if that is meant',
    ],
    [
      '475 rpm ± 1/64 in',
      'mixed-dimensions',
      'mixes speed and length',
      'state all its parts in units of one kind',
    ],
    [
      '2 to 3 turns ± 1/4 turn',
      'unreadable',
      '± is no word that can follow the size 2 to 3 turns',
      '',
    ],
    [
      '60 kPa abs to 64 kPa vacuum',
      'mixed-references',
      'counted from different zeros',
      'say gauge, absolute or vacuum',
    ],
    [
      '5 psig ± 1 psia',
      'mixed-references',
      'counted from different zeros',
      'say gauge, absolute or vacuum',
    ],
    ['5/0 in', 'zero-denominator', '5/0 divides by zero', 'look in the source again'],
    [
      '1,250 in',
      'unreadable',
      'the comma in 1,250 could part decimals or thousands',
      'write 1.250 in or 1250 in',
    ],
    ['13/64 inn', 'unknown-unit', 'inn is no unit', 'write 13/64 in, if that is meant'],
    ['5.16 furlongs', 'unknown-unit', 'furlongs is no unit', 'say the unit after 5.16'],
    ['0.020 in mni', 'unreadable', 'mni is no word that can follow', 'write min, if that is meant'],
    [
      '0.203 in (5.16 mm)',
      'unreadable',
      'followed by a second figure',
      'put the other under `also`',
    ],
    ['3/4 psi', 'unreadable', '3/4 psi could be limits, 3–4 psi', 'write 3–4 psi or 0.75 psi'],
    ['0.203 +0.010 in', 'unreadable', 'has a plus and no minus', 'write both'],
    ['-3 mm', 'unreadable', '-3 mm has a sign', 'say the direction in words'],
    ['paralel', 'unreadable', 'paralel is no size', 'write parallel, if that is meant'],
    [
      'the gap is 0.020 in',
      'unreadable',
      'does not start with a size',
      'start with the figure: 0.020 in',
    ],
    ['0.0200000000000000 in', 'too-long', 'more digits than any size', 'write at most 12 digits'],
    ['0.020 in '.repeat(30), 'too-long', 'is too long for a size', 'put remarks under note'],
  ])('%s', (text, code, message, fix) => {
    const problem = problemOf(text);
    expect(problem.code).toBe(code);
    expect(problem.message).toContain(message);
    expect(problem.fix ?? '').toContain(fix);
    expect(problem.start).toBeGreaterThanOrEqual(0);
    expect(problem.end).toBeGreaterThanOrEqual(problem.start);
    expect(problem.end).toBeLessThanOrEqual(text.length);
  });

  test('the place is the part that is wrong, counted in the text as passed', () => {
    const found = (text: string) => {
      const { start, end } = problemOf(text);
      return text.slice(start, end);
    };
    expect(found('  13/64 inn')).toBe('inn');
    expect(found('0.020 in mni')).toBe('mni');
    expect(found(' No. 98 drill ')).toBe('No. 98 drill');
    expect(found('1-5/0 in')).toBe('1-5/0');
  });
});

describe('a comma', () => {
  test.each([
    ['0,203 in', '5.1562'],
    ['1,300 mm', '1.3'],
    ['12,5 mm', '12.5'],
    ['1,300.5 rpm', '1300.5'],
    ['1,5 turns', '1.5'],
  ])('%s', (text, is) => {
    expect(facts(size(text))).toMatchObject({ is });
  });
});
