import type { EditionSnapshot } from '../../compare/model.ts';
import { jsonText } from '../../text/index.ts';
import { columns } from './columns.ts';
import type { SettingRow } from './rows.ts';

/** The version of the data file; `schemas/export.schema.json` describes it. */
const FORMAT = 1;

/**
 * An edition as one JSON file: every setting as a row, and the sheets' own words, so that a later
 * edition can be compared with it. The same edition gives the same bytes.
 */
export function toData(snapshot: EditionSnapshot, rows: readonly SettingRow[]): string {
  const { title, edition, date, sheets } = snapshot;
  const data = { 'gaugeleaf-data': FORMAT, title, edition, date, settings: rows, sheets };
  return `${jsonText(data, 2)}\n`;
}

/** The edition in a data file that `toData` made; null where it is none of that version. */
export function fromData(data: unknown): EditionSnapshot | null {
  if (typeof data !== 'object' || data === null) return null;
  if (Reflect.get(data, 'gaugeleaf-data') !== FORMAT) return null;
  const { title, edition, date, sheets } = data as EditionSnapshot;
  return { title, edition, date, sheets };
}

/**
 * A descriptor of the table beside it, after the Data Package and Table Schema specifications of
 * Frictionless Data, so that other people's tools know its columns. `name` is kebab-case.
 */
export function toDataPackage(name: string, snapshot: EditionSnapshot, csvFile: string): string {
  const descriptor = {
    name,
    title: snapshot.title ?? name,
    ...(snapshot.edition === null ? {} : { version: snapshot.edition }),
    resources: [
      {
        name: 'settings',
        path: csvFile,
        profile: 'tabular-data-resource',
        format: 'csv',
        mediatype: 'text/csv',
        encoding: 'utf-8',
        dialect: {
          delimiter: ',',
          lineTerminator: '\r\n',
          quoteChar: '"',
          doubleQuote: true,
          header: true,
        },
        schema: {
          fields: columns.map(({ name: column, type, description }) => ({
            name: column,
            type,
            description,
            ...(column === 'sheet' || column === 'setting' || column === 'role'
              ? { constraints: { required: true } }
              : {}),
          })),
          missingValues: [''],
        },
      },
    ],
  };
  return `${jsonText(descriptor, 2)}\n`;
}
