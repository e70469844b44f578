import { nearestName } from '../text/index.ts';
import { columnLetters } from './cell-address.ts';
import type { Table } from './list-model.ts';
import type { Mapping } from './mapping.ts';
import { cellText } from './read-cell.ts';

/** The table that a mapping reads, or why there is none. */
export type TableFound =
  | { readonly ok: true; readonly table: Table }
  | { readonly ok: false; readonly message: string; readonly fix: string | null };

/** Finds the table of a mapping, and makes sure that its heads are those the mapping was made for. */
export function mappedTable(tables: readonly Table[], mapping: Mapping): TableFound {
  const table =
    mapping.table === null
      ? tables.find(({ hidden }) => !hidden)
      : tables.find(({ name }) => name === mapping.table);
  if (table === undefined) {
    const names = tables.map(({ name }) => name);
    const near = nearestName(mapping.table ?? '', names);
    const fix = near === null ? `its tables are: ${names.join(', ')}` : `did you mean ${near}?`;
    return { ok: false, message: `it has no table called ${mapping.table ?? 'anything'}`, fix };
  }
  const heads = table.rows.find(({ row }) => row === mapping.heads);
  for (const { column, head, to } of mapping.columns) {
    if (to.to === 'nothing') continue;
    const found = cellText(heads?.cells.get(column) ?? null);
    if (found === head.replace(/\s+/g, ' ').trim()) continue;
    return {
      ok: false,
      message: `column ${columnLetters(column)} is headed \`${found}\` in row ${mapping.heads}, and the mapping was made for \`${head}\``,
      fix: 'the list has changed: correct the mapping, or take it away to have a new one proposed',
    };
  }
  return { ok: true, table };
}
