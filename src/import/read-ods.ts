import { type CellType, type List, ListFault, listBounds, type Table } from './list-model.ts';
import { plainNumber } from './number-format.ts';
import { readXml } from './read-xml.ts';
import { type CellCount, TableBuilder } from './table-builder.ts';
import { unpack } from './unpack.ts';

/** Reads an ODS file (OpenDocument 1.3, part 3). Fails with `ListFault`. */
export function readOds(bytes: Uint8Array): List {
  const content = unpack(bytes, (name) => name === 'content.xml').get('content.xml');
  if (content === undefined) throw new ListFault('the file has no content.xml, so it is no table');
  const tables: Table[] = [];
  const count: CellCount = { cells: 0 };
  const hidden = hiddenTables(content);
  let reader: TableReader | null = null;
  // A table inside a cell is no list; what stands in it is passed over.
  let depth = 0;
  readXml(content, 'content.xml', {
    open: (name, attributes) => {
      if (name === 'table:table') {
        depth += 1;
        if (depth > 1) return;
        if (tables.length >= listBounds.tables) {
          throw new ListFault(`the file has more than ${listBounds.tables} tables`);
        }
        reader = new TableReader(attributes['table:name'] ?? '', count);
        reader.isHidden = hidden.has(attributes['table:style-name'] ?? '');
      } else if (depth === 1) reader?.open(name, attributes);
    },
    close: (name) => {
      if (name === 'table:table') {
        depth -= 1;
        if (depth === 0 && reader) tables.push(reader.build());
      } else if (depth === 1) reader?.close(name);
    },
    text: (piece) => {
      if (depth === 1) reader?.text(piece);
    },
  });
  return { format: 'ods', tables, settled: [] };
}

/** Names of table styles that hide the table. */
function hiddenTables(content: string): ReadonlySet<string> {
  const names = new Set<string>();
  let style = '';
  readXml(content, 'content.xml', {
    open: (name, attributes) => {
      if (name === 'style:style') style = attributes['style:name'] ?? '';
      if (name === 'style:table-properties' && attributes['table:display'] === 'false') {
        names.add(style);
      }
    },
    close: () => {},
    text: () => {},
  });
  return names;
}

type Attributes = Readonly<Record<string, string>>;

class TableReader {
  isHidden = false;
  readonly #name: string;
  readonly #table: TableBuilder;
  #row = 0;
  #rows = 1;
  #column = 0;
  #hiddenColumnAt = 0;
  #cell: Attributes | null = null;
  #paragraphs: string[] = [];
  /** Inside a comment or a drawing, which are no text of the cell. */
  #aside = 0;
  #inText = 0;

  constructor(name: string, count: CellCount) {
    this.#name = name;
    this.#table = new TableBuilder(count);
  }

  open(name: string, attributes: Attributes): void {
    if (name === 'table:table-column') {
      const first = this.#hiddenColumnAt + 1;
      this.#hiddenColumnAt += repeated(attributes['table:number-columns-repeated']);
      if (isHidden(attributes)) this.#table.hideColumns(first, this.#hiddenColumnAt);
    } else if (name === 'table:table-row') {
      this.#row += 1;
      this.#column = 0;
      this.#rows = repeated(attributes['table:number-rows-repeated']);
      if (!isHidden(attributes)) return;
      const last = Math.min(this.#row + this.#rows - 1, listBounds.row);
      for (let row = this.#row; row <= last; row += 1) this.#table.hideRow(row);
    } else if (name === 'table:table-cell' || name === 'table:covered-table-cell') {
      this.#cell = attributes;
      this.#paragraphs = [];
    } else if (name === 'office:annotation' || name.startsWith('draw:')) this.#aside += 1;
    else if (this.#cell === null || this.#aside > 0) return;
    else if (name === 'text:p') {
      this.#inText += 1;
      this.#paragraphs.push('');
    } else if (name === 'text:s')
      this.#append(' '.repeat(Math.min(repeated(attributes['text:c']), 100)));
    else if (name === 'text:tab' || name === 'text:line-break') this.#append(' ');
  }

  text(piece: string): void {
    if (this.#inText > 0 && this.#aside === 0) this.#append(piece);
  }

  close(name: string): void {
    if (name === 'office:annotation' || name.startsWith('draw:')) this.#aside -= 1;
    else if (name === 'text:p' && this.#aside === 0 && this.#cell !== null) this.#inText -= 1;
    else if (name === 'table:table-row') this.#row += this.#rows - 1;
    else if (name === 'table:table-cell' || name === 'table:covered-table-cell') this.#put(name);
  }

  build(): Table {
    return this.#table.build(this.#name, this.isHidden);
  }

  #append(piece: string): void {
    if (this.#paragraphs.length === 0) return;
    this.#paragraphs[this.#paragraphs.length - 1] += piece;
  }

  #put(name: string): void {
    const cell = this.#cell ?? {};
    this.#cell = null;
    const times = repeated(cell['table:number-columns-repeated']);
    const left = this.#column + 1;
    this.#column += times;
    const wide = repeated(cell['table:number-columns-spanned']);
    const high = repeated(cell['table:number-rows-spanned']);
    if (wide > 1 || high > 1) {
      this.#table.merge({
        top: this.#row,
        left,
        bottom: this.#row + high - 1,
        right: left + wide - 1,
      });
    }
    // What stands under a merged cell is hidden by it.
    if (name === 'table:covered-table-cell') return;
    const found = contentOf(cell, this.#paragraphs.join('\n'));
    if (found === null) return;
    const formula = cell['table:formula'] !== undefined;
    for (let row = this.#row; row < this.#row + this.#rows; row += 1) {
      for (let column = left; column < left + times; column += 1) {
        this.#table.add({ row, column, ...found, formula });
      }
    }
  }
}

/** What a cell holds; null for an empty one. */
function contentOf(
  cell: Attributes,
  shown: string,
): { text: string; raw: string; type: CellType } | null {
  const kind = cell['office:value-type'];
  if (cell['calcext:value-type'] === 'error') return { text: shown, raw: shown, type: 'error' };
  if (kind === 'date') {
    const raw = cell['office:date-value'] ?? shown;
    return { text: raw.slice(0, 10), raw: shown, type: 'date' };
  }
  if (kind === 'time')
    return { text: shown, raw: cell['office:time-value'] ?? shown, type: 'date' };
  if (kind === 'boolean')
    return { text: shown, raw: cell['office:boolean-value'] ?? '', type: 'boolean' };
  if (kind === 'float' || kind === 'percentage' || kind === 'currency') {
    const number = Number(cell['office:value'] ?? Number.NaN);
    if (Number.isNaN(number)) return { text: shown, raw: shown, type: 'text' };
    return {
      text: shown === '' ? plainNumber(number) : shown,
      raw: plainNumber(number),
      type: 'number',
    };
  }
  if (shown !== '') return { text: shown, raw: shown, type: 'text' };
  return cell['table:formula'] === undefined ? null : { text: '', raw: '', type: 'unworked' };
}

function isHidden(attributes: Attributes): boolean {
  const visibility = attributes['table:visibility'];
  return visibility === 'collapse' || visibility === 'filter';
}

/** How often something stands there; once where nothing is said. */
function repeated(text: string | undefined): number {
  const count = Number(text ?? 1);
  return Number.isInteger(count) && count >= 1 ? count : 1;
}
