import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { gaugeleaf } from '../cli/console.ts';
import { folderWith } from '../project/folder.ts';
import { shameful } from './shameful.ts';

/** What no list may cost: milliseconds of the processor, which other tests at work beside it use as well. A club's own takes fifty. */
const patience = 15_000;

const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const relations = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

/** A spreadsheet (ECMA-376) of one table, with that in it. */
function xlsx(sheet: string, more: Readonly<Record<string, string>> = {}): Uint8Array {
  const parts = {
    'xl/workbook.xml': `<workbook xmlns="${main}" xmlns:r="${relations}"><sheets><sheet name="A" sheetId="1" r:id="r1"/></sheets></workbook>`,
    'xl/_rels/workbook.xml.rels':
      '<Relationships><Relationship Id="r1" Target="worksheets/sheet1.xml"/></Relationships>',
    'xl/worksheets/sheet1.xml': `<worksheet xmlns="${main}">${sheet}</worksheet>`,
    ...more,
  };
  return zipSync(
    Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])),
  );
}

/** A table of OpenDocument 1.3 with these rows. */
function ods(rows: string): Uint8Array {
  const table = `<office:document-content><office:body><office:spreadsheet><table:table table:name="A">${rows}</table:table></office:spreadsheet></office:body></office:document-content>`;
  return zipSync({ 'content.xml': strToU8(table) });
}

const cell = (text: string) => `<c t="inlineStr"><is><t>${text}</t></is></c>`;
const heads = `<row r="1">${['Maker', 'Model', 'Float level'].map(cell).join('')}</row>`;
const unit = `<row r="2">${['Orlo', 'F27', '13/64 in'].map(cell).join('')}</row>`;
const odsCell = (text: string, more = '') =>
  `<table:table-cell office:value-type="string"${more}><text:p>${text}</text:p></table:table-cell>`;
const odsRows = `<table:table-row>${['Maker', 'Model', 'Float level'].map((text) => odsCell(text)).join('')}</table:table-row><table:table-row>${['Orlo', 'F27', '13/64 in'].map((text) => odsCell(text)).join('')}</table:table-row>`;

