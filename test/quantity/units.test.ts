import { execFileSync } from 'node:child_process';
import { UcumLhcUtils } from '@lhncbc/ucum-lhc';
import convert from 'convert-units';
import { describe, expect, test } from 'vitest';
import {
  allUnits,
  exactText,
  inUnit,
  rational,
  toBase,
  unitById,
} from '../../src/quantity/index.ts';
import { gauges, problemOf, size } from './reading.ts';

const off = (ours: number, theirs: number): number => Math.abs(ours / theirs - 1);
const baseOf = (id: string): number => toBase(rational(1), unitById(id)).valueOf();

describe('the conversion table of references.md', () => {
  // Exact by definition: international yard of 1959, US gallon 231 in³, imperial gallon 4.54609 L.
  test.each([
    ['in', '25.4'],
    ['thou', '0.0254'],
    ['in3', '16.387064'],
    ['US gal', '3785.411784'],
    ['US pt', '473.176473'],
    ['US fl oz', '29.5735295625'],
    ['imp gal', '4546.09'],
    ['imp pt', '568.26125'],
    ['imp fl oz', '28.4130625'],
    ['atm', '101325'],
    ['mmHg', '133.322387415'],
    ['rpm', '1'],
    ['flat', '1/6'],
  ])('one %s is %s', (id, exact) => {
    expect(exactText(toBase(rational(1), unitById(id)))).toBe(exact);
  });

  test.each([
    ['psi', 6894.757293168],
    ['ft-lb', 1.3558179483314],
    ['in-lb', 0.1129848290276],
    // NIST SP 811 prints 3386.389.
    ['inHg', 3386.38864],
  ])('one %s is %d, as rounded there', (id, rounded) => {
    const places = String(rounded).split('.')[1]?.length ?? 0;
    expect(Number(baseOf(id).toFixed(places))).toBe(rounded);
  });

  test('an atmosphere is 29.9212556 inHg', () => {
    expect(inUnit(rational(101325), 'vacuum', 'inHg').valueOf().toFixed(7)).toBe('29.9212556');
  });

  test('temperature has a zero of its own', () => {
    expect(exactText(toBase(rational(68), unitById('degF')))).toBe('20');
    expect(exactText(inUnit(rational(-40), 'temperature', 'degF'))).toBe('-40');
  });
});

describe('against the library of UCUM', () => {
  const ucum = UcumLhcUtils.getInstance();

  // Their factors are floating-point numbers; 1e-9 is what those of 10 figures are good for.
  test.each([
    ['in', '[in_i]', 'mm', 1e-12],
    ['ft', '[ft_i]', 'mm', 1e-12],
    ['in3', '[cin_i]', 'mL', 1e-12],
    ['US gal', '[gal_us]', 'mL', 1e-12],
    ['US pt', '[pt_us]', 'mL', 1e-12],
    ['US fl oz', '[foz_us]', 'mL', 1e-12],
    ['imp gal', '[gal_br]', 'mL', 1e-12],
    ['imp pt', '[pt_br]', 'mL', 1e-12],
    ['imp fl oz', '[foz_br]', 'mL', 1e-12],
    ['psi', '[psi]', 'Pa', 1e-9],
    ['bar', 'bar', 'Pa', 1e-12],
    ['mbar', 'mbar', 'Pa', 1e-12],
    ['atm', 'atm', 'Pa', 1e-12],
    ['kgf/cm2', 'kgf/cm2', 'Pa', 1e-9],
    // references.md: UCUM's mercury is 133.322 Pa a millimeter, 2.9 ppm low.
    ['inHg', "[in_i'Hg]", 'Pa', 3.0e-6],
    ['mmHg', 'mm[Hg]', 'Pa', 3.0e-6],
    ['lb', '[lb_av]', 'g', 1e-12],
    ['oz', '[oz_av]', 'g', 1e-12],
    ['in2', '[sin_i]', 'mm2', 1e-12],
    ['minute', 'min', 's', 1e-12],
    ['h', 'h', 's', 1e-12],
    ['lbf', '[lbf_av]', 'N', 1e-9],
    ['gf', 'gf', 'N', 1e-9],
    ['kgf', 'kgf', 'N', 1e-9],
    ['ms', 'ms', 's', 1e-12],
    ['cm2', 'cm2', 'mm2', 1e-12],
    ['L/h', 'L/h', 'mL/s', 1e-12],
    ['imp gal/h', '[gal_br]/h', 'mL/s', 1e-12],
    ['lb/h', '[lb_av]/h', 'g/s', 1e-12],
    ['lb/US gal', '[lb_av]/[gal_us]', 'kg/m3', 1e-12],
    ['ft-lb', '[lbf_av].[ft_i]', 'N.m', 1e-9],
    ['in-lb', '[lbf_av].[in_i]', 'N.m', 1e-9],
  ])('%s', (id, from, to, within) => {
    const theirs = ucum.convertUnitTo(from, 1, to);
    expect(theirs.status, `${from}: ${theirs.msg}`).toBe('succeeded');
    expect(off(baseOf(id), theirs.toVal ?? Number.NaN)).toBeLessThan(within);
  });

  test('its mercury is low by 2.9 ppm, which is why it is no more than a second opinion', () => {
    const theirs = ucum.convertUnitTo("[in_i'Hg]", 1, 'Pa').toVal ?? Number.NaN;
    expect((baseOf('inHg') / theirs - 1) * 1e6).toBeCloseTo(2.9, 1);
  });
});

