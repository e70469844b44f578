import { readStatement, type WireGauge } from '../quantity/index.ts';
import type { Dimension, GaugeBook, Reading, Statement } from '../quantity/model.ts';

/** What is needed to read sizes. */
export interface SizeTools {
  readonly gauges: GaugeBook;
  readonly swg: WireGauge | null;
}

/**
 * A cell's text with its column's unit: behind it, or where the unit has `{}`. `withUnit('13/64',
 * 'in')` is `13/64 in`, `withUnit('29', 'No. {} drill')` is `No. 29 drill`. A word of the unit that
 * the cell has already is not written twice: `No. 29` there gives the same.
 */
export function withUnit(text: string, unit: string): string {
  if (unit.includes('{}')) return unit.replace('{}', () => withoutUnit(text, unit));
  return /^[\p{L}\p{N}]/u.test(unit) ? `${text} ${unit}` : `${text}${unit}`;
}

/** A text without the words that a unit with `{}` puts before it and behind it. */
function withoutUnit(text: string, unit: string): string {
  const [before = '', behind = ''] = unit.split('{}').map((part) => part.trim());
  let rest = text.trim();
  if (/^no\.?$/i.test(before)) rest = rest.replace(/^(?:(?:no|nr|number)\b\.?|#|№)\s*/i, '');
  else if (before !== '' && startsWith(rest, before)) rest = rest.slice(before.length).trim();
  if (behind !== '' && startsWith(reversed(rest), reversed(behind))) {
    rest = rest.slice(0, -behind.length).trim();
  }
  return rest === '' ? text : rest;
}

function startsWith(text: string, part: string): boolean {
  return text.slice(0, part.length).toLowerCase() === part.toLowerCase();
}

function reversed(text: string): string {
  return [...text].reverse().join('');
}

/** Reads a size that must be of one of some dimensions; of any where none is given. */
export function readSize(text: string, expect: readonly Dimension[], tools: SizeTools): Reading {
  return readStatement(text, {
    gauges: tools.gauges,
    swg: tools.swg,
    expect: expect.length === 0 ? undefined : expect,
  });
}

/** Whether a size is of one of the dimensions; any will do where none is given. */
export function isOf(statement: Statement, dimensions: readonly Dimension[]): boolean {
  return dimensions.length === 0 || dimensions.includes(statement.dimension);
}

/** Whether a text can be the unit of bare numbers that are sizes of these dimensions. */
export function unitWorks(
  unit: string,
  dimensions: readonly Dimension[],
  tools: SizeTools,
): boolean {
  if (unit.length > 60) return false;
  return ['1', '20', '1/4', '0.1'].some((number) => {
    const reading = readSize(withUnit(number, unit), dimensions, tools);
    return (
      reading.ok && reading.statement.condition === null && isOf(reading.statement, dimensions)
    );
  });
}
