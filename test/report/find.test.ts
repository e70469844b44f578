import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { findIn, queryOf, withinFrom } from '../../src/report/find/index.ts';
import { readSheet } from '../../src/sheet/index.ts';

const gauges = gaugeBook();
const root = join(import.meta.dirname, '..', '..');

const sheets = [
  'orlo-t71-wexcombe-six',
  'pellow-p44-ravensgarth-sports',
  'bressac-e52-astrelle-1100',
].map((name) => {
  const file = `sheets/${name}.md`;
  const text = readFileSync(join(root, file), 'utf8');
  return readSheet(text, file, { kinds: builtInKinds(), gauges, wireGauge: null });
});

/** What is found, as `sheet label written (off)`. */
function found(what: string, within?: string) {
  const query = queryOf(what, gauges, within === undefined ? null : withinFrom(within, gauges));
  return findIn(sheets, query, gauges).map(
    ({ sheet, label, written, off }) =>
      `${sheet.slice(0, 6)} ${label}: ${written}${off === null ? '' : ` (${off})`}`,
  );
}

describe('a size', () => {
  const level = [
    'orlo-t Float level: 13/64 ± 1/64 in',
    'orlo-t Float level, also: 0.2031 in',
    'orlo-t Float level, also: 5.159 mm',
    'orlo-t Float level, gauge: 13/64 drill',
  ];

  test.each(['13/64', '13/64 in', '13/64"', '0.203', '.203 in', '5.16 mm', '5,16', '13/64 drill'])(
    '%s is found in every notation',
    (written) => expect(found(written)).toEqual(level),
  );

  test('is found beside one that is near, with how far it is off', () => {
    // No. 6 is 0.2040 in, 0.0009 in above 13/64.
    expect(
      found('No. 6 drill').every((line) => line.includes('less)') || line.includes('0.2031')),
    ).toBe(true);
    expect(found('No. 6 drill').length).toBe(4);
    expect(found('No. 6 drill', '0.0005 in')).toEqual([]);
    expect(found('No. 5 drill')).toEqual([]);
    expect(found('No. 5 drill', '2 %').length).toBe(4);
  });

  test('is not found by its letters', () => {
    expect(found('3/64', '0.0001 in')).toEqual([]);
    expect(found('1/3', '0.0001 in')).toEqual([]);
    expect(found('3.64 in')).toEqual([]);
  });

  test('of any other measure is found in its own', () => {
    expect(found('64 kPa')).toEqual([]);
    expect(found('18-1/2 inHg').join()).toContain('Idle vacuum: 18-1/2 inHg min');
    expect(found('62.65 kPa vacuum').join()).toContain('Idle vacuum');
    expect(found('725 rpm')).toEqual(['pellow Idle speed: 725 ± 25 rpm']);
    expect(found('725')).toEqual(['pellow Idle speed: 725 ± 25 rpm']);
    expect(found('10 flats').join()).toContain('Jet height: 10 flats down');
  });

  test('with limits finds what lies between them', () => {
    expect(found('0.200 to 0.210 in')).toEqual(level);
    expect(found('13/64 ± 1/64 in')).toEqual([
      ...level.slice(0, 3),
      'orlo-t Float level, also: 4.763–5.556 mm',
      ...level.slice(3),
    ]);
    expect(found('0.2032 to 0.210 in')).toEqual([]);
  });

  test('a distance that is none is refused', () => {
    expect(withinFrom('soon', gauges)).toBeNull();
    expect(withinFrom('flush', gauges)).toBeNull();
  });
});

describe('words', () => {
  test('find settings by every name of theirs', () => {
    for (const name of ['float-level', 'Float level', 'float height'])
      expect(found(name)[0]).toBe('orlo-t Float level: 13/64 ± 1/64 in');
  });

  test('find sources, their pages, part numbers and features', () => {
    expect(found('workshop manual').join()).toContain(
      'orlo-t Source m48: Wexcombe Six Workshop Manual',
    );
    expect(found('m48 p. 31')).toEqual([
      'orlo-t Float level, from: 13/64 ± 1/64 in, m48 p. 31',
      'orlo-t Float drop, from: 23/32 ± 1/32 in, m48 p. 31',
    ]);
    expect(found('P44/10').join()).toContain('pellow Part number: P44/10 rear');
    expect(found('constant depression').join()).toContain('pellow Feature: constant-depression');
    expect(found('1948')).toContain('orlo-t Fits: Wexcombe Six 1948-1950');
  });

  test('find a step, all words of it, once', () => {
    const lines = found('stopwatch');
    expect(lines.length).toBe(1);
    expect(lines[0]).toMatch(/^pellow Tools: .*stopwatch/);
    expect(found('steel rule straight').length).toBe(1);
    expect(found('steel zebra')).toEqual([]);
  });

  test('say where they stand', () => {
    const [first] = findIn(sheets, queryOf('jet-height', gauges), gauges);
    const line = sheets[1]?.text.split('\n')[(first?.line ?? 0) - 1];
    expect(line).toMatch(/^ {2}jet-height:/);
    expect(first?.column).toBe(3);
  });

  test('of a stranger cost little', () => {
    expect(found('a'.repeat(5000))).toEqual([]);
    expect(found('((((')).toEqual([]);
    expect(found('')).toEqual([]);
  });
});
