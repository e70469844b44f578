import { stringify } from 'csv-stringify/sync';
import { columns } from './columns.ts';
import type { SettingRow } from './rows.ts';

/**
 * The table of settings as CSV after RFC 4180: a head line, CR LF, quotes doubled. A text that a
 * spreadsheet would take for a formula gets an apostrophe in front, for sheets come from strangers.
 */
export function toCsv(rows: readonly SettingRow[]): string {
  const cells = rows.map((row) =>
    columns.map(({ type, of }) => (type === 'string' ? harmless(of(row)) : of(row))),
  );
  return stringify([columns.map(({ name }) => name), ...cells], { record_delimiter: 'windows' });
}

/** `+0.010 in` and `-1/4 turn` are sizes; `=cmd()` and `@sum` are what a spreadsheet would run. */
function harmless(text: string): string {
  return /^(?:[=@\t\r]|[+-](?![\d./\s]))/.test(text) ? `'${text}` : text;
}
