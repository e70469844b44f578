import { stringify } from 'csv-stringify/sync';
import { harmlessCell } from '../harmless-cell.ts';
import { columns } from './columns.ts';
import type { SettingRow } from './rows.ts';

/**
 * The table of settings as CSV after RFC 4180: a head line, CR LF, quotes doubled. A text that a
 * spreadsheet would take for a formula gets an apostrophe in front.
 */
export function toCsv(rows: readonly SettingRow[]): string {
  const cells = rows.map((row) =>
    columns.map(({ type, of }) => (type === 'string' ? harmlessCell(of(row)) : of(row))),
  );
  return stringify([columns.map(({ name }) => name), ...cells], { record_delimiter: 'windows' });
}
