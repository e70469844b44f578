import { describe, expect, test } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { agree, readStatement, scanStatements } from '../../src/quantity/index.ts';
import type { Dimension } from '../../src/quantity/model.ts';

const gauges = gaugeBook();

function read(text: string, ...expected: Dimension[]) {
  const reading = readStatement(text, { gauges, expect: expected });
  if (!reading.ok) throw new Error(reading.problem.message);
  return reading.statement;
}

function problemOf(text: string, ...expected: Dimension[]) {
  const reading = readStatement(text, { gauges, expect: expected });
  return reading.ok ? null : `${reading.problem.message}; ${reading.problem.fix}`;
}

describe('resistance', () => {
  // SI Brochure, 9th edition: kilo is a thousand, mega a million.
  test.each([
    ['1200 ohms', '1200'],
    ['1.2 kΩ', '1200'],
    ['1.2 k\u2126', '1200'],
    ['1,2 kOhm', '1200'],
    ['1.2 kilohms', '1200'],
    ['1.2 k ohms', '1200'],
    ['0.5 MΩ', '500000'],
    ['0.5 megohm', '500000'],
    ['0.5 meg', '500000'],
    ['½ megohm', '500000'],
    ['150 Ω', '150'],
    ['3 ohms', '3'],
  ])('%s is %s ohms', (text, ohms) => {
    const { dimension, nominal } = read(text, 'resistance');
    expect(dimension).toBe('resistance');
    expect(nominal?.base.toString()).toBe(ohms);
  });

  test('limits, a range and one end', () => {
    expect(read('5 to 10 kΩ', 'resistance').high?.base.toString()).toBe('10000');
    expect(read('800 ± 50 ohms', 'resistance').low?.base.toString()).toBe('750');
    expect(read('50 megohms min', 'resistance').form).toBe('min');
  });

  test('ohms and megohms are held against one another', () => {
    const verdict = (one: string, two: string) =>
      agree(read(one, 'resistance'), read(two, 'resistance'), { gauges: null }).verdict;
    expect(verdict('0.5 MΩ', '500 kΩ')).toMatch(/same|agrees/);
    expect(verdict('0.5 MΩ', '500 ohms')).toBe('disagrees');
  });

  test.each(['5 mΩ', '5 m\u2126', '0.5 m ohm'])('%s is a thousandth, and told', (text) => {
    expect(problemOf(text, 'resistance')).toBe(
      `${text} is told in thousandths of an ohm; write MΩ or megohms, if a million ohms is meant`,
    );
  });
});

describe('carbon monoxide by volume', () => {
  test.each([
    '3.5 % CO',
    '3.5 % CO by volume',
    '3.5 vol % CO',
    '3.5 vol.-%',
    '3.5 % vol',
    '3.5% by volume',
    '3.5 percent CO',
    '3,5 % CO',
  ])('%s is a percentage', (text) => {
    const { dimension, nominal } = read(text, 'percent');
    expect([dimension, nominal?.base.toString()]).toEqual(['percent', '3.5']);
  });

  test('its limits', () => {
    expect(read('3 ± 0.5 % CO', 'percent').high?.base.toString()).toBe('3.5');
    expect(read('2 to 4.5 % CO', 'percent').form).toBe('range');
    expect(read('4.5 % CO max', 'percent').form).toBe('max');
    expect(read('max. 4.5 % CO', 'percent').form).toBe('max');
  });
});

describe('a height of the piston before its top', () => {
  test.each([
    '1/4 in BTDC',
    '0.25 in B.T.D.C.',
    '6.35 mm before top dead center',
    '0.25 in ATDC',
    '1/4" before TDC',
  ])('%s is a length', (text) => {
    const { dimension, nominal } = read(text, 'angle', 'length');
    expect([dimension, nominal?.base.toString()]).toEqual(['length', '6.35']);
  });

  test('degrees there stay degrees', () => {
    expect(read('8° BTDC', 'angle', 'length')).toMatchObject({
      dimension: 'angle',
      sense: 'before',
    });
  });
});

