import { describe, expect, test } from 'vitest';
import { thread, threads } from '../../src/gauges/index.ts';
import { rational } from '../../src/quantity/rational.ts';
import { referenceRows } from './reference-tables.ts';

/** How the reference row would be written on a sheet. */
function written(row: Record<string, string>): string {
  const { series = '', size = '', tpi_or_pitch: pitch = '' } = row;
  if (series === 'BA') return `${size} BA`;
  if (series === 'ISO coarse') return size;
  if (series === 'ISO fine') return `${size} x ${pitch}`;
  return `${size}-${pitch} ${series}`;
}

describe('row by row against the reference table (each row names its source)', () => {
  const rows = referenceRows('threads.tsv').map((row) => ({ ...row, name: written(row) }));

  test('the table is whole', () => expect(rows.length).toBe(69 + 9 + 20));

  test.each(rows)('$name', (row: Record<string, string>) => {
    const found = thread(row.name ?? '');
    expect(found?.series).toBe(row.series);
    expect(found?.pitchMm.round(6).equals(rational(row.pitch_mm ?? ''))).toBe(true);
    expect(
      found?.pitchMm
        .div('25.4')
        .round(7)
        .equals(rational(row.pitch_in ?? '')),
    ).toBe(true);
    // The reference prints four places; 3/32 in is 2.38125 and stands there as 2.3812.
    const off = found?.majorMm.sub(rational(row.major_mm ?? '')).abs();
    expect(off?.compare('0.00005')).toBeLessThanOrEqual(0);
  });
});

describe('formulas', () => {
  test('a pitch of threads an inch is exactly 25.4 over them', () => {
    for (const each of threads()) {
      if (each.tpi !== null) expect(each.pitchMm.mul(each.tpi).equals('25.4')).toBe(true);
    }
  });

  test('a number is 0.060 + 0.013 n in of major diameter (ASME B1.1)', () => {
    const numbered = threads().flatMap((each) => {
      const number = /^(\d+)-/.exec(each.name)?.[1];
      return number ? [{ each, number }] : [];
    });
    expect(numbered.length).toBe(20);
    for (const { each, number } of numbered) {
      const inches = rational('0.013').mul(Number(number)).add(rational('0.060'));
      expect(each.majorMm.equals(inches.mul('25.4'))).toBe(true);
    }
  });

  test('BA: p = 0.9^n to .01 mm, D = 6 (0.9^n)^1.2 mm to two figures (BS 93:1951), all 26', () => {
    for (let n = 0; n <= 25; n++) {
      const found = thread(`${n} BA`);
      expect(found?.pitchMm.valueOf()).toBe(Number((0.9 ** n).toFixed(2)));
      expect(found?.majorMm.valueOf()).toBe(Number((6 * (0.9 ** n) ** 1.2).toPrecision(2)));
    }
  });

  test.each([
    // ASME B1.1, from an open dataset and computed.
    ['4-40', '0.635'],
    ['6-32', '0.79375'],
    ['8-32', '0.79375'],
    ['10-32', '0.79375'],
    ['10-24', '1.058333'],
    ['12-24', '1.058333'],
    ['12-28', '0.907143'],
    ['1/4-28', '0.907143'],
    // BS 93:1951.
    ['2 BA', '0.81'],
    ['4 BA', '0.66'],
    ['6 BA', '0.53'],
    // The small end, as two open pages state it.
    ['23 BA', '0.09'],
    // BS 811: 26 threads an inch, 0.0385 in as an open table prints it.
    ['5/16 CEI', '0.976923'],
  ])('%s has a pitch of %s mm', (name, mm) => {
    expect(thread(name)?.pitchMm.round(6).equals(rational(mm))).toBe(true);
  });

  test('one and a half turns of 10-32 are 1.190625 mm', () => {
    expect(thread('10-32')?.pitchMm.mul('1.5').equals('1.190625')).toBe(true);
  });
});

describe('names', () => {
  test.each([
    ['10-32 UNF', '10-32 UNF'],
    ['10-32', '10-32 UNF'],
    ['No. 10-32', '10-32 UNF'],
    ['No.10-32 UNF', '10-32 UNF'],
    ['#10-32 UNF-2A', '10-32 UNF'],
    ['10-32 NF', '10-32 UNF'],
    ['10-24', '10-24 UNC'],
    ['10 UNF', '10-32 UNF'],
    ['12-32', '12-32 UNEF'],
    ['1/4-28 UNF', '1/4-28 UNF'],
    ['1/4-20', '1/4-20 UNC'],
    ['1/4-20 BSW', '1/4-20 BSW'],
    ['1/4 in Whitworth', '1/4-20 BSW'],
    ['1/4 BSF', '1/4-26 BSF'],
    ['1/4" BSF', '1/4-26 BSF'],
    ['1/4-26 BSF', '1/4-26 BSF'],
    ['1/4 x 26 tpi BSF', '1/4-26 BSF'],
    ['1/4 B.S.F.', '1/4-26 BSF'],
    ['5/16-24 unf', '5/16-24 UNF'],
    ['1/4-26', '1/4-26 BSF'],
    ['1/4 CEI', '1/4-26 BSC'],
    ['5/16 C.E.I.', '5/16-26 BSC'],
    ['5/16 x 26 tpi cycle', '5/16-26 BSC'],
    ['3/16 BSC', '3/16-32 BSC'],
    ['1/2-20 CEI', '1/2-20 BSC'],
    ['1/2-26 BSCy', '1/2-26 BSC'],
    ['20 BA', '20 BA'],
    ['2 BA', '2 BA'],
    ['2BA', '2 BA'],
    ['No. 2 B.A.', '2 BA'],
    ['BA 2', '2 BA'],
    ['M6', 'M6'],
    ['M6 x 1', 'M6'],
    ['M6×1', 'M6'],
    ['M6 x 1.0', 'M6'],
    ['M6 x 0.75', 'M6 x 0.75'],
    ['m6x.75', 'M6 x 0.75'],
    ['M6 × 0,75 mm', 'M6 x 0.75'],
    ['M6x1-6g', 'M6'],
    ['M3.5', 'M3.5'],
    ['M8 x 1', 'M8 x 1'],
  ])('`%s` is %s', (text, name) => expect(thread(text)?.name).toBe(name));

  test.each([
    ['10-30 UNF', 'no such pitch on that diameter'],
    ['10-28', 'no such pitch on that diameter'],
    ['10-32 UNC', 'a pitch of the other series'],
    ['1/4-26 UNF', 'a pitch of the other standard'],
    ['M6 x 0.8', 'no such pitch on that diameter'],
    ['M6 x', 'a pitch begun and not said'],
    ['26 BA', 'no such number'],
    ['1/2 CEI', 'two pitches on that diameter, and neither is said'],
    ['3/4 BSC', 'two pitches on that diameter, and neither is said'],
    ['1/4-20 CEI', 'no such pitch on that diameter'],
    ['M99', 'no such diameter'],
    ['1/4', 'a diameter alone'],
    ['10', 'a number alone'],
    ['103', 'a number that ends like a class'],
    ['10-322A', 'a class that runs into the pitch'],
    ['1/4-28 UNX', 'an unknown series'],
    ['1/4-28 toString', 'a word of the language'],
    ['', 'nothing'],
  ])('`%s` is no thread: %s', (text) => expect(thread(text)).toBeNull());

  test('every thread is found again by its own name', () => {
    for (const each of threads()) expect(thread(each.name)).toEqual(each);
    expect(threads().every((each) => each.source !== '')).toBe(true);
  });
});
