import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import {
  equivalents,
  figuresIn,
  inUnit,
  printedFigures,
  rational,
  readStatement,
  unitById,
} from '../../src/quantity/index.ts';
import type { Rational, Statement } from '../../src/quantity/model.ts';
import { runs } from '../suite/part.ts';
import { size } from './reading.ts';

/** The numbers of a printed text: nominal, and its limits in brackets or alone. */
function parted(text: string): { nominal: string | null; ends: string[]; word: string | null } {
  const [, head = '', inner] = /^([^(]*)(?:\(([^)]*)\))?/.exec(text) ?? [];
  const numbers = (part: string) => part.match(/\d+\.?\d*/g) ?? [];
  const word = /\b(min|max)$/.exec(inner ?? text)?.[1] ?? null;
  const isBand = head.includes('–') || / (?:min|max)$/.test(head);
  const ends = inner === undefined ? (isBand ? numbers(head) : []) : numbers(inner);
  const nominal = isBand ? null : (numbers(head.replace(/per.*$/, ''))[0] ?? null);
  return { nominal, ends: ends.slice(0, word === null ? 2 : 1), word };
}

const places = (number: string) => number.split('.')[1]?.length ?? 0;

/** What is wrong with a text that a statement is printed as, in a unit; null for nothing. */
function faultIn(text: string, statement: Statement, unit: string): string | null {
  const { nominal, ends, word } = parted(text);
  const told = (base: Rational | undefined) =>
    base === undefined ? null : inUnit(base, statement.dimension, unit);
  const [one, two] = [told(statement.low?.base), told(statement.high?.base)];
  const [low, high] = unitById(unit).inverse ? [two, one] : [one, two];
  const [first, last] =
    word === 'max' ? [undefined, ends[0]] : [ends[0], word === null ? ends[1] : undefined];
  if (low && (first === undefined || rational(first).compare(low) < 0)) return 'lower let out';
  if (high && (last === undefined || rational(last).compare(high) > 0)) return 'upper let out';
  if (nominal === null) return null;
  if (first && rational(nominal).compare(rational(first)) < 0) return 'nominal below';
  if (last && rational(nominal).compare(rational(last)) > 0) return 'nominal above';
  if (ends.some((end) => places(end) !== places(nominal))) return 'other places';
  return null;
}

const UNIT_OF: readonly (readonly [RegExp, string])[] = [
  [/ in\b/, 'in'],
  [/ mm\b/, 'mm'],
  [/ kPa\b/, 'kPa'],
  [/ inHg\b/, 'inHg'],
  [/ psi\b/, 'psi'],
  [/ N·m\b/, 'N·m'],
  [/ ft-lb\b/, 'ft-lb'],
  [/ L\/h/, 'L/h'],
  [/ US gal\/h/, 'US gal/h'],
];

function faultsOf(statement: Statement): string[] {
  const { inch, mm, other } = equivalents(statement);
  return [inch, mm, ...other].flatMap((text) => {
    if (text === null) return [];
    const unit = UNIT_OF.find(([word]) => word.test(text))?.[1];
    const fault = unit === undefined ? null : faultIn(text, statement, unit);
    return fault === null ? [] : [`${statement.text}: ${text} (${fault})`];
  });
}