describe('numbers in an order', () => {
  test.each([
    ['1-3-4-2', '1-3-4-2'],
    ['1 – 3 – 4 – 2', '1-3-4-2'],
    ['1, 3, 4, 2', '1-3-4-2'],
    ['1 3 4 2', '1-3-4-2'],
    ['1342', '1-3-4-2'],
    ['153624', '1-5-3-6-2-4'],
    ['4-2-1-3', '1-3-4-2'],
    ['1-12-5-8-3-10-6-7-2-11-4-9', '1-12-5-8-3-10-6-7-2-11-4-9'],
    ['1L-4R-2L-3R', '1l-4r-2l-3r'],
    ['1-2', '1-2'],
  ])('%s reads as %s, and is kept as written', (text, order) => {
    const statement = read(text, 'sequence');
    expect(statement).toMatchObject({ dimension: 'sequence', text, condition: order });
  });

  test('the same circle is the same order, wherever it begins; another is not', () => {
    const verdict = (one: string, two: string) =>
      agree(read(one, 'sequence'), read(two, 'sequence'), { gauges: null }).verdict;
    expect(verdict('1-3-4-2', '3, 4, 2, 1')).toBe('same');
    expect(verdict('1-3-4-2', '1-2-4-3')).toBe('disagrees');
  });

  test.each([
    ['1-3-3-2', '1-3-3-2 has 3 twice; look in the source, and write every number once'],
    [
      '1-5-3-6-2',
      '1-5-3-6-2 has 5 numbers and lacks 4; look in the source, and write every number once',
    ],
    ['1-0-2', '1-0-2 counts from 0; look in the source, and write every number once'],
    [
      'clockwise',
      'clockwise is no list of numbers; write the numbers with hyphens between them, such as 1-3-4-2',
    ],
    ['4', '4 is no list of numbers; write the numbers with hyphens between them, such as 1-3-4-2'],
  ])('%s is told', (text, words) => {
    expect(problemOf(text, 'sequence')).toBe(words);
  });

  test('elsewhere it stays what it was: no size', () => {
    expect(problemOf('1-3-4-2', 'length', 'condition')).not.toBeNull();
  });
});

describe('voltage and current', () => {
  test.each([
    ['13.2 V', 'voltage', '13.2'],
    ['13.2 volts', 'voltage', '13.2'],
    ['13,2 Volt', 'voltage', '13.2'],
    ['450 mV', 'voltage', '0.45'],
    ['5 kV', 'voltage', '5000'],
    ['22 A', 'current', '22'],
    ['22 amps', 'current', '22'],
    ['22 ampères', 'current', '22'],
    ['2.5 mA', 'current', '0.0025'],
  ] as const)('%s', (text, dimension, base) => {
    const statement = read(text, dimension);
    expect(statement.dimension).toBe(dimension);
    expect(statement.nominal?.base.toString()).toBe(base);
  });

  test('limits as a regulator has them', () => {
    expect(read('12.7 to 13.3 V', 'voltage').low?.base.toString()).toBe('12.7');
    expect(read('22 ± 1 A', 'current').high?.base.toString()).toBe('23');
    expect(read('6.3–6.7 V', 'voltage').form).toBe('range');
  });

  test.each([
    ['Raise it until the gauge reads 6.5 V.', ['6.5 V']],
    ['It charges 20 A at 2000 rpm.', ['20 A', '2000 rpm']],
    ['Use No. 2 a second time, and 3 v-blocks.', []],
    ['Fit pin 2. A new one is stiff.', []],
    ['A 12V car has twice the cells.', ['12V']],
  ])('in running text: %s', (text, wanted) => {
    expect(scanStatements(text, { gauges }).map(({ statement }) => statement.text)).toEqual(wanted);
  });
});

describe('spring rate', () => {
  // One pound-force an inch is 4.4482216152605 N over 25.4 mm: NIST SP 811, lbf/in = 1.751268 E+02 N/m.
  test.each([
    ['1 lbf per in', 0.1751268],
    ['1 lb per inch', 0.1751268],
    ['0.5 N/mm', 0.5],
    ['16 oz per in', 0.1751268],
    ['0.1 kgf/mm', 0.980665],
    ['100 g/mm', 0.980665],
  ])('%s', (text, base) => {
    const statement = read(text, 'spring-rate');
    expect(statement.dimension).toBe('spring-rate');
    expect(statement.nominal?.base.valueOf()).toBeCloseTo(base, 6);
  });

  test('a weight stays a weight, and a torque a torque', () => {
    expect(read('18 oz', 'mass').dimension).toBe('mass');
    expect(read('12 lb-in', 'torque').dimension).toBe('torque');
    expect(read('12 in-lb', 'torque').dimension).toBe('torque');
    expect(read('12 lb/in', 'torque').dimension).toBe('torque');
  });
});
