import type { Kind } from '../kinds/model.ts';
import type { Table } from './list-model.ts';
import { usualForms } from './usual-size.ts';
import { readSize, type SizeTools } from './written-size.ts';

/**
 * What is to be said of a column whose head states no unit: null where its cells carry their own, or
 * hold nothing; else that they are bare, and in which units all of them would be usual. None is
 * taken for it: the editor writes it.
 */
export function unitHabit(
  table: Table,
  heads: number,
  column: number,
  kind: Kind,
  name: string,
  unit: string | null,
  tools: SizeTools,
): string | null {
  const setting = kind.settings.get(name);
  if (unit !== null || setting === undefined) return null;
  const bare: string[] = [];
  for (const row of table.rows) {
    const cell = row.cells.get(column);
    if (row.row <= heads || cell === undefined || row.hidden) continue;
    const reading = readSize(cell.text, setting.dimensions, tools);
    if (!reading.ok && /^[\d.,/ -]+$/.test(cell.text)) bare.push(cell.text);
  }
  if (bare.length === 0) return null;
  const forms = bare.map((text) => new Set(usualForms(text, setting, tools).map(unitOf(text))));
  const common = [...(forms[0] ?? [])].filter((each) => forms.every((set) => set.has(each)));
  const count = bare.length === 1 ? '1 number has' : `${bare.length} numbers have`;
  const units = common.map((each) => `\`unit: ${each}\``).join(' or ');
  const perhaps = units === '' ? 'write `unit:`' : `${units} would make all of them usual`;
  return `${count} no unit, and the head states none: ${perhaps}`;
}

function unitOf(number: string): (form: { readonly text: string }) => string {
  return ({ text }) => text.slice(number.length).trim();
}