describe('a nominal and its limits in another unit', () => {
  test.each([
    // 4.7625 mm is nominal and lower limit at once; the nearest, 4.76, would lie below 4.77.
    ['3/16 +1/32/-0 in', 'mm', '4.77 mm (4.77–5.55 mm)'],
    // 5.55625 mm is both nominal and upper limit.
    ['7/32 +0/-1/32 in', 'mm', '5.55 mm (4.77–5.55 mm)'],
    // Limits 0.0005 in apart need another place, and the nominal has it as well.
    ['0.0400 ± 0.0001 in', 'mm', '1.016 mm (1.014–1.018 mm)'],
    ['0.5000 ± 0.0001 in', 'mm', '12.700 mm (12.698–12.702 mm)'],
    ['0.0201 in min', 'mm', '0.511 mm min'],
    ['0.6 mm max', 'in', '0.0236 in max'],
    ['0.0001 mm max', 'in', '0.000003 in max'],
    ['13/64 in', 'mm', '5.16 mm'],
  ])('%s in %s: %s', (text, unit, printed) => {
    const { inch, mm } = equivalents(size(text));
    expect(unit === 'in' ? inch : mm).toBe(printed);
  });

  test('of a time per volume the longer is the smaller flow, also alone', () => {
    // 3600/35 L/h is 10.2857 for 1000/… of 100 ml in 35 s: the flow is at least that.
    expect(equivalents(size('35 s per 100 ml max')).other[0]).toBe('10.29 L/h min');
    expect(equivalents(size('35 s per 100 ml min')).other[0]).toBe('10.28 L/h max');
  });

  test('stands inside them for thousands of sizes of every form', () => {
    const whole = fc.integer({ min: 1, max: 4000 });
    const inch = whole.map((n) => `${(n / 1000).toFixed(3)} in`);
    const parts = fc
      .tuple(fc.integer({ min: 1, max: 190 }), fc.constantFrom(16, 32, 64))
      .map(([n, d]) => [n, d] as const);
    const bare = fc.oneof(
      fc.tuple(whole, fc.constantFrom(2, 3)).map(([n, p]) => (n / 10 ** p).toFixed(p)),
      parts.map(([n, d]) => `${n}/${d}`),
    );
    const unit = fc.constantFrom('in', 'mm', 'inHg', 'kPa', 'psi', 'ft-lb', 'N·m', 'L/h');
    const small = fc.constantFrom('0.0001', '0.001', '0.002', '0.005', '1/64', '1/32', '0.25', '0');
    const texts = fc.oneof(
      inch,
      fc.tuple(bare, small, unit).map(([n, t, u]) => `${n} ± ${t} ${u}`),
      fc.tuple(bare, small, unit).map(([n, t, u]) => `${n} +${t}/-0 ${u}`),
      fc.tuple(bare, small, unit).map(([n, t, u]) => `${n} +0/-${t} ${u}`),
      fc.tuple(bare, bare, unit).map(([n, m, u]) => `${n} to ${m} ${u}`),
      fc
        .tuple(bare, unit, fc.constantFrom('min', 'max'))
        .map(([n, u, side]) => `${n} ${u} ${side}`),
      fc.tuple(whole, whole).map(([n, m]) => `${Math.min(n, m)} to ${Math.max(n, m)} s per 100 ml`),
      fc.tuple(fc.integer({ min: 1, max: 80 }), small).map(([n, t]) => `No. ${n} drill ± ${t} in`),
    );
    let pairs = 0;
    const faults: string[] = [];
    fc.assert(
      fc.property(texts, (text) => {
        const read = readStatement(text, { gauges: gaugeBook() });
        if (!read.ok) return;
        const { low, high, nominal } = read.statement;
        if (low && high && low.base.compare(high.base) >= 0) return;
        if (low && low.base.s < 0n) return;
        if (nominal === null && low === null && high === null) return;
        pairs++;
        faults.push(...faultsOf(read.statement));
      }),
      { numRuns: runs(8000), seed: 11 },
    );
    console.log(`nominal inside limits: ${pairs} sizes, ${faults.length} outside`);
    expect(faults).toEqual([]);
    expect(pairs).toBeGreaterThan(runs(4000));
  });

  test('stands inside them for every size that the demo states', () => {
    const folder = 'sheets';
    let pairs = 0;
    for (const name of readdirSync(folder).filter((file) => file.endsWith('.md'))) {
      for (const [, text = ''] of readFileSync(`${folder}/${name}`, 'utf8').matchAll(
        /^ {4}value: (.+)$/gm,
      )) {
        const read = readStatement(text, { gauges: gaugeBook(), swg: 'imperial' });
        if (!read.ok) continue;
        pairs++;
        expect(faultsOf(read.statement)).toEqual([]);
      }
    }
    expect(pairs).toBeGreaterThan(100);
  });
});

test('a nominal outside of its own limits is left to the source', () => {
  const exact = { nominal: rational('0.203'), low: rational('0.205'), high: rational('0.213') };
  expect(printedFigures(exact, 4).nominal).toBeNull();
});

test('exact figures keep their places, limits are drawn in, the nominal follows', () => {
  const number = fc
    .tuple(fc.integer({ min: 1, max: 9999 }), fc.integer({ min: 1, max: 640 }))
    .map(([n, d]) => rational(n, d));
  fc.assert(
    fc.property(number, number, number, fc.integer({ min: 0, max: 4 }), (a, b, c, at) => {
      const [low, nominal, high] = [a, b, c].sort((one, two) => one.compare(two));
      if (!low || !nominal || !high || low.equals(high)) return;
      const shown = printedFigures({ low, nominal, high }, at);
      if (!shown.low || !shown.nominal || !shown.high) throw new Error('lost');
      expect(shown.low.compare(low)).toBeGreaterThanOrEqual(0);
      expect(shown.high.compare(high)).toBeLessThanOrEqual(0);
      expect(shown.nominal.compare(shown.low)).toBeGreaterThanOrEqual(0);
      expect(shown.nominal.compare(shown.high)).toBeLessThanOrEqual(0);
      expect(shown.places).toBeGreaterThanOrEqual(at);
    }),
    { numRuns: runs(3000) },
  );
  expect(figuresIn(size('13/64 in'), 'in', 6).nominal?.equals(rational('0.203125'))).toBe(true);
});
