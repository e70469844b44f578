import { equivalents } from '../../quantity/index.ts';
import type { PlacedSize, Setting, Sheet } from '../../sheet/model.ts';
import { citationMark, type SourceLine } from './citations.ts';
import { type WorkedFacts, type WorkedLine, workedLines } from './worked-lines.ts';

/** One value of a setting; every field is text to print. */
export interface ValueLine {
  /** `primary`, `left` ...; null where one value serves all. */
  readonly place: string | null;
  /** Exactly as the source wrote it. */
  readonly written: string;
  /** Decimal inches; null where the value is no length. `as written` where it is inches already. */
  readonly inch: string | null;
  readonly mm: string | null;
  /** Inches and millimeters in one line, without what is as written; null for none. */
  readonly both: string | null;
  /** Equivalents in other units, joined by commas; null for none. */
  readonly other: string | null;
}

/** What another source says of a setting, and the editor's ruling. */
export interface DissentLine extends ValueLine {
  readonly from: string | null;
  readonly ruling: string | null;
}

/** One setting as a table prints it. */
export interface SettingRow {
  /** Its place in the order of work, from 1. */
  readonly number: number;
  readonly name: string;
  readonly label: string;
  readonly values: readonly ValueLine[];
  /** Other ways the sheet states it, as written. */
  readonly also: string | null;
  /** `13/64 drill`, or `go No. 8 drill, no-go No. 3 drill`. */
  readonly gauge: string | null;
  /** Where and in what state it is measured: `free end of the float; cover inverted`. */
  readonly where: string | null;
  readonly note: string | null;
  /** The sources' marks with pages: `a p. 31`. */
  readonly from: readonly string[];
  readonly dissents: readonly DissentLine[];
  /** What no source says: worked figures, and a gauge where the sheet names none. */
  readonly worked: readonly WorkedLine[];
}

/** Keys of a setting that are said elsewhere in its row. */
const shownElsewhere = new Set([
  'value',
  'also',
  'gauge',
  'go',
  'no-go',
  'from',
  'but',
  'places',
  'rounding',
  'note',
  'at',
  'travel',
  'places-differ',
  'accept',
]);

/**
 * The settings of a sheet in the order the work makes them: first as `:value[]` uses them under
 * the headings, then as the kind says an operation makes them, then the rest as the sheet has them.
 */
export function settingRows(
  sheet: Sheet,
  sources: readonly SourceLine[],
  facts: WorkedFacts = { altitude: null },
): SettingRow[] {
  return inWorkingOrder(sheet).map((setting, index) => ({
    number: index + 1,
    name: setting.name.value,
    label: settingLabel(setting),
    values: valueLines(setting),
    also: setting.also.length === 0 ? null : setting.also.map((size) => size.text).join(', '),
    gauge: gaugeWords(setting),
    where: whereWords(setting),
    note: setting.note?.value ?? null,
    from: setting.from.map((citation) => citationMark(citation, sources)),
    dissents: setting.but.map((dissent) => ({
      ...valueLine(null, dissent.value),
      from: dissent.from === null ? null : citationMark(dissent.from, sources),
      ruling: dissent.ruling?.value ?? null,
    })),
    worked: workedLines(setting, sheet, facts),
  }));
}

/** The kind's label for a setting, or the sheet's own name in words: `float-level` → `Float level`. */
export function settingLabel(setting: Setting): string {
  if (setting.known) return setting.known.label;
  const words = setting.name.value.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function inWorkingOrder(sheet: Sheet): Setting[] {
  const ordered = new Set<Setting>();
  for (const operation of sheet.operations) {
    const { known } = operation;
    if (known?.stage === 'any') continue;
    for (const use of sheet.values) {
      if (use.operation === operation.index && use.setting) ordered.add(use.setting);
    }
    for (const name of known?.settings ?? []) {
      for (const setting of sheet.settings.values()) {
        if (setting.id === name) ordered.add(setting);
      }
    }
  }
  for (const setting of sheet.settings.values()) ordered.add(setting);
  return [...ordered];
}

function valueLines(setting: Setting): ValueLine[] {
  const lines = setting.value === null ? [] : [valueLine(null, setting.value)];
  for (const [place, size] of setting.places) lines.push(valueLine(place, size));
  return lines.length === 0 ? [valueLine(null, null)] : lines;
}

function valueLine(place: string | null, size: PlacedSize | null): ValueLine {
  const none = { place, written: size?.text ?? '—', inch: null, mm: null, both: null, other: null };
  if (!size?.reading.ok) return none;
  const statement = size.reading.statement;
  const { inch, mm, other } = equivalents(statement);
  const both = [inch, mm].filter((text) => text !== null);
  const isLength = statement.dimension === 'length';
  return {
    ...none,
    inch: inch ?? (isLength ? 'as written' : null),
    mm: mm ?? (isLength ? 'as written' : null),
    both: both.length === 0 ? null : both.join(', '),
    other: other.length === 0 ? null : other.join(', '),
  };
}

/** A size as written with its inch and millimeter equivalents behind: `0.039 in (0.991 mm)`. */
export function withEquivalents(size: PlacedSize): string {
  const { both } = valueLine(null, size);
  return both === null ? size.text : `${size.text} (${both})`;
}

function gaugeWords(setting: Setting): string | null {
  if (setting.gauge) return setting.gauge.text;
  const pair = [
    setting.go === null ? null : `go ${setting.go.text}`,
    setting.noGo === null ? null : `no-go ${setting.noGo.text}`,
  ].filter((text) => text !== null);
  return pair.length === 0 ? null : pair.join(', ');
}

function whereWords(setting: Setting): string | null {
  const words = setting.at === null ? [] : [setting.at.value];
  for (const [key, said] of setting.said) {
    if (!shownElsewhere.has(key)) words.push(`${key.replaceAll('-', ' ')} ${said.value}`);
  }
  if (setting.travel) words.push(`travel ${withEquivalents(setting.travel)}`);
  if (setting.placesDiffer) words.push(`places differ: ${setting.placesDiffer.value}`);
  return words.length === 0 ? null : words.join('; ');
}
