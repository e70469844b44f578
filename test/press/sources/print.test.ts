import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { printConcordance } from '../../../src/press/index.ts';
import { sourceLines } from '../../../src/press/matter/citations.ts';
import {
  concordanceTables,
  sourcesAcross,
  unitConcordances,
} from '../../../src/press/sources/model.ts';
import { flate } from '../../../src/project/flate.ts';
import { readPdf } from '../pdf.ts';
import { browserHere, builtInTemplates, toPrint } from '../stand.ts';

const text = readFileSync(
  new URL('../../../sheets/dunnow-c31-tollgarth-eight.md', import.meta.url),
  'utf8',
);
const entry = toPrint(text);
const sources = sourceLines(entry.sheet);
const tables = (most: number) => concordanceTables(entry.sheet, sources, most);

describe('the tables of a concordance', () => {
  test('have a column a source, under the letter that the chapter gives it', () => {
    const [table, ...more] = tables(5);
    expect(more).toEqual([]);
    expect(table?.columns.map(({ mark }) => mark)).toEqual(['a', 'b', 'c', 'd']);
    expect(table?.span).toBe(5);
    const row = table?.rows.find(({ label }) => label === 'Choke pull-down');
    expect(row?.cells.map((cell) => cell.map(({ sign, written }) => `${sign} ${written}`))).toEqual(
      [['● No. 23 drill'], ['= 0.1540 in'], ['≠ No. 32 drill'], ['= 3.91 mm']],
    );
    expect(row?.remarks.map(({ mark }) => mark)).toEqual(['c']);
  });

  test('go on in a second one where the paper has no room for all sources', () => {
    const [first, second] = tables(3);
    expect(first?.columns).toHaveLength(3);
    expect(second?.columns.map(({ mark }) => mark)).toEqual(['d']);
    // A row stands only where one of its sources speaks.
    expect(second?.rows.some(({ label }) => label === 'Pump stroke')).toBe(false);
    for (const { rows, span } of [first, second].flatMap((table) => table ?? [])) {
      for (const { cells } of rows) expect(cells).toHaveLength(span - 1);
    }
  });

  test('stand in the booklet without the rulings, which the chapter has', () => {
    const chapter = { number: 1, anchor: 'unit-1', face: { title: 'C31' }, sources };
    const [unit] = unitConcordances([entry], [chapter], sourcesAcross({ small: true }));
    expect(unit?.title).toBe('C31');
    expect(unit?.tables.flatMap(({ rows }) => rows).flatMap(({ remarks }) => remarks)).toEqual([]);
    const alone = toPrint(
      text.replace(/from: (sl2|r70|bench)/g, 'from: te').replaceAll(', bench]', ']'),
    );
    const sole = { ...chapter, sources: sourceLines(alone.sheet) };
    expect(unitConcordances([alone], [sole], 4)[0]?.tables[0]?.columns).toHaveLength(1);
  });
});

const browser = await browserHere();

describe.skipIf(typeof browser === 'string')('the printed page', () => {
  test('has every statement, its sign and its ruling as an independent reader finds them', {
    timeout: 120_000,
  }, async () => {
    if (typeof browser === 'string') return;
    const printed = await printConcordance({
      ...entry,
      edition: null,
      paper: 'half-letter',
      templates: builtInTemplates(),
      browser,
      flate,
    });
    expect(printed.problems).toEqual([]);
    const { pages } = await readPdf(printed.pdf);
    const words = pages
      .map((page) => page.text)
      .join(' ')
      .replace(/\s+/g, '');
    for (const part of ['No. 23 drill', '0.1540 in', 'No. 32 drill', '3.91 mm', '≠', '●', '=']) {
      expect(words).toContain(part.replaceAll(' ', ''));
    }
    expect(words).toContain('Theleaflethasthetwodigitschangedabout.');
  });
});
