import { cellName } from './cell-address.ts';
import type { Cell, MergedArea, Table, TableRow } from './list-model.ts';
import type { Mapping } from './mapping.ts';

/** The cells of a table as a mapping has them read: hidden ones left out, merged ones as it says. */
export class ListGrid {
  /** The rows that are read, from the top. */
  readonly rows: readonly TableRow[];
  /** Hidden rows and columns among them that are passed over. */
  readonly hiddenRows: readonly number[];
  readonly hiddenColumns: readonly number[];
  readonly #table: Table;
  readonly #repeats: boolean;
  readonly #areas = new Map<string, MergedArea>();

  constructor(table: Table, mapping: Mapping) {
    this.#table = table;
    this.#repeats = mapping.merged === 'repeat';
    const first = mapping.first ?? mapping.heads + 1;
    const last = mapping.last ?? Number.POSITIVE_INFINITY;
    const within = table.rows.filter(({ row }) => row >= first && row <= last);
    const skips = mapping.hidden === 'skip';
    this.rows = within.filter(({ hidden }) => !(skips && hidden));
    this.hiddenRows = within.filter(({ hidden }) => skips && hidden).map(({ row }) => row);
    this.hiddenColumns = mapping.columns
      .filter(({ column, to }) => skips && to.to !== 'nothing' && table.hiddenColumns.has(column))
      .map(({ column }) => column);
    const columns = new Set(mapping.columns.map(({ column }) => column));
    for (const area of table.merged) {
      const bottom = Math.min(area.bottom, this.rows.at(-1)?.row ?? 0);
      for (let row = Math.max(area.top, first); row <= bottom; row += 1) {
        for (const column of columns) {
          if (column < area.left || column > area.right) continue;
          this.#areas.set(cellName(row, column), area);
        }
      }
    }
  }

  /**
   * What a row holds in a column; null for an empty cell, a hidden one, and one whose merging leaves
   * open whether it holds for the column.
   */
  cell(row: TableRow, column: number): Cell | null {
    if (this.hiddenColumns.includes(column)) return null;
    const area = this.merged(row.row, column);
    if (area === null) return row.cells.get(column) ?? null;
    if (this.#repeats) {
      const anchor = this.#table.rows.find((each) => each.row === area.top);
      const cell = anchor?.cells.get(area.left);
      return cell === undefined ? null : { ...cell, row: row.row, column };
    }
    // Over several columns it may belong to any of them.
    return area.left === area.right ? (row.cells.get(column) ?? null) : null;
  }

  /** The merged area over a cell, where the mapping has them listed; null elsewhere. */
  listedArea(row: number, column: number): MergedArea | null {
    return this.#repeats ? null : this.merged(row, column);
  }

  merged(row: number, column: number): MergedArea | null {
    return this.#areas.get(cellName(row, column)) ?? null;
  }

  /** What the first cell of an area shows. */
  shown(area: MergedArea): string {
    const anchor = this.#table.rows.find(({ row }) => row === area.top);
    return anchor?.cells.get(area.left)?.text ?? '';
  }
}
