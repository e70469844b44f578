import fc from 'fast-check';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { cellName } from '../../src/import/cell-address.ts';
import type { List, Table } from '../../src/import/list-model.ts';
import { listBounds } from '../../src/import/list-model.ts';
import { readList } from '../../src/import/read-list.ts';
import { folderWith } from '../project/folder.ts';
import { runs } from '../suite/part.ts';
import { listAsCsv } from './club-list.ts';
import { flatSpreadsheet, hasOffice, savedAs } from './spreadsheet.ts';

function read(bytes: Uint8Array): List {
  const found = readList(bytes);
  if (!found.ok) throw new Error(found.message);
  return found.list;
}

function refused(bytes: Uint8Array): string {
  const found = readList(bytes);
  return found.ok ? 'read' : found.message;
}

/** Cells by their names, as they show themselves. */
function shown(table: Table | undefined): Record<string, string> {
  return Object.fromEntries(
    (table?.rows ?? []).flatMap(({ cells }) =>
      [...cells.values()].map(({ row, column, text }) => [cellName(row, column), text] as const),
    ),
  );
}

const csv = (text: string) => read(new TextEncoder().encode(text));

describe('a CSV file', () => {
  it('is read in UTF-8 with and without its mark, and in UTF-16 either way around', () => {
    const text = 'Model,Timing\nF27,8° BTDC\n';
    const utf8 = new TextEncoder().encode(text);
    const little = new Uint8Array(new Uint16Array([...text].map((l) => l.charCodeAt(0))).buffer);
    const big = little.map((_, i) => little[i ^ 1] ?? 0);
    for (const bytes of [utf8, Uint8Array.of(0xef, 0xbb, 0xbf, ...utf8)]) {
      expect(read(bytes)).toMatchObject({ settled: [] });
      expect(shown(read(bytes).tables[0])).toEqual({
        A1: 'Model',
        B1: 'Timing',
        A2: 'F27',
        B2: '8° BTDC',
      });
    }
    const wides = [
      little,
      big,
      Uint8Array.of(0xff, 0xfe, ...little),
      Uint8Array.of(0xfe, 0xff, ...big),
    ];
    for (const bytes of wides) {
      expect(read(bytes).settled).toEqual(['the file was read as UTF-16']);
      expect(shown(read(bytes).tables[0]).B2).toBe('8° BTDC');
    }
  });

  it('is told to be Windows-1252 where it is no UTF-8', () => {
    const list = read(Uint8Array.from([0x41, 0x2c, 0x38, 0xb0, 0x0a]));
    expect(shown(list.tables[0])).toEqual({ A1: 'A', B1: '8°' });
    expect(list.settled[0]).toContain('was read as Windows-1252 (its first odd sign is then °)');
  });

  it('has its delimiter found, inch marks and decimal commas in the cells or not', () => {
    expect(shown(csv('Model;Float level\nF27;5,16 mm\nL83;5,20 mm\n').tables[0]).B2).toBe(
      '5,16 mm',
    );
    expect(shown(csv('Model\tNote\nF27\ta, b, c\nL83\td; e\n').tables[0]).B2).toBe('a, b, c');
    expect(shown(csv('Model,Bore\nF27,1-7/16"\nL83,1-1/2"\n').tables[0]).B2).toBe('1-7/16"');
    expect(
      shown(csv('Model,Note\nF27,"first, ""second""\nthird"\nL83,x\n').tables[0]),
    ).toMatchObject({
      B2: 'first, "second"\nthird',
      A3: 'L83',
    });
    expect(shown(csv('one\ntwo\n').tables[0])).toEqual({ A1: 'one', A2: 'two' });
  });

  it('keeps its rows where a spreadsheet counts them, empty ones too', () => {
    expect(shown(csv('a\n\n\r\nb\n').tables[0])).toEqual({ A1: 'a', A4: 'b' });
  });

  it('gives back what was written, whatever stands in the cells', () => {
    const cell = fc.string({ unit: 'grapheme', maxLength: 12 }).map((text) => text.trim());
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 8 }),
        (rows) => {
          const heads = [['Maker', 'Model', 'Note'], ...rows.map(([, ...rest]) => ['x', ...rest])];
          const table = csv(listAsCsv(heads)).tables[0];
          for (const [at, row] of heads.entries()) {
            for (const [column, text] of row.entries()) {
              const found = table?.rows.find((each) => each.row === at + 1)?.cells.get(column + 1);
              expect(found?.text ?? '').toBe(text.trim());
            }
          }
        },
      ),
      { numRuns: runs(200) },
    );
  });
});

/** A workbook of one sheet, by the XML of its rows and whatever else it holds. */
function workbook(sheet: string, more: Readonly<Record<string, string>> = {}): Uint8Array {
  const parts = {
    'xl/workbook.xml':
      '<workbook xmlns:r="r"><sheets><sheet name="Units" sheetId="1" r:id="rId1"/></sheets></workbook>',
    'xl/_rels/workbook.xml.rels':
      '<Relationships><Relationship Id="rId1" Target="worksheets/sheet1.xml"/></Relationships>',
    'xl/worksheets/sheet1.xml': `<worksheet>${sheet}</worksheet>`,
    ...more,
  };
  return zipSync(
    Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])),
  );
}

