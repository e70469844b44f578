import { stringify } from 'csv-stringify/sync';
import type { Concordance } from '../../concordance/model.ts';
import { harmlessCell } from '../harmless-cell.ts';

const head = [
  'sheet',
  'title',
  'setting',
  'label',
  'figure',
  'source',
  'source_title',
  'source_facts',
  'page',
  'written',
  'standing',
  'difference',
  'ruling',
  'note',
];

/**
 * Concordances as CSV after RFC 4180, one row a statement: setting, source, and how the statement
 * stands to the figure of the sheet (`figure`, `agrees`, `differs`, `unread`). `written` is empty
 * where the sheet only says that the source gives the same figure.
 */
export function concordanceCsv(concordances: readonly Concordance[]): string {
  const rows = concordances.flatMap(({ sheet, title, sources, rows: settings }) =>
    settings.flatMap(({ setting, label, figure, cells }) =>
      cells.flatMap((cell, column) => {
        const source = sources[column];
        return cell.map((said) => [
          sheet,
          title,
          setting,
          label,
          figure,
          source?.name ?? '',
          source?.title ?? '',
          source?.facts ?? '',
          said.page ?? '',
          said.written ?? '',
          said.standing,
          said.difference ?? '',
          said.ruling ?? '',
          said.note ?? '',
        ]);
      }),
    ),
  );
  return stringify([head, ...rows.map((row) => row.map(harmlessCell))], {
    record_delimiter: 'windows',
  });
}
