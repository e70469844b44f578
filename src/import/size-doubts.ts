import type { KindSetting } from '../kinds/model.ts';
import type { Rational, Statement } from '../quantity/model.ts';
import { cellName } from './cell-address.ts';
import type { Cell } from './list-model.ts';
import { type CellRead, cellText } from './read-cell.ts';
import type { Slip, SlipCode } from './slip.ts';
import { isUsual, usualForms, usualText } from './usual-size.ts';
import { isOf, readSize, type SizeTools, withUnit } from './written-size.ts';

/** A size of a list, with its cell, its setting and the unit of its column. */
export interface FoundSize {
  readonly cell: Cell;
  readonly setting: KindSetting;
  readonly unit: string | null;
  readonly read: Extract<CellRead, { readonly is: 'size' }>;
}

/** A cell of a value that came to no size. */
export type FailedSize = Omit<FoundSize, 'read'> & { readonly code: SlipCode };

/** Fewer sizes than this of one setting and unit have no habit. */
const HABIT = 5;

/**
 * Sizes that read and cannot be right as they stand: outside the kind's usual range, or far from all
 * others of their column, and inside in another unit; or two of a row that changed places. They are
 * listed and never converted. Slips whose outcome is `kept` leave the size in the sheet.
 */
export function sizeDoubts(
  found: readonly FoundSize[],
  failed: readonly FailedSize[],
  tools: SizeTools,
): readonly Slip[] {
  const slips: Slip[] = [];
  const done = new Set<SizeInPlace>();
  const outside = found.filter(({ read, setting }) => isUsual(read.statement, setting) === false);
  const suspects: readonly SizeInPlace[] = [...outside, ...failed];
  for (const one of suspects) {
    const other = suspects.find(
      (each) => !done.has(one) && !done.has(each) && changedPlaces(one, each, tools),
    );
    if (other === undefined) continue;
    done.add(one).add(other);
    slips.push(placesSlip(one, other));
  }
  const groups = alike(found);
  for (const one of outside) {
    const middle = middleOf(groups.find((group) => group.includes(one)) ?? []);
    if (!done.has(one)) slips.push(outsideSlip(one, middle, tools));
    done.add(one);
  }
  for (const group of groups) {
    const middle = middleOf(group);
    if (middle === null) continue;
    for (const one of group) {
      const slip = done.has(one) ? null : habitSlip(one, group, middle, tools);
      if (slip !== null) slips.push(slip);
    }
  }
  return slips;
}

/** A value's cell, whether it came to a size or not. */
type SizeInPlace = Omit<FoundSize, 'read'>;

/** Whether two cells of a row, neither of which is right where it stands, would be usual in each other's. */
function changedPlaces(one: SizeInPlace, other: SizeInPlace, tools: SizeTools): boolean {
  if (one.cell.row !== other.cell.row || one.setting === other.setting) return false;
  return fits(cellText(one.cell), other, tools) && fits(cellText(other.cell), one, tools);
}

function fits(text: string, { setting, unit }: SizeInPlace, tools: SizeTools): boolean {
  return [text, withUnit(text, unit ?? '')].some((written) => {
    const reading = readSize(written, setting.dimensions, tools);
    return (
      reading.ok &&
      reading.statement.condition === null &&
      isOf(reading.statement, setting.dimensions) &&
      isUsual(reading.statement, setting) === true
    );
  });
}

function placesSlip(one: SizeInPlace, other: SizeInPlace): Slip {
  const [first, second] = one.cell.column < other.cell.column ? [one, other] : [other, one];
  const at = cellName(first.cell.row, first.cell.column);
  const beside = cellName(second.cell.row, second.cell.column);
  return {
    ...placed(first, 'changed-places'),
    at: `${at} and ${beside}`,
    shown: `${cellText(first.cell)}, ${cellText(second.cell)}`,
    message: `${cellText(first.cell)} as ${first.setting.label} and ${cellText(second.cell)} as ${second.setting.label} are both far from usual, and would be usual the other way around`,
    could: [`${at} is ${cellText(second.cell)}, and ${beside} is ${cellText(first.cell)}`],
    outcome: 'both left blank',
  };
}