describe('an XLSX file', () => {
  it('has shared, inline and formula texts, numbers by their formats, errors and days', () => {
    const formats = ['General', '0.000', '# ??/??', '# ?/64', 'd-mmm', '0.0" in"', '#,##0', '0%'];
    const styles = `<styleSheet><numFmts>${formats
      .map(
        (code, at) =>
          `<numFmt numFmtId="${170 + at}" formatCode="${code.replaceAll('"', '&quot;')}"/>`,
      )
      .join(
        '',
      )}</numFmts><cellXfs>${formats.map((_, at) => `<xf numFmtId="${170 + at}"/>`).join('')}</cellXfs></styleSheet>`;
    const strings =
      '<sst><si><r><t>13/</t></r><r><t>64</t></r><rPh><t>no</t></rPh></si><si><t>a_x000D_b</t></si></sst>';
    const list = read(
      workbook(
        `<sheetData><row r="2"><c r="A2" t="s"><v>0</v></c><c r="B2" t="inlineStr"><is><t>7/32</t></is></c><c t="str"><f>A2</f><v>13/64</v></c><c r="D2" t="e"><v>#N/A</v></c><c r="E2" t="b"><v>1</v></c><c r="F2"><f>1/0</f></c></row>
         <row r="4"><c r="A4"><v>0.20300000000000001</v></c><c r="B4" s="1"><v>0.203125</v></c><c r="C4" s="2"><v>1.203125</v></c><c r="D4" s="3"><v>0.203125</v></c><c r="E4" s="4"><v>46089</v></c><c r="F4" s="5"><v>1.25</v></c><c r="G4" s="6"><v>4500</v></c><c r="H4" s="7"><v>0.5</v></c></row></sheetData>`,
        { 'xl/styles.xml': styles, 'xl/sharedStrings.xml': strings },
      ),
    );
    expect(list).toMatchObject({ format: 'xlsx', tables: [{ name: 'Units', hidden: false }] });
    expect(shown(list.tables[0])).toEqual({
      A2: '13/64',
      B2: '7/32',
      C2: '13/64',
      D2: '#N/A',
      E2: 'TRUE',
      F2: '',
      A4: '0.203',
      B4: '0.203',
      C4: '1 13/64',
      D4: '13/64',
      // Serial 46089 is 8 March 2026: 46023 is 1 January 2026 (from memory).
      E4: '2026-03-08',
      F4: '1.3 in',
      G4: '4,500',
      H4: '50%',
    });
    const types = [...(list.tables[0]?.rows[0]?.cells.values() ?? [])].map(({ type }) => type);
    expect(types).toEqual(['text', 'text', 'text', 'error', 'boolean', 'unworked']);
  });

  it('tells hidden rows and columns, and merged areas', () => {
    const [table] = read(
      workbook(
        '<cols><col min="2" max="3" hidden="1"/></cols><sheetData><row r="1" hidden="1"><c r="A1" t="inlineStr"><is><t>x</t></is></c></row></sheetData><mergeCells><mergeCell ref="A1:B3"/></mergeCells>',
      ),
    ).tables;
    expect(table?.rows[0]).toMatchObject({ row: 1, hidden: true });
    expect([...(table?.hiddenColumns ?? [])]).toEqual([2, 3]);
    expect(table?.merged).toEqual([{ top: 1, left: 1, bottom: 3, right: 2 }]);
  });
});

describe('a hostile file', () => {
  it('is refused where it would unpack to more than a list needs, before it is unpacked', () => {
    const bytes = workbook('', { 'xl/sharedStrings.xml': '<sst/>' });
    const view = new DataView(bytes.buffer, bytes.byteOffset);
    // Each entry of the directory states the unpacked size at its byte 24 (PKZIP APPNOTE 4.3.12).
    for (let at = 0; at + 46 < bytes.length; at += 1) {
      if (view.getUint32(at, true) !== 0x02014b50) continue;
      const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + 20));
      if (name === 'xl/sharedStrings.xml') view.setUint32(at + 24, listBounds.part + 1, true);
    }
    expect(refused(bytes)).toContain(
      `its part xl/sharedStrings.xml would unpack to ${listBounds.part + 1} bytes`,
    );
  });

  it('is not unpacked beyond the size that it states', () => {
    // Said to be short, a long part is cut off, and then it is no XML.
    const long = `<sst>${'<si><t>x</t></si>'.repeat(5000)}</sst>`;
    const bytes = workbook('', { 'xl/sharedStrings.xml': long });
    const view = new DataView(bytes.buffer, bytes.byteOffset);
    for (let at = 0; at + 46 < bytes.length; at += 1) {
      if (view.getUint32(at, true) !== 0x02014b50) continue;
      if (view.getUint32(at + 24, true) === long.length) view.setUint32(at + 24, 10, true);
    }
    expect(refused(bytes)).toContain('is damaged');
  });

  it('is refused with a document type, deep nesting, and cells far off', () => {
    const entity = '<!DOCTYPE sst [<!ENTITY a "x">]><sst><si><t>&a;</t></si></sst>';
    expect(refused(workbook('', { 'xl/sharedStrings.xml': entity }))).toContain(
      'declares a document type',
    );
    expect(refused(workbook('<a>'.repeat(80) + '</a>'.repeat(80)))).toContain('more than 64 deep');
    expect(refused(workbook('<a></b>'))).toContain('is damaged');
    expect(
      refused(
        workbook('<sheetData><row r="1048576"><c r="A1048576"><v>1</v></c></row></sheetData>'),
      ),
    ).toContain('cell A1048576 lies beyond what is read');
  });

  it('of OpenDocument cannot repeat a cell without end', () => {
    const content = (cells: string) =>
      zipSync({
        'content.xml': strToU8(
          `<office:document-content xmlns:office="o" xmlns:table="t" xmlns:text="x"><table:table table:name="A">${cells}</table:table></office:document-content>`,
        ),
      });
    const cell = (more: string) =>
      `<table:table-cell ${more} office:value-type="float" office:value="1"><text:p>1</text:p></table:table-cell>`;
    const rows = (more: string, cells: string) =>
      `<table:table-row ${more}>${cells}</table:table-row>`;
    expect(
      refused(content(rows('', cell('table:number-columns-repeated="1000000000"')))),
    ).toContain('lies beyond what is read');
    expect(refused(content(rows('table:number-rows-repeated="1048576"', cell(''))))).toContain(
      'lies beyond what is read',
    );
    // Empty cells fill a sheet to its end and cost nothing.
    const empty = '<table:table-cell table:number-columns-repeated="16384"/>';
    const list = read(
      content(rows('', cell('')) + rows('table:number-rows-repeated="1048575"', empty)),
    );
    expect(shown(list.tables[0])).toEqual({ A1: '1' });
  });

  it('of any bytes is read or refused, and nothing else', () => {
    const whole = workbook('<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>');
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.nat(255), fc.nat(whole.length), (at, byte, cut) => {
        const bytes = whole.slice(0, Math.max(cut, 4));
        bytes[Math.min(at, bytes.length - 1)] = byte;
        expect(typeof readList(bytes).ok).toBe('boolean');
      }),
      { numRuns: runs(300) },
    );
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(typeof readList(bytes).ok).toBe('boolean');
      }),
    );
  });

  it('of another kind is named', () => {
    expect(refused(strToU8('%PDF-1.7'))).toBe('it is a PDF');
    expect(refused(Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0))).toContain('of the old kind (.xls)');
  });
});

describe.runIf(hasOffice)('a list that a spreadsheet program saved', () => {
  const flat = flatSpreadsheet([
    {
      name: 'Units',
      rows: [
        ['Model', 'Level', 'Hidden'],
        ['F27', { value: 0.2035, style: 'three' }, 'x'],
        ['L83', { value: 15 / 64, style: 'sixtyfourths' }, 'x'],
        ['R35', { date: '2026-03-08' }, 'x'],
        ['1D', { formula: '13/64', value: 13 / 64 }, 'x'],
        [{ text: '1E', down: 2 }, 0.25, 'x'],
        [null, 1.5, 'x'],
        ['<1F> & "co"', { text: 'wide', across: 2 }],
      ],
      hiddenRows: [3],
      hiddenColumns: [3],
    },
    { name: 'Second', rows: [['only']] },
  ]);

  it.each(['xlsx', 'ods'] as const)(
    'as %s shows the same cells',
    (format) => {
      const list = read(savedAs(format, flat, folderWith()));
      const [table, second] = list.tables;
      expect(list.format).toBe(format);
      expect(list.tables.map(({ name }) => name)).toEqual(['Units', 'Second']);
      expect(shown(second)).toEqual({ A1: 'only' });
      const { B5, ...others } = shown(table);
      expect(others).toMatchObject({
        A2: 'F27',
        // Halves round up, as both programs show it.
        B2: '0.204',
        B3: '15/64',
        B4: '2026-03-08',
        A6: '1E',
        B6: '0.25',
        B7: '1.5',
        A8: '<1F> & "co"',
        B8: 'wide',
      });
      expect(Number(B5)).toBeCloseTo(13 / 64, format === 'xlsx' ? 6 : 2);
      expect(table?.rows.filter(({ hidden }) => hidden).map(({ row }) => row)).toEqual([3]);
      expect([...(table?.hiddenColumns ?? [])]).toEqual([3]);
      expect(table?.merged).toEqual([
        { top: 6, left: 1, bottom: 7, right: 1 },
        { top: 8, left: 2, bottom: 8, right: 3 },
      ]);
      const types = table?.rows.map(({ cells }) => cells.get(2)?.type);
      expect(types).toEqual([
        'text',
        'number',
        'number',
        'date',
        'number',
        'number',
        'number',
        'text',
      ]);
    },
    200_000,
  );
});
