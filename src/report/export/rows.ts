import type { ExportData } from '../../generated/export-data.ts';
import {
  equivalents,
  exactPlaces,
  exactText,
  formatDecimal,
  inUnit,
  printedFigures,
} from '../../quantity/index.ts';
import type { Rational, Statement } from '../../quantity/model.ts';
import {
  heldLimits,
  type PlainDissent,
  type PlainSetting,
  plainHead,
  plainSetting,
} from '../../sheet/index.ts';
import type { PlacedSize, Setting, Sheet } from '../../sheet/model.ts';

/** A sheet, as an export takes it. */
export interface SheetToExport {
  readonly sheet: Sheet;
}

/** One size of one setting; every field that is null is unsaid. `export.schema.json` says what each is. */
export type SettingRow = ExportData['settings'][number];

/** A number twice: exactly, as an integer or a fraction, and as a decimal rounded once, a limit inward. */
export type ExportedNumber = NonNullable<SettingRow['nominal']>;

/** Every size of every setting, sheet by sheet, in the sheets' own order. */
export function exportRows(sheets: readonly SheetToExport[]): SettingRow[] {
  return sheets.flatMap(({ sheet }) =>
    [...sheet.settings.values()].flatMap((setting) => rowsOf(setting, sheet)),
  );
}

/** Keys beside a value that have a column of their own, or say nothing of the setting itself. */
const OWN_COLUMN = ['gauge', 'go', 'no-go', 'at', 'places-differ', 'rounding'];

function rowsOf(setting: Setting, sheet: Sheet): SettingRow[] {
  const { id, features: _features, date: _date, ...head } = plainHead(sheet);
  const { name, label, sizes, also, said, from, but, note } = plainSetting(setting);
  const beside = Object.entries(said).filter(([key]) => !OWN_COLUMN.includes(key));
  const shared = {
    sheet: id,
    ...head,
    setting: name,
    label,
    gauge: gaugeText(said),
    measuredAt: said.at ?? null,
    said: Object.fromEntries(beside),
  };
  const houseOf = (place: string | null): Pick<SettingRow, 'houseTolerance'> => {
    const held = heldLimits(setting, place);
    return held?.by === 'house' ? { houseTolerance: held.text } : {};
  };
  const ruled = (place: string | null, size: PlacedSize | null): SettingRow => ({
    ...shared,
    place,
    role: 'ruled',
    ...sizeFields(size),
    also: place === null ? also : [],
    sources: from,
    ruling: null,
    note,
    ...houseOf(place),
  });
  const differs = ({ value, from: source, ruling }: PlainDissent): SettingRow => ({
    ...shared,
    place: null,
    role: 'differs',
    ...sizeFields(value),
    also: [],
    sources: source === null ? [] : [source],
    ruling,
    note: null,
  });
  const rows = sizes.map(({ place, size }) => ruled(place, size));
  return [...(rows.length === 0 ? [ruled(null, null)] : rows), ...but.map(differs)];
}

function gaugeText({ gauge, go, 'no-go': noGo }: PlainSetting['said']): string | null {
  if (gauge !== undefined) return gauge;
  const pair = [go && `go ${go}`, noGo && `no-go ${noGo}`].filter(Boolean);
  return pair.length === 0 ? null : pair.join(', ');
}

type SizeFields = Pick<
  SettingRow,
  | 'written'
  | 'dimension'
  | 'form'
  | 'unit'
  | 'nominal'
  | 'low'
  | 'high'
  | 'sense'
  | 'inch'
  | 'millimeter'
  | 'other'
>;

function sizeFields(size: PlacedSize | null): SizeFields {
  const unread: SizeFields = {
    written: size?.text ?? null,
    dimension: null,
    form: null,
    unit: null,
    nominal: null,
    low: null,
    high: null,
    sense: null,
    inch: null,
    millimeter: null,
    other: [],
  };
  if (!size?.reading.ok) return unread;
  const { statement } = size.reading;
  const { inch, mm, other } = equivalents(statement);
  const unit = unitOf(statement);
  const told = (base: Rational | undefined) =>
    base === undefined || unit === null ? null : inUnit(base, statement.dimension, unit);
  const exact = {
    nominal: told(statement.nominal?.base),
    low: told(statement.low?.base),
    high: told(statement.high?.base),
  };
  const shown = printedFigures(exact, DECIMALS);
  const number = (which: keyof typeof exact) => numberOf(exact[which], shown[which]);
  return {
    ...unread,
    dimension: statement.dimension,
    form: statement.form,
    unit,
    nominal: number('nominal'),
    low: number('low'),
    high: number('high'),
    sense: statement.sense,
    inch,
    millimeter: mm,
    other,
  };
}

function unitOf({ nominal, low, high }: Statement): string | null {
  return (nominal ?? low?.amount ?? high?.amount)?.unit ?? null;
}

/** Places that a decimal is written to where it does not end before. */
const DECIMALS = 9;

/** Without `shown`, the exact number tells: a nominal that its source has outside of its limits. */
function numberOf(exact: Rational | null, shown: Rational | null): ExportedNumber | null {
  if (exact === null) return null;
  const number = shown ?? exact;
  const places = Math.min(exactPlaces(exact) ?? DECIMALS, DECIMALS);
  return { exact: exactText(exact), decimal: formatDecimal(number, places) };
}