describe('a list that means harm costs no seconds', () => {
  it.each<[string, string, () => Uint8Array]>([
    [
      'a declared size of all that a spreadsheet has',
      'x.xlsx',
      () => xlsx(`<dimension ref="A1:XFD1048576"/><sheetData>${heads}${unit}</sheetData>`),
    ],
    [
      'a cell in the last row and column',
      'x.xlsx',
      () =>
        xlsx(
          `<sheetData>${heads}${unit}<row r="1048576"><c r="XFD1048576" t="inlineStr"><is><t>x</t></is></c></row></sheetData>`,
        ),
    ],
    [
      'ten million empty cells',
      'x.xlsx',
      () =>
        xlsx(`<sheetData>${heads}${unit}<row r="3">${'<c/>'.repeat(10_000_000)}</row></sheetData>`),
    ],
    [
      'rows without end',
      'x.xlsx',
      () => xlsx(`<sheetData>${heads}${unit}${'<row/>'.repeat(6_000_000)}</sheetData>`),
    ],
    [
      'a million filled cells',
      'x.xlsx',
      () =>
        xlsx(
          `<sheetData>${heads}${unit}${`<row>${'<c><v>1</v></c>'.repeat(400)}</row>`.repeat(5000)}</sheetData>`,
        ),
    ],
    [
      'five thousand merged areas over all of it',
      'x.xlsx',
      () =>
        xlsx(
          `<sheetData>${heads}${unit}${Array.from({ length: 3000 }, (_, at) => `<row r="${at + 3}">${['Orlo', `F${at}`, '1 in'].map(cell).join('')}</row>`).join('')}</sheetData><mergeCells>${'<mergeCell ref="A1:XFD1048576"/>'.repeat(4900)}</mergeCells>`,
        ),
    ],
    [
      'merged areas without end',
      'x.xlsx',
      () =>
        xlsx(
          `<sheetData>${heads}${unit}</sheetData><mergeCells>${'<mergeCell ref="A1:B2"/>'.repeat(1_500_000)}</mergeCells>`,
        ),
    ],
    [
      'columns without end',
      'x.xlsx',
      () =>
        xlsx(
          `<cols>${'<col min="1" max="99999" hidden="1"/>'.repeat(900_000)}</cols><sheetData>${heads}${unit}</sheetData>`,
        ),
    ],
    [
      'strings without end',
      'x.xlsx',
      () =>
        xlsx(`<sheetData>${heads}${unit}</sheetData>`, {
          'xl/sharedStrings.xml': `<sst xmlns="${main}">${'<si><t>x</t></si>'.repeat(2_700_000)}</sst>`,
        }),
    ],
    [
      'formats without end',
      'x.xlsx',
      () =>
        xlsx(`<sheetData>${heads}${unit}</sheetData>`, {
          'xl/styles.xml': `<styleSheet xmlns="${main}"><cellXfs>${'<xf numFmtId="14"/>'.repeat(2_200_000)}</cellXfs></styleSheet>`,
        }),
    ],
    [
      'one endless cell',
      'x.xlsx',
      () =>
        xlsx(
          `<sheetData>${heads}${unit}<row r="3">${cell('x'.repeat(40_000_000))}</row></sheetData>`,
        ),
    ],
    [
      'an endless number of a format',
      'x.xlsx',
      () =>
        xlsx(
          `<sheetData>${heads}${unit}${Array.from({ length: 3000 }, () => '<row><c/><c/><c s="0"><v>0.0001234</v></c></row>').join('')}</sheetData>`,
          {
            'xl/styles.xml': `<styleSheet xmlns="${main}"><numFmts><numFmt numFmtId="200" formatCode="# ${'?'.repeat(200)}/${'?'.repeat(200)}"/></numFmts><cellXfs><xf numFmtId="200"/></cellXfs></styleSheet>`,
          },
        ),
    ],
    [
      'a cell of OpenDocument that is repeated over all columns',
      'x.ods',
      () =>
        ods(
          `${odsRows}<table:table-row>${odsCell('x', ' table:number-columns-repeated="16384"')}</table:table-row>`,
        ),
    ],
    [
      'an empty one that is',
      'x.ods',
      () =>
        ods(
          `${odsRows}<table:table-row><table:table-cell table:number-columns-repeated="16384"/></table:table-row>`,
        ),
    ],
    [
      'a row that is repeated over all rows',
      'x.ods',
      () =>
        ods(
          `${odsRows}<table:table-row table:number-rows-repeated="1048576">${odsCell('x', ' table:number-columns-repeated="500"')}</table:table-row>`,
        ),
    ],
    [
      'hidden rows that are repeated without end',
      'x.ods',
      () =>
        ods(
          `${odsRows}${'<table:table-row table:visibility="collapse" table:number-rows-repeated="999999999"/>'.repeat(10_000)}`,
        ),
    ],
    [
      'hidden columns that are',
      'x.ods',
      () =>
        ods(
          `${'<table:table-column table:visibility="collapse" table:number-columns-repeated="999999999"/>'.repeat(100_000)}${odsRows}`,
        ),
    ],
    [
      'empty rows of OpenDocument without end',
      'x.ods',
      () => ods(odsRows + '<table:table-row/>'.repeat(2_500_000)),
    ],
    [
      'spaces without end',
      'x.ods',
      () =>
        ods(
          `${odsRows}<table:table-row><table:table-cell office:value-type="string"><text:p>${'<text:s text:c="100"/>'.repeat(1_500_000)}</text:p></table:table-cell></table:table-row>`,
        ),
    ],
    [
      'paragraphs without end',
      'x.ods',
      () =>
        ods(
          `${odsRows}<table:table-row><table:table-cell office:value-type="string">${'<text:p>x</text:p>'.repeat(2_000_000)}</table:table-cell></table:table-row>`,
        ),
    ],
    [
      'commas alone',
      'x.csv',
      () =>
        strToU8(
          `Maker,Model,Float level\nOrlo,F27,13/64 in\n${`${','.repeat(8000)}\n`.repeat(2000)}`,
        ),
    ],
    [
      'empty lines alone',
      'x.csv',
      () => strToU8(`Maker,Model,Float level\nOrlo,F27,13/64 in\n${'\n'.repeat(15_000_000)}`),
    ],
    [
      'quotes alone',
      'x.csv',
      () => strToU8(`Maker,Model,Float level\nOrlo,F27,13/64 in\n${'"",'.repeat(5_000_000)}`),
    ],
    [
      'a quote that is never closed',
      'x.csv',
      () => strToU8(`Maker,Model,Float level\nOrlo,F27,"${'x\n'.repeat(7_500_000)}`),
    ],
    [
      'units without end',
      'x.csv',
      () =>
        strToU8(
          `Maker,Model,Float level\n${Array.from({ length: 40_000 }, (_, at) => `Orlo,F${at},13/64 in`).join('\n')}\n`,
        ),
    ],
  ])('%s', async (_, name, made) => {
    const bytes = made();
    const cwd = folderWith({
      'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Club\n',
      'sheets/none.txt': '',
      [name]: bytes,
    });
    const started = process.cpuUsage();
    const { status, out, err } = await gaugeleaf(
      [
        'draft',
        '--from',
        name,
        '--yes',
        '--dry-run',
        '--kind',
        'carburetor',
        '--date',
        '2026-10-03',
      ],
      { cwd },
    );
    const { user, system } = process.cpuUsage(started);
    for (const shame of shameful) expect(out + err).not.toMatch(shame);
    expect([0, 1, 2]).toContain(status);
    expect(err.length).toBeGreaterThan(0);
    expect((user + system) / 1000).toBeLessThan(patience);
  });
});