function outsideSlip(one: FoundSize, middle: Rational | null, tools: SizeTools): Slip {
  const { setting, read } = one;
  const message = `${read.written} lies outside what is usual as ${setting.label}, ${usualText(read.statement, setting) ?? ''}`;
  const forms = otherForms(one, tools);
  // Where the column has a habit, what is like the others is likelier than what is only usual.
  const like = forms.filter(({ statement }) => isNear(statement, one, middle));
  const could = (like.length > 0 ? like : forms).map(({ text }) => text);
  if (could.length > 0) {
    return { ...placed(one, 'unit-doubtful'), message, could, outcome: 'left blank' };
  }
  return { ...placed(one, 'unusual'), message, could, outcome: 'kept' };
}

function habitSlip(
  one: FoundSize,
  group: readonly FoundSize[],
  middle: Rational,
  tools: SizeTools,
): Slip | null {
  const size = sizeOf(one.read.statement);
  if (size === null || size.n === 0n) return null;
  const ratio = size.div(middle);
  if (ratio.compare(8) < 0 && ratio.inverse().compare(8) < 0) return null;
  const could = otherForms(one, tools)
    .filter(({ statement }) => isNear(statement, one, middle))
    .map(({ text }) => text);
  if (could.length === 0) return null;
  const far = Math.round(Math.max(ratio.valueOf(), 1 / ratio.valueOf()));
  const message = `${one.read.written} is ${far} times ${ratio.compare(1) > 0 ? 'as large' : 'as small'} as the middle one of the ${group.length} given as ${one.setting.label}`;
  return { ...placed(one, 'unit-doubtful'), message, could, outcome: 'left blank' };
}

/** Whether another reading of a size lies within a factor of two of the middle one of its column. */
function isNear(statement: Statement, one: FoundSize, middle: Rational | null): boolean {
  const size = sizeOf(statement);
  if (middle === null || size === null || size.n === 0n) return false;
  if (statement.dimension !== one.read.statement.dimension) return false;
  const ratio = size.div(middle);
  return ratio.compare(2) <= 0 && ratio.inverse().compare(2) <= 0;
}

/** The same figures in other common units, and with a hyphen read as a fraction's stroke. */
function otherForms(one: FoundSize, tools: SizeTools) {
  const { setting, read, unit, cell } = one;
  const text = cellText(cell);
  if (!read.bare) return [];
  const forms = usualForms(text, setting, tools).filter((form) => form.text !== read.written);
  const stroke = /^(\d{1,2})-(\d{1,2})$/.exec(text);
  if (stroke === null || unit === null) return forms;
  const written = withUnit(`${stroke[1]}/${stroke[2]}`, unit);
  const reading = readSize(written, setting.dimensions, tools);
  if (!reading.ok || isUsual(reading.statement, setting) !== true) return forms;
  return [{ text: written, statement: reading.statement }, ...forms];
}

/** Bare numbers of one setting in one unit, where there are enough to have a habit. */
function alike(found: readonly FoundSize[]): readonly (readonly FoundSize[])[] {
  const groups = new Map<string, FoundSize[]>();
  for (const one of found) {
    if (!one.read.bare) continue;
    const key = `${one.setting.name} ${one.unit ?? ''}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].filter((group) => group.length >= HABIT);
}

/** The nominal, or the middle of the limits, in base units; null for a condition. */
function sizeOf(statement: Statement): Rational | null {
  const { nominal, low, high } = statement;
  if (nominal !== null) return nominal.base;
  if (low !== null && high !== null) return low.base.add(high.base).div(2);
  return (low ?? high)?.base ?? null;
}

/** The median size of a group in base units; null for an empty one, and where it is zero. */
function middleOf(group: readonly FoundSize[]): Rational | null {
  const sorted = group
    .map(({ read }) => sizeOf(read.statement))
    .filter((size) => size !== null)
    .sort((a, b) => a.compare(b));
  const middle = sorted[Math.floor(sorted.length / 2)];
  return middle === undefined || middle.n === 0n ? null : middle;
}

function placed({ cell }: SizeInPlace, code: Slip['code']) {
  const at = cellName(cell.row, cell.column);
  return { code, at, row: cell.row, column: cell.column, shown: cellText(cell) };
}
