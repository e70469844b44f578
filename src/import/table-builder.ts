import { cellName } from './cell-address.ts';
import {
  type Cell,
  ListFault,
  listBounds,
  type MergedArea,
  type Table,
  type TableRow,
} from './list-model.ts';

/** How many cells all tables of one file have taken so far. */
export interface CellCount {
  cells: number;
}

/** Gathers the cells of one table within the bounds. Fails with `ListFault` beyond them. */
export class TableBuilder {
  readonly #rows = new Map<number, Map<number, Cell>>();
  readonly #hiddenRows = new Set<number>();
  readonly #merged: MergedArea[] = [];
  readonly #hiddenColumns = new Set<number>();
  readonly #count: CellCount;

  constructor(count: CellCount) {
    this.#count = count;
  }

  /** Takes a cell; one that shows nothing is none, unless it holds what cannot be shown. */
  add(cell: Cell): void {
    const text = cell.text.trim();
    if (text === '' && (cell.type === 'text' || cell.type === 'number')) return;
    const { row, column } = cell;
    if (row > listBounds.row || column > listBounds.column) {
      throw new ListFault(
        `cell ${cellName(row, column)} lies beyond what is read (${listBounds.row} rows, ${listBounds.column} columns)`,
        'take out what is far from the list, and save it again',
      );
    }
    if (text.length > listBounds.cell) {
      throw new ListFault(`cell ${cellName(row, column)} holds ${text.length} characters`);
    }
    this.#count.cells += 1;
    if (this.#count.cells > listBounds.cells) {
      throw new ListFault(
        `the list has more than ${listBounds.cells} filled cells`,
        'split it, or take out what does not belong in it',
      );
    }
    const cells = this.#rows.get(row) ?? new Map<number, Cell>();
    this.#rows.set(row, cells);
    cells.set(column, { ...cell, text });
  }

  hideRow(row: number): void {
    if (row <= listBounds.row) this.#hiddenRows.add(row);
  }

  /** Both ends inclusive. */
  hideColumns(first: number, last: number): void {
    for (let each = first; each <= Math.min(last, listBounds.column); each += 1) {
      this.#hiddenColumns.add(each);
    }
  }

  merge(area: MergedArea): void {
    if (this.#merged.length >= listBounds.merged) {
      throw new ListFault(`the list has more than ${listBounds.merged} merged areas`);
    }
    this.#merged.push(area);
  }

  build(name: string, hidden: boolean): Table {
    const rows: TableRow[] = [...this.#rows]
      .sort(([a], [b]) => a - b)
      .map(([row, cells]) => ({ row, hidden: this.#hiddenRows.has(row), cells }));
    const merged = this.#merged.sort((a, b) => a.top - b.top || a.left - b.left);
    return { name, hidden, rows, merged, hiddenColumns: this.#hiddenColumns };
  }
}
