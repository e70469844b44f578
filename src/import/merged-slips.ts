import { cellName, columnLetters, spans } from './cell-address.ts';
import type { ListGrid } from './list-grid.ts';
import type { MergedArea } from './list-model.ts';
import type { Slip } from './slip.ts';

/** What merged areas kept from being read: gathered while rows are read, told once an area. */
export class MergedSlips {
  readonly #grid: ListGrid;
  readonly #blank = new Map<MergedArea, string[]>();
  readonly #rows = new Map<MergedArea, number[]>();

  constructor(grid: ListGrid) {
    this.#grid = grid;
  }

  /**
   * The reason why a cell of a column is not to be read: it lies under a merged area; null where it
   * may be read. An area of one column holds for its first row.
   */
  bars(row: number, column: number): string | null {
    const area = this.#grid.listedArea(row, column);
    if (area === null || (area.left === area.right && row === area.top)) return null;
    this.#blank.set(area, [...(this.#blank.get(area) ?? []), cellName(row, column)]);
    return `${areaName(area)} is one merged cell`;
  }

  /** Takes down that a row names no unit because its name lies under an area. */
  rowLost(row: number, area: MergedArea): void {
    this.#rows.set(area, [...(this.#rows.get(area) ?? []), row]);
  }

  slips(): readonly Slip[] {
    const areas = new Set([...this.#blank.keys(), ...this.#rows.keys()]);
    return [...areas].map((area) => {
      const lost = this.#rows.get(area) ?? [];
      const blank = this.#blank.get(area) ?? [];
      const outcome = [
        lost.length === 0 ? null : `${lost.length === 1 ? 'row' : 'rows'} ${spans(lost)} left out`,
        blank.length === 0 ? null : `${blank.join(', ')} left blank`,
      ];
      return {
        code: 'merged',
        at: areaName(area),
        row: area.top,
        column: area.left,
        shown: this.#grid.shown(area),
        message: `cells are merged here, and only ${cellName(area.top, area.left)} holds anything`,
        could: [
          'unmerge them and write each; or `merged: repeat` in the mapping, where it holds for all',
        ],
        outcome: outcome.filter((part) => part !== null).join('; '),
      };
    });
  }
}

function areaName({ top, left, bottom, right }: MergedArea): string {
  return `${columnLetters(left)}${top}:${columnLetters(right)}${bottom}`;
}