describe('against a general-purpose library', () => {
  // Its factors go through feet and meters rounded to a few figures: an inch comes to 25.3999992 mm.
  test.each([
    ['in', 'in', 'mm', 1e-7],
    ['ft', 'ft', 'mm', 1e-7],
    ['in3', 'in3', 'ml', 1e-4],
    ['US gal', 'gal', 'ml', 1e-4],
    ['US pt', 'pnt', 'ml', 1e-4],
    ['US fl oz', 'fl-oz', 'ml', 1e-4],
    ['psi', 'psi', 'Pa', 1e-4],
    ['bar', 'bar', 'Pa', 1e-9],
    ['kPa', 'kPa', 'Pa', 1e-9],
    ['oz', 'oz', 'g', 1e-5],
    ['lb', 'lb', 'g', 1e-5],
    ['in2', 'in2', 'mm2', 1e-4],
  ] as const)('%s', (id, from, to, within) => {
    expect(off(baseOf(id), convert(1).from(from).to(to))).toBeLessThan(within);
  });
});

const ASKED: readonly (readonly [id: string, gnu: string, base: string])[] = [
  ['in', 'inch', 'mm'],
  ['thou', 'mil', 'mm'],
  ['psi', 'psi', 'Pa'],
  ['bar', 'bar', 'Pa'],
  ['mbar', 'mbar', 'Pa'],
  ['kgf/cm2', 'kgf/cm^2', 'Pa'],
  ['atm', 'atm', 'Pa'],
  ['inHg', 'inHg', 'Pa'],
  ['mmHg', 'mmHg', 'Pa'],
  ['inH2O', 'inH2O', 'Pa'],
  ['in3', 'inch^3', 'mL'],
  ['US gal', 'usgallon', 'mL'],
  ['US pt', 'uspint', 'mL'],
  ['US fl oz', 'usfloz', 'mL'],
  ['imp gal', 'brgallon', 'mL'],
  ['imp pt', 'brpint', 'mL'],
  ['imp fl oz', 'brfloz', 'mL'],
  ['ft-lb', 'lbf ft', 'N m'],
  ['in-lb', 'lbf inch', 'N m'],
  ['kgf·m', 'kgf m', 'N m'],
  ['lb', 'lb', 'g'],
  ['oz', 'oz', 'g'],
  ['cm3/minute', 'cm^3/min', 'mL/s'],
  ['US gal/h', 'usgallon/hour', 'mL/s'],
  ['imp gal/h', 'brgallon/hour', 'mL/s'],
  ['L/h', 'L/hour', 'mL/s'],
  ['lb/h', 'lb/hour', 'g/s'],
  ['kg/h', 'kg/hour', 'g/s'],
  ['lb/US gal', 'lb/usgallon', 'kg/m^3'],
  ['lb/imp gal', 'lb/brgallon', 'kg/m^3'],
  ['lbf', 'lbf', 'N'],
  ['ozf', 'lbf/16', 'N'],
  ['gf', 'gram force', 'N'],
  ['kgf', 'kgf', 'N'],
  ['ms', 'ms', 's'],
  ['cm2', 'cm^2', 'mm^2'],
];

