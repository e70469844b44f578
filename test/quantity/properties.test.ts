import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  agree,
  convertLimits,
  formatDecimal,
  inUnit,
  rational,
  readStatement,
} from '../../src/quantity/index.ts';
import type { Rational, Statement } from '../../src/quantity/model.ts';
import { writeStatement } from '../../src/quantity/write.ts';
import { runs } from '../suite/part.ts';
import { gauges, size } from './reading.ts';

const verdict = (first: Statement, second: Statement) => agree(first, second, { gauges }).verdict;

/** A size as a paper might state it: a fraction, a decimal of an inch, a metric one. */
const lengths = fc.oneof(
  fc
    .tuple(fc.integer({ min: 1, max: 127 }), fc.constantFrom(2, 4, 8, 16, 32, 64))
    .map(([n, d]) => `${n}/${d} in`),
  fc
    .tuple(fc.integer({ min: 1, max: 9999 }), fc.integer({ min: 1, max: 4 }))
    .map(([n, places]) => `${decimal(n, places)} in`),
  fc
    .tuple(fc.integer({ min: 1, max: 9999 }), fc.integer({ min: 0, max: 3 }))
    .map(([n, places]) => `${decimal(n, places)} mm`),
  fc.constantFrom(...gauges.all('number-drill').map((gauge) => gauge.label)),
  fc.constantFrom(...gauges.all('awg').map((gauge) => gauge.label)),
);

function decimal(digits: number, places: number): string {
  return formatDecimal(rational(digits, 10 ** places), places);
}

describe('agreement, for any size', () => {
  test('a size converted exactly and rounded once to stated places agrees, either way round', () => {
    fc.assert(
      fc.property(
        lengths,
        fc.constantFrom('in', 'mm', 'thou'),
        fc.integer({ min: 0, max: 5 }),
        fc.constantFrom('nearest' as const, 'even' as const),
        (text, unit, places, mode) => {
          const first = size(text);
          const value = first.nominal?.base ?? rational(0);
          const written = formatDecimal(inUnit(value, 'length', unit), places, mode);
          const second = size(`${written} ${unit}`);
          expect(['same', 'agrees']).toContain(verdict(first, second));
          expect(['same', 'agrees']).toContain(verdict(second, first));
        },
      ),
      { numRuns: runs(500) },
    );
  });

  test('two different adjacent digits swapped are never the same size, nor agree', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 99_999 }),
        fc.integer({ min: 1, max: 4 }),
        fc.nat(3),
        fc.constantFrom('in', 'mm'),
        (number, places, where, unit) => {
          const figure = decimal(number, places);
          const at = figure.length - 2 - (where % (figure.length - 1));
          const [a = '', b = ''] = [figure[at], figure[at + 1]];
          fc.pre(/\d/.test(a) && /\d/.test(b) && a !== b);
          const swapped = figure.slice(0, at) + b + a + figure.slice(at + 2);
          const found = agree(size(`${figure} ${unit}`), size(`${swapped} ${unit}`), { gauges });
          expect(found.verdict).toBe('disagrees');
          expect(found).toHaveProperty('misprint.kind');
        },
      ),
      { numRuns: runs(500) },
    );
  });

  test('any one digit of a decimal changed is found', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 99_999 }),
        fc.integer({ min: 1, max: 4 }),
        fc.nat(9),
        fc.integer({ min: 1, max: 9 }),
        (number, places, where, step) => {
          const figure = decimal(number, places);
          const at = where % figure.length;
          fc.pre(figure[at] !== '.');
          const digit = (Number(figure[at]) + step) % 10;
          const changed = figure.slice(0, at) + digit + figure.slice(at + 1);
          expect(verdict(size(`${figure} in`), size(`${changed} in`))).toBe('disagrees');
        },
      ),
    );
  });

  test('a verdict does not hang on the order, but for which one was chopped', () => {
    fc.assert(
      fc.property(lengths, lengths, (one, two) => {
        expect(verdict(size(one), size(two))).toBe(verdict(size(two), size(one)));
      }),
      { numRuns: runs(500) },
    );
  });
});

const bands = fc
  .tuple(
    fc.integer({ min: 1, max: 99_999 }),
    fc.integer({ min: 0, max: 3000 }),
    fc.integer({ min: 1, max: 4 }),
    fc.constantFrom(
      ['in', 'mm'],
      ['mm', 'in'],
      ['thou', 'mm'],
      ['psi', 'kPa'],
      ['inHg', 'mbar'],
      ['ft-lb', 'N·m'],
    ),
  )
  .map(([low, width, places, units]) => ({
    text: `${decimal(low, places)}–${decimal(low + width, places)} ${units[0]}`,
    unit: units[1] ?? 'mm',
  }));

