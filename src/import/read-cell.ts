import type { Statement } from '../quantity/model.ts';
import { dayIn, typedBefore } from './calendar.ts';
import type { Cell } from './list-model.ts';
import type { SlipCode } from './slip.ts';
import { isUsual, type SizePlace, usualForms } from './usual-size.ts';
import { isOf, readSize, type SizeTools, withUnit } from './written-size.ts';

/** What a cell of a setting's column came to. */
export type CellRead =
  | { readonly is: 'empty' }
  | {
      readonly is: 'size';
      /** As it goes into the sheet. */
      readonly written: string;
      readonly statement: Statement;
      /** Whether the column's unit was put to a bare number. */
      readonly bare: boolean;
    }
  | {
      readonly is: 'slip';
      readonly code: SlipCode;
      readonly message: string;
      readonly could: readonly string[];
    };

/** Signs by which lists say that there is nothing to say. */
const NOTHING = /^(?:[-–—.]+|n\/?a|none|nil)$/i;

/** What points to a footnote, behind a figure. */
const MARK = /\s*(?:[*†‡§]+|[¹²³⁴⁵]|\((?:\d|[a-e]|[*†‡])\))$/;

/** A cell's text on one line. */
export function cellText(cell: Cell | null): string {
  return cell === null ? '' : cell.text.replace(/\s+/g, ' ').trim();
}

/** Whether a cell holds nothing, or says so. */
export function saysNothing(cell: Cell | null): boolean {
  return cell === null || (cell.type !== 'unworked' && NOTHING.test(cellText(cell) || '-'));
}

/** The mark at a text's end that points to a footnote; null where there is none. */
export function footnoteMark(text: string): string | null {
  return MARK.exec(text)?.[0].trim() ?? null;
}

/** Reads a cell as a size of a setting, with the unit of its column. Nothing is converted. */
export function readCell(
  cell: Cell | null,
  setting: SizePlace,
  unit: string | null,
  tools: SizeTools,
): CellRead {
  if (cell === null || saysNothing(cell)) return { is: 'empty' };
  const text = cellText(cell);
  const odd = oddCell(cell, text, setting, unit, tools);
  if (odd !== null) return odd;
  const { dimensions, label } = setting;
  const alone = readSize(text, dimensions, tools);
  if (alone.ok && isOf(alone.statement, dimensions)) {
    return { is: 'size', written: text, statement: alone.statement, bare: false };
  }
  const written = unit === null ? null : withUnit(text, unit);
  const composed = written === null ? null : readSize(written, dimensions, tools);
  if (written !== null && composed?.ok && isOf(composed.statement, dimensions)) {
    return { is: 'size', written, statement: composed.statement, bare: true };
  }
  if (alone.ok) {
    const message = `${label} is stated as ${dimensions.join(' or ')}, and this is ${article(alone.statement.dimension)}`;
    return slip('dimension', message, []);
  }
  const mark = footnoteMark(text);
  if (mark !== null) {
    const without = readCell({ ...cell, text: text.replace(MARK, '') }, setting, unit, tools);
    if (without.is === 'size') {
      const message = `the mark ${mark} points to a footnote, and what that says is not read`;
      return slip('footnote-mark', message, [without.written]);
    }
  }
  const { problem } = alone;
  if (unit === null && (problem.code === 'bare-number' || problem.code === 'no-unit')) {
    const forms = usualForms(text, setting, tools).map((form) => form.text);
    return slip(
      'no-unit',
      'a bare number, and neither its head nor the mapping states a unit',
      forms,
    );
  }
  const { message, candidates } = composed !== null && !composed.ok ? composed.problem : problem;
  return slip('unreadable', message, candidates);
}

/** Cells that hold something else than they were meant to: errors, days, rounded numbers. */
function oddCell(
  cell: Cell,
  text: string,
  setting: SizePlace,
  unit: string | null,
  tools: SizeTools,
): CellRead | null {
  if (cell.type === 'error') return slip('cell-error', 'the spreadsheet shows an error here', []);
  if (cell.type === 'unworked') {
    const message = 'a formula stands here, and the file does not hold its result';
    return slip('cell-error', message, [
      'open the list in a spreadsheet program and save it again',
    ]);
  }
  if (cell.type === 'boolean')
    return slip('unreadable', 'a yes or no stands where a size belongs', []);
  if (cell.type === 'date' || (cell.type === 'text' && dayIn(text) !== null)) {
    const day = dayIn(text);
    const typed = day === null ? [] : typedBefore(day);
    const message =
      'a day of the calendar stands where a size belongs; the spreadsheet made it of what was typed';
    return slip('date', message, likeliest(typed, setting, unit, tools));
  }
  if (cell.type === 'number' && !cell.formula && losesDigits(text, cell.raw)) {
    const message = `the cell shows ${text} and holds ${cell.raw}`;
    const could = [text, cell.raw].map((each) => (unit === null ? each : withUnit(each, unit)));
    return slip('shown-otherwise', message, could);
  }
  return null;
}

/** What was typed, with its unit; only the usual ones where some are. */
function likeliest(
  typed: readonly string[],
  setting: SizePlace,
  unit: string | null,
  tools: SizeTools,
): readonly string[] {
  const forms = typed.map((text) => (unit === null ? text : withUnit(text, unit)));
  const usual = forms.filter((form) => {
    const reading = readSize(form, setting.dimensions, tools);
    return reading.ok && isUsual(reading.statement, setting) === true;
  });
  return usual.length > 0 ? usual : forms;
}

/**
 * Whether what a number's format shows is another size than it holds. A decimal that shows three
 * digits that count, or all there are, is right to the places it states and loses nothing.
 */
function losesDigits(text: string, raw: string): boolean {
  const held = Number(raw);
  const [, whole = '0', top = '', bottom = '1'] = /^-?(?:(\d+) )?(\d+)\/(\d+)\b/.exec(text) ?? [];
  if (top !== '') {
    const shown = Number(whole) + Number(top) / Number(bottom);
    return Math.abs(Math.abs(held) - shown) > 1e-9 * Math.max(1, shown);
  }
  const digits = /-?[\d,]*\.?\d+/.exec(text)?.[0].replaceAll(',', '');
  if (digits === undefined || text.includes('%')) return false;
  const shown = Number(digits);
  if (Math.abs(held - shown) <= 1e-9 * Math.max(1, Math.abs(held))) return false;
  return digits.replace(/^-?[0.]*/, '').replace('.', '').length < 3;
}

function article(dimension: string): string {
  return `${/^[aeiou]/.test(dimension) ? 'an' : 'a'} ${dimension}`;
}

function slip(code: SlipCode, message: string, could: readonly string[]): CellRead {
  return { is: 'slip', code, message, could };
}
