import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/import/list-model.ts';
import { readCell } from '../../src/import/read-cell.ts';
import { kind, tools } from './stand.ts';

function cell(text: string, more: Partial<Cell> = {}): Cell {
  return { row: 2, column: 3, text, raw: text, type: 'text', formula: false, ...more };
}

function read(text: string, setting: string, unit: string | null, more: Partial<Cell> = {}) {
  const named = kind.settings.get(setting);
  if (named === undefined) throw new Error(`there is no setting ${setting}`);
  return readCell(cell(text, more), named, unit, tools);
}

describe('a cell of a setting', () => {
  it.each([
    ['13/64', 'float-level', 'in', '13/64 in'],
    ['13/64 ± 1/64', 'float-level', 'in', '13/64 ± 1/64 in'],
    ['18 to 22', 'choke-pull-down', 'thou', '18 to 22 thou'],
    ['5,16', 'float-level', 'mm', '5,16 mm'],
    ['.203', 'float-level', '"', '.203"'],
    ['29', 'unloader', 'No. {} drill', 'No. 29 drill'],
    ['1-1/4', 'idle-mixture', 'turns out', '1-1/4 turns out'],
    ['4,500', 'governor-speed', 'rpm', '4,500 rpm'],
  ])('%s of %s gets its column’s unit and is else as it stood', (text, setting, unit, written) => {
    expect(read(text, setting, unit)).toMatchObject({ is: 'size', written, bare: true });
  });

  it.each([
    ['5.16 mm', 'float-level', 'in'],
    ['No. 29 drill', 'unloader', 'in'],
    ['index', 'choke-cover-index', 'notches'],
    ['parallel', 'float-level', 'in'],
  ])('%s carries its own and keeps it', (text, setting, unit) => {
    expect(read(text, setting, unit)).toMatchObject({ is: 'size', written: text, bare: false });
  });

  it.each(['', '-', '–', 'n/a', 'none', '...'])('%j says nothing', (text) => {
    expect(read(text, 'float-level', 'in')).toEqual({ is: 'empty' });
  });

  it.each([
    ['13/64', 'float-level', null, {}, 'no-unit', ['13/64 in']],
    ['3-Aug', 'float-level', 'in', {}, 'date', ['3/8 in']],
    ['2026-08-03', 'float-level', 'in', { type: 'date' }, 'date', ['3/8 in']],
    ['1964-09-01', 'float-level', 'in', { type: 'date' }, 'date', ['9/64 in']],
    ['#DIV/0!', 'float-level', 'in', { type: 'error' }, 'cell-error', []],
    ['7/32 †', 'float-level', 'in', {}, 'footnote-mark', ['7/32 in']],
    [
      '1/5',
      'float-level',
      'in',
      { type: 'number', raw: '0.203' },
      'shown-otherwise',
      ['1/5 in', '0.203 in'],
    ],
    [
      '0.2',
      'float-level',
      'in',
      { type: 'number', raw: '0.203' },
      'shown-otherwise',
      ['0.2 in', '0.203 in'],
    ],
    ['475 rpm', 'idle-vacuum', 'inHg', {}, 'dimension', []],
  ] as const)('%s in %s (unit %s) is listed', (text, setting, unit, more, code, could) => {
    expect(read(text, setting, unit, more as Partial<Cell>)).toMatchObject({
      is: 'slip',
      code,
      could,
    });
  });

  it.each([
    // Right to the three places it shows: nothing is lost that a paper would state.
    ['0.203', { type: 'number', raw: '0.203125' }],
    ['13/64', { type: 'number', raw: '0.203125' }],
    // A formula's result is never typed, and shows as its writer chose.
    ['0.2', { type: 'number', raw: '0.203125', formula: true }],
  ] as const)('%s that holds more is taken as it shows', (text, more) => {
    expect(read(text, 'float-level', 'in', more)).toMatchObject({
      is: 'size',
      written: `${text} in`,
    });
  });
});
