import type { SettingRow } from './rows.ts';

/** One column of the table of settings, as a Table Schema describes it. */
export interface Column {
  readonly name: string;
  readonly type: 'string' | 'integer' | 'number';
  readonly description: string;
  /** The cell; empty for what is unsaid. */
  readonly of: (row: SettingRow) => string;
}

const listed = (texts: readonly string[]): string => texts.join('; ');

/** The columns of the exported table, in order. */
export const columns: readonly Column[] = [
  text('sheet', 'Name of the sheet, as its file is named.', (row) => row.sheet),
  text('title', 'Title of the sheet.', (row) => row.title),
  {
    name: 'revision',
    type: 'integer',
    description: 'Revision of the sheet.',
    of: (row) => (row.revision === null ? '' : String(row.revision)),
  },
  text('status', 'draft, proof or released.', (row) => row.status),
  text('kind', 'Kind of unit.', (row) => row.kind),
  text('maker', 'Maker of the unit.', (row) => row.maker),
  text('model', 'Model of the unit.', (row) => row.model),
  text('part_numbers', 'Part numbers, parted by semicolons.', (row) => listed(row.partNumbers)),
  text('setting', 'Name of the setting in the kind of unit.', (row) => row.setting),
  text('label', 'The same for people.', (row) => row.label),
  text('place', 'Barrel or place where values differ; empty for all.', (row) => row.place),
  text(
    'role',
    'ruled: the value of the sheet; differs: what another source says and the sheet does not follow.',
    (row) => row.role,
  ),
  text('written', 'The size exactly as its source wrote it.', (row) => row.written),
  text(
    'dimension',
    'What it is a size of; empty where it could not be read.',
    (row) => row.dimension,
  ),
  text('form', 'exact, tolerance, range, min, max or condition.', (row) => row.form),
  text('unit', 'Unit of nominal, low and high, as written.', (row) => row.unit),
  number(
    'nominal',
    'The figure itself; empty for a range or a lone limit.',
    (row) => row.nominal?.decimal,
  ),
  number('low', 'Lower limit, inclusive, never below the written one.', (row) => row.low?.decimal),
  number(
    'high',
    'Upper limit, inclusive, never above the written one.',
    (row) => row.high?.decimal,
  ),
  text(
    'nominal_exact',
    'The figure exactly, as a decimal or a fraction.',
    (row) => row.nominal?.exact,
  ),
  text('low_exact', 'Lower limit exactly.', (row) => row.low?.exact),
  text('high_exact', 'Upper limit exactly.', (row) => row.high?.exact),
  text('sense', 'Which way from its datum: out, in, down, rich, before ...', (row) => row.sense),
  text('inch', 'In decimal inches, limits rounded inward.', (row) => row.inch),
  text('millimeter', 'In millimeters, limits rounded inward.', (row) => row.millimeter),
  text('other_units', 'In other usual units, parted by semicolons.', (row) => listed(row.other)),
  text('also', 'Other ways the sheet writes it, parted by semicolons.', (row) => listed(row.also)),
  text('gauge', 'Gauge that the sheet names.', (row) => row.gauge),
  text('measured_at', 'Where it is measured.', (row) => row.measuredAt),
  text('said', 'What else is said beside it, key: words, parted by semicolons.', (row) =>
    listed(Object.entries(row.said).map(([key, words]) => `${key}: ${words}`)),
  ),
  text('sources', 'Sources with pages, parted by semicolons.', (row) => listed(row.sources)),
  text('ruling', 'Why the sheet does not follow a source that differs.', (row) => row.ruling),
  text('note', 'Note of the editor.', (row) => row.note),
  text(
    'house_tolerance',
    'Tolerance that the house takes where no source states limits; never the source’s.',
    (row) => row.houseTolerance,
  ),
];

function text(
  name: string,
  description: string,
  of: (row: SettingRow) => string | null | undefined,
): Column {
  return { name, type: 'string', description, of: (row) => of(row) ?? '' };
}

function number(
  name: string,
  description: string,
  of: (row: SettingRow) => string | undefined,
): Column {
  return { name, type: 'number', description, of: (row) => of(row) ?? '' };
}
