import { cellPlace } from './cell-address.ts';
import { type CellType, type List, ListFault, listBounds, type Table } from './list-model.ts';
import { plainNumber, shownNumber } from './number-format.ts';
import { local, readXml } from './read-xml.ts';
import { type CellCount, TableBuilder } from './table-builder.ts';
import { unpack } from './unpack.ts';
import { isTrue, readBook, unescaped, type XlsxBook } from './xlsx-parts.ts';

/** Reads an XLSX file (ECMA-376). Fails with `ListFault`. */
export function readXlsx(bytes: Uint8Array): List {
  const parts = unpack(bytes, (name) =>
    /^xl\/(?:[^/]+|_rels\/[^/]+|worksheets\/[^/]+)\.(?:xml|rels)$/.test(name),
  );
  const book = readBook(parts);
  if (book.sheets.length > listBounds.tables) {
    throw new ListFault(
      `the file has ${book.sheets.length} tables; at most ${listBounds.tables} are read`,
    );
  }
  const count: CellCount = { cells: 0 };
  const tables: Table[] = [];
  for (const { name, part, hidden } of book.sheets) {
    const text = parts.get(part);
    // A sheet that holds a chart alone is no table.
    if (text !== undefined && part.includes('worksheets/')) {
      tables.push(readTable(text, part, book, count).build(name, hidden));
    }
  }
  return { format: 'xlsx', tables, settled: [] };
}

interface OpenCell {
  readonly row: number;
  readonly column: number;
  readonly kind: string;
  readonly format: string;
  formula: boolean;
  value: string | null;
  inline: string;
}

function readTable(text: string, part: string, book: XlsxBook, count: CellCount): TableBuilder {
  const table = new TableBuilder(count);
  let row = 0;
  let column = 0;
  let cell: OpenCell | null = null;
  let into: 'value' | 'inline' | null = null;
  let phonetic = 0;
  readXml(text, part, {
    open: (name, attributes) => {
      const element = local(name);
      if (element === 'row') {
        row = attributes.r === undefined ? row + 1 : Number(attributes.r);
        column = 0;
        if (isTrue(attributes.hidden)) table.hideRow(row);
      } else if (element === 'c') {
        const place = cellPlace(attributes.r ?? '') ?? { row, column: column + 1 };
        column = place.column;
        cell = {
          ...place,
          kind: attributes.t ?? 'n',
          format: book.formats[Number(attributes.s ?? 0)] ?? 'General',
          formula: false,
          value: null,
          inline: '',
        };
      } else if (element === 'f' && cell) cell.formula = true;
      else if (element === 'v' && cell) into = 'value';
      else if (element === 'rPh') phonetic += 1;
      else if (element === 't' && cell && phonetic === 0) into = 'inline';
      else if (element === 'col' && isTrue(attributes.hidden)) {
        table.hideColumns(Number(attributes.min), Number(attributes.max));
      } else if (element === 'mergeCell') {
        const [first = '', last = first] = (attributes.ref ?? '').split(':');
        const [a, b] = [cellPlace(first), cellPlace(last)];
        if (a && b) table.merge({ top: a.row, left: a.column, bottom: b.row, right: b.column });
      }
    },
    close: (name) => {
      const element = local(name);
      if (element === 'v' || element === 't') into = null;
      else if (element === 'rPh') phonetic -= 1;
      else if (element === 'c' && cell) {
        const { row: at, column: across, formula } = cell;
        const found = contentOf(cell, book);
        if (found) table.add({ row: at, column: across, ...found, formula });
        cell = null;
      }
    },
    text: (piece) => {
      if (cell === null || into === null) return;
      if (into === 'value') cell.value = (cell.value ?? '') + piece;
      else cell.inline += piece;
    },
  });
  return table;
}

/** What a cell holds; null for one that is empty. */
function contentOf(
  { kind, format, formula, value, inline }: OpenCell,
  book: XlsxBook,
): { text: string; raw: string; type: CellType } | null {
  if (kind === 'inlineStr') return { text: unescaped(inline), raw: inline, type: 'text' };
  if (value === null) return formula ? { text: '', raw: '', type: 'unworked' } : null;
  if (kind === 's') {
    const text = book.strings[Number(value)] ?? '';
    return { text, raw: text, type: 'text' };
  }
  if (kind === 'str') return { text: unescaped(value), raw: value, type: 'text' };
  if (kind === 'b') return { text: value === '1' ? 'TRUE' : 'FALSE', raw: value, type: 'boolean' };
  if (kind === 'e') return { text: value, raw: value, type: 'error' };
  if (kind === 'd') return { text: value.slice(0, 10), raw: value, type: 'date' };
  const number = Number(value);
  if (value.trim() === '' || Number.isNaN(number)) return { text: value, raw: value, type: 'text' };
  const shown = shownNumber(number, format, book.from1904);
  const raw = shown.type === 'date' ? value : plainNumber(number);
  return { text: shown.text, raw, type: shown.type };
}