function gnuUnits(): readonly number[] | null {
  try {
    execFileSync('units', ['--version'], { stdio: 'ignore' });
  } catch {
    return null;
  }
  // One run for all: a request is two lines, what there is and what it is wanted in.
  const input = ASKED.map(([, from, to]) => `${from}\n${to}\n`).join('');
  const output = execFileSync('units', ['-q', '-t', '-o', '%.15g'], { input, encoding: 'utf8' });
  return output.trim().split('\n').map(Number);
}

describe('against GNU units', () => {
  const answers = gnuUnits();
  if (answers === null) console.warn('GNU units is not installed: its tests are skipped');

  test.skipIf(answers === null).each(ASKED.map((asked, i) => [...asked, i] as const))(
    '%s',
    (id, _from, _to, i) => {
      expect(answers).toHaveLength(ASKED.length);
      expect(off(baseOf(id), answers?.[i] ?? Number.NaN)).toBeLessThan(1e-12);
    },
  );
});

describe('the table of units', () => {
  test('every spelling reads as its own unit and no other', () => {
    const seen = new Map<string, string>();
    for (const unit of allUnits()) {
      for (const spelling of unit.spellings) {
        expect(seen.get(spelling), `${spelling} of ${unit.id}`).toBeUndefined();
        seen.set(spelling, unit.id);
        // A million ohms has a large letter; with a small one it would be a thousandth.
        const written = spelling.replace(/^m(?=[- ]?(?:ohm|ω))/, 'M');
        const text = `2 ${written}`;
        expect(size(text).nominal?.unit, text).toBe(unit.id);
        // `1/min` must stand off: `21/min` would be another number.
        if (!/^\d/.test(spelling))
          expect(size(`2${written}`).nominal?.unit, `2${written}`).toBe(unit.id);
        expect(size(text.toUpperCase()).nominal?.unit, text.toUpperCase()).toBe(unit.id);
      }
    }
  });

  test('a unit there and back is the same number', () => {
    for (const unit of allUnits()) {
      const back = inUnit(toBase(rational(13, 64), unit), unit.dimension, unit.id);
      expect(exactText(back), unit.id).toBe('0.203125');
    }
  });

  test('a time per volume turns over, and none at all is refused', () => {
    const unit = unitById('s/100 cm3');
    expect(exactText(toBase(rational(35), unit))).toBe('20/7');
    expect(exactText(inUnit(rational(20, 7), 'flow', 's/100 cm3'))).toBe('35');
    expect(() => toBase(rational(0), unit)).toThrow('no time for a volume is no flow');
    expect(problemOf('0 s per 100 ml').message).toContain('gives no time at all for a volume');
  });

  test('an unknown id and another dimension fail by name', () => {
    expect(() => unitById('furlong')).toThrow('no unit has the id furlong');
    expect(() => unitById('cm3/0 strokes')).toThrow('no unit has the id cm3/0 strokes');
    expect(() => inUnit(rational(1), 'length', 'rpm')).toThrow('rpm measures speed, not length');
  });

  test('gauges are told in the units that their standards use', () => {
    for (const system of ['number-drill', 'metric-drill', 'awg'] as const) {
      for (const gauge of gauges.all(system)) expect(unitById(gauge.unit).dimension).toBe('length');
    }
  });
});
