import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { comparedRows, concordanceOf } from '../../src/concordance/index.ts';
import { concordanceCsv } from '../../src/report/concordance/index.ts';
import { concordanceText } from '../../src/report/concordance/text.ts';
import { read } from '../sheet/fixtures.ts';

const sheet = read(`---
gaugeleaf: 1
sheet: x
title: Orlo T71
unit: { kind: carburetor }
sources:
  m48: { title: Workshop Manual, kind: manual, year: 1948 }
  idle: { title: Never cited }
  bench: { title: Good units, kind: measured, units: 3 }
settings:
  float-level: { value: 13/64 in, from: [m48 p. 31, bench] }
  unloader:
    statements:
      - { value: No. 29 drill, from: m48 p. 33 }
      - { value: 0.136 in, from: bench, note: with a pin }
      - { value: No. 30 drill, from: b17 p. 2, ruling: for the later plate }
      - { value: what is this, from: bench }
  main-jet: { value: No. 47 drill, from: m48 p. 28 }
  idle-mixture:
    value: 1-1/4 turns out
    from: m48
    but: [{ value: 1 turn out }, { value: 1.25 turns out, from: bench }]
  idle-speed: { places: { left: 475 rpm, right: 480 rpm }, from: m48 p. 9 }
---
`);
const found = concordanceOf(sheet);
const row = (name: string) => {
  const one = found.rows.find(({ setting }) => setting === name);
  if (one === undefined) throw new Error(`no row ${name}`);
  return one;
};

describe('a concordance', () => {
  test('has a column for each source that is cited, listed or not, and for what has none', () => {
    expect(found.sources.map(({ name }) => name)).toEqual(['m48', 'bench', 'b17', null]);
    expect(found.sources[0]).toEqual({
      name: 'm48',
      title: 'Workshop Manual',
      facts: 'manual, 1948',
    });
    expect(found.sources[1]?.facts).toBe('measured, 3 units');
  });

  test('gives the figure to the first source beside it, and says of others only that they agree', () => {
    const [m48, bench] = row('float-level').cells;
    expect(m48).toEqual([
      {
        written: '13/64 in',
        page: 'p. 31',
        standing: 'figure',
        difference: null,
        ruling: null,
        note: null,
      },
    ]);
    expect(bench?.map(({ written, standing }) => [written, standing])).toEqual([[null, 'agrees']]);
    expect(row('float-level').differs).toBe(false);
  });

  test('prints every statement as written, and says how much a dissent is more or less', () => {
    const { cells, differs, label } = row('unloader');
    expect(label).toBe('Choke unloader');
    expect(differs).toBe(true);
    const told = cells.map((cell) =>
      cell.map(({ written, standing, difference }) => [written, standing, difference]),
    );
    // ASME B94.11M: No. 29 is 0.1360 in, No. 30 is 0.1285 in.
    expect(told).toEqual([
      [['No. 29 drill', 'figure', null]],
      [
        ['0.136 in', 'agrees', null],
        ['what is this', 'unread', null],
      ],
      [['No. 30 drill', 'differs', expect.stringMatching(/^0\.00(75|8) in less$/)]],
      [],
    ]);
    expect(cells[1]?.[0]?.note).toBe('with a pin');
    expect(cells[2]?.[0]?.ruling).toBe('for the later plate');
  });

  test('does not take what only looks like a dissent for one', () => {
    const { cells } = row('idle-mixture');
    expect(cells.map((cell) => cell.map(({ standing }) => standing))).toEqual([
      ['figure'],
      ['agrees'],
      [],
      ['differs'],
    ]);
    expect(cells[3]?.[0]?.difference).toBe('1/4 turn less');
  });

  test('leaves out of the compared rows what one source alone speaks to', () => {
    expect(comparedRows(found).map(({ setting }) => setting)).toEqual([
      'float-level',
      'unloader',
      'idle-mixture',
    ]);
    expect(row('idle-speed').figure).toBe('left 475 rpm, right 480 rpm');
  });
});

describe('as text', () => {
  test.each([60, 80, 120])('keeps to %i columns', (width) => {
    const lines = concordanceText(found, found.rows, width).split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(width);
  });

  test('has every figure, sign and ruling', () => {
    const words = concordanceText(found, found.rows, 100).replace(/\s+/g, ' ');
    for (const part of ['* No. 29 drill', '= 0.136 in', '≠ No. 30 drill', '? what is this']) {
      expect(words).toContain(part);
    }
    expect(words).toContain('b17: for the later plate');
    expect(words).toContain('(unnamed)');
  });

  test('shows control characters of a stranger’s sheet and does not send them', () => {
    const hostile = read(
      '---\nsheet: x\ntitle: "a\\e[31mb"\nsources: { m: { title: "\\e]0;t\\a" } }\nsettings: { s: { value: "1\\e[2J in", from: [m, n] } }\n---\n',
    );
    const text = concordanceText(concordanceOf(hostile), concordanceOf(hostile).rows, 80);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
    expect(text).not.toMatch(/[\x00-\x09\x0b-\x1f]/);
  });
});

describe('as CSV', () => {
  const rows: Record<string, string>[] = parse(concordanceCsv([found]), {
    columns: true,
    record_delimiter: '\r\n',
  });

  test('is read back by a general-purpose library, a row a statement', () => {
    expect(rows).toHaveLength(11);
    expect(rows.filter(({ standing }) => standing === 'differs')).toHaveLength(2);
    expect(rows.find(({ written }) => written === 'No. 30 drill')).toMatchObject({
      sheet: 'x',
      setting: 'unloader',
      figure: 'No. 29 drill',
      source: 'b17',
      page: 'p. 2',
      ruling: 'for the later plate',
    });
  });

  test('has nothing that a spreadsheet would run', () => {
    const hostile = read(
      '---\nsheet: x\nsources: { m: { title: "=cmd()" } }\nsettings: { s: { value: "@sum", from: m } }\n---\n',
    );
    const [line] = parse(concordanceCsv([concordanceOf(hostile)]), {
      columns: true,
    }) as Record<string, string>[];
    expect([line?.source_title, line?.written]).toEqual(["'=cmd()", "'@sum"]);
  });
});
