import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { readStatement } from '../../src/quantity/index.ts';
import type { Statement } from '../../src/quantity/model.ts';
import { sameSize } from '../../src/rereading/same-size.ts';
import { runs } from '../suite/part.ts';

const gauges = gaugeBook();

function read(text: string): Statement {
  const reading = readStatement(text, { gauges, swg: 'imperial' });
  if (!reading.ok) throw new Error(`${text}: ${reading.problem.message}`);
  return reading.statement;
}

function found(first: string, second: string): boolean {
  return sameSize(read(first), read(second), gauges).same;
}

/** A fraction of an inch as papers set it, its whole in front. */
function fraction(size: Fraction, join: string): string {
  const whole = size.floor();
  const rest = size.sub(whole);
  if (rest.equals(0)) return String(whole);
  const part = `${rest.n}/${rest.d}`;
  return whole.equals(0) ? part : `${whole}${join}${part}`;
}

/** To places, rounded to the nearest or chopped; by whole numbers alone. */
function decimal(size: Fraction, places: number, chopped = false): string {
  const scaled = size.mul(10 ** places);
  const number = chopped ? scaled.floor() : scaled.round();
  const digits = String(number).padStart(places + 1, '0');
  return places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`;
}

/** Right ways to write one exact size in inches; each has to be the same as the fraction. */
function ways(size: Fraction): string[] {
  const mm = size.mul('25.4');
  const three = decimal(size, 3);
  return [
    `${fraction(size, '-')} in`,
    `${fraction(size, ' ')} in`,
    `${fraction(size, '-')}"`,
    `${fraction(size, '-')} inch`,
    `${three} in`,
    `${three.replace(/^0\./, '.')} in`,
    `${three}"`,
    `${decimal(size, 4)} in`,
    `${decimal(size, 6)} in`,
    `${decimal(size, 3, true)} in`,
    `${decimal(size, 4, true)} in`,
    `${decimal(mm, 2)} mm`,
    `${decimal(mm, 3)} mm`,
    `${decimal(mm, 2).replace('.', ',')} mm`,
    `${decimal(mm, 6)} mm`,
  ];
}

const sixtyFourths = fc.integer({ min: 8, max: 200 }).map((count) => new Fraction(count, 64));
const tolerances = fc.constantFrom(32, 64).map((part) => new Fraction(1, part));

describe('one size in two writings', () => {
  it('is the same, however a fraction is written', () => {
    fc.assert(
      fc.property(sixtyFourths, (size) => {
        const [first = '', ...others] = ways(size);
        for (const other of others) {
          expect([first, other, found(first, other)]).toEqual([first, other, true]);
          expect([other, first, found(other, first)]).toEqual([other, first, true]);
        }
      }),
      { numRuns: runs(200) },
    );
  });

  it('is the same in every notation of its limits', () => {
    fc.assert(
      fc.property(sixtyFourths, tolerances, (size, give) => {
        const [low, high] = [size.sub(give), size.add(give)];
        const [at, by] = [fraction(size, '-'), fraction(give, '-')];
        const [mm, mmBy] = [size.mul('25.4'), give.mul('25.4')];
        const stated = `${at} ± ${by} in`;
        const others = [
          `${at} +/- ${by} in`,
          `${at} in ± ${by} in`,
          `${at} +${by}/-${by} in`,
          `${fraction(low, '-')} to ${fraction(high, '-')} in`,
          `${decimal(size, 6)} ± ${decimal(give, 6)} in`,
          `${decimal(low, 6)} to ${decimal(high, 6)} in`,
          `${decimal(mm, 6)} ± ${decimal(mmBy, 6)} mm`,
          `${decimal(low.mul('25.4'), 6)}–${decimal(high.mul('25.4'), 6)} mm`,
        ];
        for (const other of others) {
          expect([stated, other, found(stated, other)]).toEqual([stated, other, true]);
          expect([other, stated, found(other, stated)]).toEqual([other, stated, true]);
        }
      }),
      { numRuns: runs(200) },
    );
  });

  it('is the same by a gauge as by its size', () => {
    for (const system of ['number-drill', 'letter-drill', 'fraction-drill'] as const) {
      for (const { label, mm } of gauges.all(system)) {
        const inch = new Fraction(mm).div('25.4');
        const exact = decimal(inch, 4);
        const others = [`${exact} in`, `${exact.replace(/^0\./, '.')} in`];
        for (const other of others)
          expect([label, other, found(label, other)]).toEqual([label, other, true]);
      }
    }
  });

  it.each([
    ['22 SWG', '0.028 in wire'],
    ['0.016 in leaf', '0.016 in'],
    ['18 to 22 thou', '0.018–0.022 in'],
    ['0.020 ± 0.002 in', '0.018 to 0.022 in'],
    ['0.0670 +0.0005/-0 in', '0.0670 to 0.0675 in'],
    ['1-1/4 ± 1/4 turns out', '1 to 1-1/2 turns out'],
    ['1-1/4 turns out', '1.25 turns out'],
    ['18-1/2 inHg min', '18.5 inHg min'],
    ['18-1/2 inHg min', 'not less than 18.5 inHg'],
    ['475 ± 25 rpm', '450 to 500 rpm'],
    ['12-1/2 ± 1/2 ft-lb', '12 to 13 ft-lb'],
    ['0.200 in', '0.20 in'],
    ['1/2 turn', '0.5 turn'],
    ['8° BTDC', '8 degrees BTDC'],
    ['9/64 in', '0.140 in'],
    ['6 flats down', '1 turn down'],
  ])('%s is %s', (first, second) => {
    expect(found(first, second)).toBe(true);
    expect(found(second, first)).toBe(true);
  });

  it.each([
    ['0.203 in', '0.204 in', 'the next figure'],
    ['0.203 in', '0.20 in', 'a digit that was dropped'],
    ['5.159 mm', '5.16 mm', 'one page has one of the two'],
    ['13/64 in', '0.204 in', 'no rounding of it'],
    ['13/64 ± 1/64 in', '13/64 in', 'limits lost'],
    ['13/64 ± 1/64 in', '13/64 ± 1/32 in', 'other limits'],
    ['0.0670 +0.0005/-0 in', '0.0670 +0/-0.0005 in', 'limits turned about'],
    ['about 1/2 turn', '1/2 turn', 'about lost'],
    ['1 turn out', '1 turn in', 'the other way'],
    ['18-1/2 inHg min', '18-1/2 inHg', 'a limit become a figure'],
    ['18-1/2 inHg min', '18-1/2 inHg max', 'the other limit'],
    ['No. 29 drill', 'No. 28 drill', 'the next drill'],
    ['20 SWG', '20 AWG', 'another system'],
    ['8° BTDC', '8° ATDC', 'the other side of the mark'],
    ['500 rpm', '500 rpm max', 'a limit of one'],
  ])('%s is not %s: %s', (first, second) => {
    expect(found(first, second)).toBe(false);
    expect(found(second, first)).toBe(false);
  });
});