describe('converted limits, for any band', () => {
  test('inward, whatever lies inside the rounded limits lies inside the original', () => {
    fc.assert(
      fc.property(
        bands,
        fc.integer({ min: 0, max: 4 }),
        fc.integer({ min: 0, max: 1000 }),
        (band, places, permille) => {
          const original = size(band.text);
          const result = convertLimits(original, band.unit, { places, rounding: 'inward' });
          const low = original.low?.base ?? rational(0);
          const high = original.high?.base ?? rational(0);
          if (!result.ok) {
            // Refused only where no figure of so many places lies inside.
            const [exactLow, exactHigh] = [low, high].map((base) =>
              inUnit(base, original.dimension, band.unit),
            );
            const scale = 10 ** places;
            expect(
              exactLow
                ?.mul(scale)
                .ceil()
                .compare(exactHigh?.mul(scale).floor() ?? 0),
            ).toBe(1);
            expect(result.reason).toContain(band.text);
            return;
          }
          expect(result.widened).toBe(false);
          const [from, to] = [result.low ?? rational(0), result.high ?? rational(0)];
          const inside = from.add(to.sub(from).mul(rational(permille, 1000)));
          for (const value of [from, inside, to]) {
            const base = back(value, original, band.unit);
            expect(base.compare(low) >= 0 && base.compare(high) <= 0).toBe(true);
          }
        },
      ),
      { numRuns: runs(500) },
    );
  });

  test('ordinary, each end is within half a grain, and fine enough it comes back', () => {
    fc.assert(
      fc.property(bands, (band) => {
        const original = size(band.text);
        const there = convertLimits(original, band.unit, { places: 6, rounding: 'ordinary' });
        if (!there.ok) throw new Error(there.reason);
        const unit = band.text.split(' ')[1] ?? '';
        // No unit of these is more than seventy of the other, so six places settle four.
        const again = convertLimits(size(there.text), unit, { places: 4, rounding: 'ordinary' });
        const same = convertLimits(original, unit, { places: 4, rounding: 'ordinary' });
        expect(again).toMatchObject({ ok: true, text: same.ok ? same.text : '' });
      }),
    );
  });
});

/** A figure in a unit as the base value of the statement's dimension. */
function back(value: Rational, statement: Statement, unit: string): Rational {
  const one = inUnit(rational(1), statement.dimension, unit);
  return value.div(one);
}

describe('reading, for any text', () => {
  const pieces = fc
    .array(
      fc.constantFrom(
        '13/64',
        '1-7/16',
        '.203',
        '5,16',
        '18',
        '0',
        '½',
        'No. 29',
        '#',
        'drill',
        'E',
        'AWG',
        'swg',
        'in',
        '"',
        'mm',
        'thou',
        'turns',
        'out',
        'flats',
        'rpm',
        'inHg',
        'kPa',
        'abs',
        'psi',
        'per 10 strokes',
        'cc',
        's',
        '±',
        '+',
        '-',
        '/',
        '–',
        'to',
        'between',
        'and',
        'min',
        'max',
        'about',
        'index',
        'notch',
        'lean',
        '°',
        'BTDC',
        ' ',
        ' ',
        ' ',
        '(',
        ')',
        ',',
        '.',
        '\u00A0',
        '‑',
      ),
      { maxLength: 14 },
    )
    .map((parts) => parts.join(''));

  const held = (text: string) => {
    const reading = readStatement(text, { gauges });
    if (reading.ok) {
      expect(reading.statement.text).toBe(text);
      expect(writeStatement(reading.statement)).toBe(text);
      const { low, high } = reading.statement;
      if (low && high) expect(low.base.compare(high.base)).toBeLessThanOrEqual(0);
      const again = readStatement(writeStatement(reading.statement), { gauges });
      expect(JSON.stringify(again, exact)).toBe(JSON.stringify(reading, exact));
    } else {
      const { start, end, message } = reading.problem;
      expect(start >= 0 && start <= end && end <= text.length, `${text}: ${start} to ${end}`).toBe(
        true,
      );
      expect(message).not.toBe('');
      expect(message).not.toMatch(/undefined|NaN|\[object/);
    }
  };

  test('never throws, keeps the text, and reads again to the same', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 60 }), held), {
      numRuns: runs(1000),
    });
    fc.assert(fc.property(pieces, held), { numRuns: runs(3000) });
  });

  test('hostile texts cost no more than ordinary ones: 1,000 reads in a second', () => {
    const long = (unit: string) => unit.repeat(200).slice(0, 200);
    const hostile = [
      '1',
      ' ',
      '1 ',
      '/',
      '1/',
      '1/2',
      '1-',
      '1,',
      '1.',
      '.',
      '(',
      '±',
      '1±',
      'no. ',
      '#',
      '# ',
      'to ',
      '1 to ',
      'a',
      'a drill ',
      'about ',
      '1 in ',
      '"',
      '½',
      '1½',
      '-',
      'one and ',
      'min ',
      '1 min ',
      '\u00A0',
      '1 cc/',
    ];
    const texts = hostile.flatMap((unit) => [
      long(unit),
      `1${long(unit)}`.slice(0, 200),
      `${long(unit).slice(3)} in`,
      `13/64 ${long(unit)}`.slice(0, 200),
    ]);
    for (const text of texts) held(text);
    // Processor time: the machine may be busy with other things.
    const before = process.cpuUsage().user;
    for (let i = 0; i < 1000; i++) readStatement(texts[i % texts.length] ?? '', { gauges });
    expect((process.cpuUsage().user - before) / 1000).toBeLessThan(1000);
  });

  test('a text of a million characters is refused at once', () => {
    const before = process.cpuUsage().user;
    for (const unit of ['1', '1/', ' 1', 'drill ']) {
      expect(readStatement(unit.repeat(1e6 / unit.length), { gauges })).toMatchObject({
        ok: false,
        problem: { code: 'too-long' },
      });
    }
    expect((process.cpuUsage().user - before) / 1000).toBeLessThan(500);
  });
});

/** Fractions hold bigints, which JSON cannot tell. */
function exact(_key: string, value: unknown): unknown {
  return typeof value === 'bigint' ? String(value) : value;
}
