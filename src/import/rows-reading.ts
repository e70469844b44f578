import type { Kind } from '../kinds/model.ts';
import { cellName } from './cell-address.ts';
import type { ListGrid } from './list-grid.ts';
import type { TableRow } from './list-model.ts';
import { givenSetting, type ListedUnit } from './listed-unit.ts';
import type { Mapping } from './mapping.ts';
import type { MergedSlips } from './merged-slips.ts';
import { cellText, type readCell } from './read-cell.ts';
import type { RowFacts } from './row-facts.ts';
import type { FailedSize, FoundSize } from './size-doubts.ts';
import type { Slip } from './slip.ts';
import type { SizeTools } from './written-size.ts';

/** What reading the rows of a list needs and gathers. */
export interface RowsReading {
  readonly grid: ListGrid;
  readonly mapping: Mapping;
  readonly kind: Kind;
  readonly tools: SizeTools;
  readonly facts: RowFacts;
  readonly merged: MergedSlips;
  readonly slips: Slip[];
  readonly found: FoundSize[];
  /** Cells of values that came to no size. */
  readonly failed: FailedSize[];
  /** The unit that a cell's size belongs to, by the cell's name. */
  readonly owners: Map<string, ListedUnit>;
}

/** Takes what a cell came to into its unit; a slip leaves a blank behind. */
export function takeSize(
  read: ReturnType<typeof readCell>,
  place: Omit<FoundSize, 'read'>,
  isAlso: boolean,
  unit: ListedUnit,
  reading: RowsReading,
): void {
  const { slips, found, owners } = reading;
  const { cell, setting } = place;
  const at = cellName(cell.row, cell.column);
  if (read.is === 'empty') return;
  // What one column alone says is the value, whichever column it is.
  const only = unit.settings.get(setting.name);
  const isValue = !isAlso || only === undefined || (only.value === null && only.unread === null);
  if (read.is === 'slip') {
    const outcome = isAlso ? 'left out' : 'left blank';
    const { code, message, could } = read;
    const { row, column } = cell;
    slips.push({ code, at, row, column, shown: cellText(cell), message, could, outcome });
    if (isAlso) return;
    reading.failed.push({ ...place, code });
    owners.set(at, unit);
    const given = givenSetting(unit, setting.name);
    given.unread = message;
    given.cell = at;
    return;
  }
  const given = givenSetting(unit, setting.name);
  if (!isValue) {
    given.also.push(read.written);
    return;
  }
  given.value = read.written;
  given.cell = at;
  found.push({ ...place, read });
  owners.set(at, unit);
}

/** Columns of values first: what stands beside a value is known as such only then. */
export function inReadingOrder(mapping: Mapping): Mapping['columns'] {
  const isBeside = ({ to }: Mapping['columns'][number]) =>
    to.to === 'also' || (to.to === 'row' && to.field === 'also');
  return [...mapping.columns].sort((a, b) => Number(isBeside(a)) - Number(isBeside(b)));
}

/** Words that the mapping says of all, beside the settings that the unit has. */
export function addSaid(unit: ListedUnit, mapping: Mapping): void {
  for (const [name, keys] of mapping.says) {
    const given = unit.settings.get(name);
    for (const [key, said] of keys) if (given && !given.says.has(key)) given.says.set(key, said);
  }
  // Words beside a setting that the row says nothing of say nothing.
  for (const [name, given] of unit.settings) {
    if (given.value === null && given.unread === null && given.also.length === 0) {
      unit.settings.delete(name);
    }
  }
}

/** The unit that a row names; null, and a slip, for a row that names none. */
export function namedUnit(row: TableRow, reading: RowsReading): ListedUnit | null {
  const { facts, mapping, slips, merged, grid } = reading;
  if (isHeads(row, mapping)) return null;
  const model = facts.cell(row, 'model');
  const maker = facts.maker(row);
  if (model !== null && maker !== null) return facts.unit(row, maker, model);
  const column = facts.column(model === null ? 'model' : 'maker') ?? 0;
  const area = grid.listedArea(row.row, column);
  const [first] = [...row.cells.values()].sort((a, b) => a.column - b.column);
  if (first === undefined) return null;
  if (area !== null && area.top !== row.row) {
    merged.rowLost(row.row, area);
    return null;
  }
  const settings = mapping.columns.filter(
    ({ column: each, to }) => (to.to === 'value' || to.to === 'row') && row.cells.has(each),
  );
  const isNote = settings.length === 0 && model === null;
  slips.push({
    code: isNote ? 'footnote' : 'nameless',
    at: cellName(first.row, first.column),
    row: first.row,
    column: first.column,
    shown: cellText(first),
    message: isNote
      ? 'this row names no unit and gives no setting: a note, or a heading'
      : `this row gives settings and names no ${model === null ? 'model' : 'maker'}`,
    could: [],
    outcome: `row ${row.row} is no sheet`,
  });
  return null;
}

/** Whether a row says the heads over again, as lists of several pages do. */
function isHeads(row: TableRow, mapping: Mapping): boolean {
  const cells = mapping.columns.filter(({ column }) => row.cells.has(column));
  return (
    cells.length > 1 &&
    cells.every(({ column, head }) => cellText(row.cells.get(column) ?? null) === head)
  );
}
