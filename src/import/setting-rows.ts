import { nearestName } from '../text/index.ts';
import { cellName } from './cell-address.ts';
import type { Cell, TableRow } from './list-model.ts';
import { givenSetting, type ListedUnit } from './listed-unit.ts';
import type { RowField } from './mapping.ts';
import { cellText, readCell, saysNothing } from './read-cell.ts';
import { addSaid, inReadingOrder, namedUnit, type RowsReading, takeSize } from './rows-reading.ts';

/** The units of a list in which every row is one setting; rows of one unit need not stand together. */
export function settingRows(reading: RowsReading): ListedUnit[] {
  const units = new Map<string, ListedUnit>();
  for (const row of reading.grid.rows) {
    const named = namedUnit(row, reading);
    if (named === null) continue;
    const key = JSON.stringify([named.maker, named.model, named.partNumbers].flat());
    const unit = units.get(key) ?? named;
    if (unit === named) units.set(key, unit);
    else unit.rows.push(row.row);
    readRow(row, unit, reading);
  }
  for (const unit of units.values()) addSaid(unit, reading.mapping);
  return [...units.values()];
}

function readRow(row: TableRow, unit: ListedUnit, reading: RowsReading): void {
  const { kind, mapping, tools, facts, slips } = reading;
  const name = fieldCell(row, 'setting', reading);
  if (name === null) return;
  const text = cellText(name);
  const setting = kind.settingNamed(text);
  const { row: at, column } = name;
  if (setting === null) {
    const near = nearestName(text, kind.settings.keys());
    slips.push({
      code: 'setting-unknown',
      at: cellName(at, column),
      row: at,
      column,
      shown: text,
      message: `a ${kind.name} has no setting of that name`,
      could: near === null ? [] : [near],
      outcome: `row ${at} is left out`,
    });
    return;
  }
  const stated = fieldCell(row, 'measure', reading);
  for (const { column: each, to, unit: measure } of inReadingOrder(mapping)) {
    if (to.to !== 'row' || (to.field !== 'value' && to.field !== 'also')) continue;
    const barred = reading.merged.bars(row.row, each);
    if (barred !== null) {
      if (to.field === 'value') givenSetting(unit, setting.name).unread = barred;
      continue;
    }
    const cell = reading.grid.cell(row, each);
    if (cell === null || saysNothing(cell)) continue;
    const own = to.field === 'value' && stated !== null ? cellText(stated) : measure;
    const read = readCell(cell, setting, own, tools);
    if (to.field === 'value' && isSecond(unit, setting.name, read, cell, reading)) return;
    takeSize(read, { cell, setting, unit: own }, to.field === 'also', unit, reading);
  }
  const given = unit.settings.get(setting.name);
  if (given === undefined) return;
  given.paper = facts.paper(row);
  for (const { column: each, to } of mapping.columns) {
    const said = to.to === 'row-said' ? reading.grid.cell(row, each) : null;
    if (to.to === 'row-said' && !saysNothing(said)) given.says.set(to.key, cellText(said));
  }
}

/** Whether a unit has that setting from an earlier row; another figure there is listed. */
function isSecond(
  unit: ListedUnit,
  name: string,
  read: ReturnType<typeof readCell>,
  { row, column }: Cell,
  { slips }: RowsReading,
): boolean {
  const known = unit.settings.get(name);
  if (known === undefined || known.cell === null) return false;
  const written = read.is === 'size' ? read.written : null;
  if (written !== null && written === known.value) return true;
  slips.push({
    code: 'duplicate',
    at: cellName(row, column),
    row,
    column,
    shown: written ?? '',
    message: `${unit.maker} ${unit.model} has this setting in ${known.cell} already, as ${known.value ?? 'what could not be read'}`,
    could: ['put the second statement under `but:` in the sheet, with its source'],
    outcome: `row ${row} is left out`,
  });
  return true;
}

function fieldCell(row: TableRow, field: RowField, { mapping, grid }: RowsReading): Cell | null {
  const found = mapping.columns.find(({ to }) => to.to === 'row' && to.field === field);
  const cell = found === undefined ? null : grid.cell(row, found.column);
  return saysNothing(cell) ? null : cell;
}
