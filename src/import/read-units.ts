import type { Kind } from '../kinds/model.ts';
import { cellName, columnLetters, spans } from './cell-address.ts';
import { ListGrid } from './list-grid.ts';
import type { Table } from './list-model.ts';
import { givenSetting, type ListedUnit } from './listed-unit.ts';
import type { Mapping } from './mapping.ts';
import { MergedSlips } from './merged-slips.ts';
import { cellText, readCell, saysNothing } from './read-cell.ts';
import { RowFacts } from './row-facts.ts';
import { addSaid, inReadingOrder, namedUnit, type RowsReading, takeSize } from './rows-reading.ts';
import { settingRows } from './setting-rows.ts';
import { sizeDoubts } from './size-doubts.ts';
import { inListOrder, type Slip } from './slip.ts';
import type { SizeTools } from './written-size.ts';

/** What a list came to. */
export interface ListedUnits {
  /** In the list's order; each is named, and none stands there twice for certain. */
  readonly units: readonly ListedUnit[];
  readonly slips: readonly Slip[];
  /** What was passed over on purpose: hidden rows and columns. Whole sentences. */
  readonly passed: readonly string[];
}

/** Reads the units of a table as its mapping says. What cannot be read is listed by its cell. */
export function readUnits(
  table: Table,
  mapping: Mapping,
  kind: Kind,
  tools: SizeTools,
): ListedUnits {
  const grid = new ListGrid(table, mapping);
  const slips: Slip[] = [];
  const facts = new RowFacts(grid, mapping, kind, tools, slips);
  const merged = new MergedSlips(grid);
  const owners = new Map<string, ListedUnit>();
  const reading: RowsReading = {
    grid,
    mapping,
    kind,
    tools,
    facts,
    merged,
    slips,
    found: [],
    failed: [],
    owners,
  };
  const units = mapping.layout === 'row-is-unit' ? unitRows(reading) : settingRows(reading);
  for (const slip of sizeDoubts(reading.found, reading.failed, tools)) {
    if (slip.code === 'changed-places') takeBack(slip, slips);
    slips.push(slip);
    if (slip.outcome !== 'kept') blankOut(slip, reading);
  }
  slips.push(...merged.slips());
  return { units, slips: inListOrder(slips), passed: passedOver(grid, mapping) };
}

function unitRows(reading: RowsReading): ListedUnit[] {
  const units: ListedUnit[] = [];
  for (const row of reading.grid.rows) {
    const unit = namedUnit(row, reading);
    if (unit === null) continue;
    units.push(unit);
    const paper = reading.facts.paper(row);
    for (const { column, to, unit: measure } of inReadingOrder(reading.mapping)) {
      if (!('setting' in to)) continue;
      const setting = reading.kind.settings.get(to.setting);
      if (setting === undefined) continue;
      const barred = reading.merged.bars(row.row, column);
      if (barred !== null) {
        if (to.to === 'value') givenSetting(unit, to.setting).unread = barred;
        continue;
      }
      const cell = reading.grid.cell(row, column);
      if (cell === null || saysNothing(cell)) continue;
      if (to.to === 'said') {
        givenSetting(unit, to.setting).says.set(to.key, cellText(cell));
        continue;
      }
      const read = readCell(cell, setting, measure, reading.tools);
      takeSize(read, { cell, setting, unit: measure }, to.to === 'also', unit, reading);
      const given = unit.settings.get(to.setting);
      if (given !== undefined) given.paper = paper;
    }
    addSaid(unit, reading.mapping);
  }
  return units;
}

/** Two cells that changed places are told as that, and not once more each by itself. */
function takeBack({ at }: Slip, slips: Slip[]): void {
  const cells = at.split(' and ');
  for (let each = slips.length - 1; each >= 0; each -= 1) {
    if (cells.includes(slips[each]?.at ?? '')) slips.splice(each, 1);
  }
}

function blankOut(slip: Slip, { owners, found, failed }: RowsReading): void {
  for (const at of slip.at.split(' and ')) {
    const one = [...found, ...failed].find(({ cell }) => cellName(cell.row, cell.column) === at);
    const given = one && owners.get(at)?.settings.get(one.setting.name);
    if (!given) continue;
    given.value = null;
    given.unread = slip.message;
  }
}

function passedOver(grid: ListGrid, mapping: Mapping): string[] {
  const passed: string[] = [];
  const column = (name: string) =>
    mapping.columns.find(({ to }) => to.to === 'field' && to.field === name);
  const page = column('page') ?? column('source-year');
  if (page !== undefined && column('source') === undefined) {
    passed.push(
      `Column ${columnLetters(page.column)} is not read: no column is the source that it belongs to.`,
    );
  }
  if (grid.hiddenRows.length > 0) {
    passed.push(
      `Hidden and not read: rows ${spans(grid.hiddenRows)} (\`hidden: read\` reads them).`,
    );
  }
  if (grid.hiddenColumns.length > 0) {
    const columns = spans(grid.hiddenColumns, columnLetters);
    passed.push(`Hidden and not read: columns ${columns} (\`hidden: read\` reads them).`);
  }
  return passed;
}
