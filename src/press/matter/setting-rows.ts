import { gaugeBook } from '../../gauges/index.ts';
import { equivalents, readStatement } from '../../quantity/index.ts';
import type { Statement } from '../../quantity/model.ts';
import { altitudeReading, clubFigure } from '../../relations/index.ts';
import { heldLimits, settingLabel, tasksOf, whereWords } from '../../sheet/index.ts';
import type { PlacedSize, Setting, Sheet } from '../../sheet/model.ts';
import type { Proofs } from '../orders/model.ts';
import { citationMark, type SourceLine } from './citations.ts';
import { gaugeLine, type ResolvedGauge, resolvedGauges } from './resolved-gauge.ts';
import { settingFacts } from './setting-facts.ts';
import { type WorkedFacts, type WorkedLine, workedLines } from './worked-lines.ts';

/** One value of a setting; every field is text to print. */
export interface ValueLine {
  /** `primary`, `left` ...; null where one value serves all. */
  readonly place: string | null;
  /** Exactly as the source wrote it. */
  readonly written: string;
  /** What stands in the large type: the figure for the club's altitude, where there is one; else as written. */
  readonly large: string;
  /** Of a figure for the club's altitude, where that and the source's are read; null for any other. */
  readonly club: ClubPlace | null;
  /** The house's tolerance where no source states limits: `± 1/64 in (house)`; null for none. */
  readonly house: string | null;
  /** Decimal inches; null where the value is no length. `as written` where it is inches already. */
  readonly inch: string | null;
  readonly mm: string | null;
  /** Inches and millimeters in one line, without what is as written; null for none. */
  readonly both: string | null;
  /** Equivalents in other units, joined by commas; null for none. */
  readonly other: string | null;
}

/** A gauge in words. */
export type GaugeTold = Omit<ResolvedGauge, 'gauges'>;

/** Where a figure for the club's altitude and its source's own are read. */
export interface ClubPlace {
  /** `1350 ft`. */
  readonly altitude: string;
  /** `sea level`. */
  readonly readAt: string;
  /** Whether it is worked, and the sheet does not state it. */
  readonly worked: boolean;
}

/** What another source says of a setting, and the editor's ruling. */
export interface DissentLine extends ValueLine {
  readonly from: string | null;
  readonly ruling: string | null;
}

/** One setting as a table prints it. */
export interface SettingRow {
  /** The number that it goes by everywhere: that of its task, `5` or `5a`; a letter without one. See `tasksOf`. */
  readonly number: string;
  /** The number of the task that makes it; null where none does. */
  readonly task: number | null;
  readonly name: string;
  readonly label: string;
  /** How far its figure is proved, as a mark behind the label; null where nobody reads twice. */
  readonly proof: string | null;
  readonly values: readonly ValueLine[];
  /** Other ways the sheet states it, as written. */
  readonly also: string | null;
  /** What one takes, in one line: `13/64 drill`, `go No. 8 drill, no-go No. 3 drill`; null for no gauge. */
  readonly gauge: string | null;
  /** Whether that is chosen, since the sheet names none. */
  readonly isGaugeChosen: boolean;
  /** The same in its parts, by place. */
  readonly gauges: readonly GaugeTold[];
  /** Where and in what state it is measured, and what further figures go with it. */
  readonly where: string | null;
  /** Of that, what one has to know to measure it: `free end of the float; gasket removed`. */
  readonly datum: string | null;
  /** And the rest: `travel 0.039 in (0.991 mm)`. */
  readonly further: string | null;
  readonly note: string | null;
  /** The sources' marks with pages: `a p. 31`. */
  readonly from: readonly string[];
  readonly dissents: readonly DissentLine[];
  /** What no source says: worked figures, and a gauge where the sheet names none. */
  readonly worked: readonly WorkedLine[];
}

/** Stand behind a label and not behind a figure, where they could be taken for a part of it. */
const proofMarks = { twice: '··', once: '·', measured: 'm', unsaid: null } as const;

/** The settings of a sheet, in the order of the tasks that make them. */
export function settingRows(
  sheet: Sheet,
  sources: readonly SourceLine[],
  facts: WorkedFacts = { altitude: null },
  proofs: Proofs | null = null,
): SettingRow[] {
  return tasksOf(sheet).settings.map(({ number, task, setting }) => {
    const gauges = resolvedGauges(setting, sheet, facts);
    const without = toldByFigure(setting, sheet, facts.altitude);
    return {
      number,
      task,
      name: setting.name.value,
      label: settingLabel(setting),
      proof: proofMarks[proofs?.get(setting.name.value) ?? 'unsaid'],
      values: valueLines(setting, sheet, facts.altitude),
      also: setting.also.length === 0 ? null : setting.also.map((size) => size.text).join(', '),
      gauge: gaugeLine(gauges),
      isGaugeChosen: gauges.some(({ chosen }) => chosen),
      gauges: gauges.map(({ gauges: _, ...told }) => told),
      where: whereWords(setting, without),
      ...settingFacts(setting, sheet, without),
      note: setting.note?.value ?? null,
      from: setting.from.map((citation) => citationMark(citation, sources)),
      dissents: setting.but.map((dissent) => ({
        ...valueLine(null, dissent.value),
        from: dissent.from === null ? null : citationMark(dissent.from, sources),
        ruling: dissent.ruling?.value ?? null,
      })),
      worked: workedLines(setting, sheet, facts),
    };
  });
}

/** Keys that need not be told: a figure for the club's altitude tells by itself where it is read. */
function toldByFigure(setting: Setting, sheet: Sheet, altitude: string | null): readonly string[] {
  const stands = [null, ...setting.places.keys()].some(
    (place) => clubFigure(setting, sheet, place, altitude) !== null,
  );
  return stands ? (altitudeReading(setting, sheet)?.keys ?? []) : [];
}

function valueLines(setting: Setting, sheet: Sheet, altitude: string | null): ValueLine[] {
  const line = (place: string | null, size: PlacedSize) => {
    const held = heldLimits(setting, place);
    const house = held?.by === 'house' ? `${held.text} (house)` : null;
    const own = { ...valueLine(place, size), house };
    const club = clubFigure(setting, sheet, place, altitude);
    if (club === null) return own;
    const { text, stated, readAt } = club;
    return {
      ...own,
      ...equals(readAgain(text, size)),
      large: text,
      club: { altitude: club.altitude, readAt, worked: !stated },
    };
  };
  const lines = setting.value === null ? [] : [line(null, setting.value)];
  for (const [place, size] of setting.places) lines.push(line(place, size));
  for (const { station, value } of setting.rows)
    lines.push(valueLine(station?.text ?? null, value));
  return lines.length === 0 ? [valueLine(null, null)] : lines;
}

/** A figure for the club's altitude, in the dimension of the source's. */
function readAgain(text: string, size: PlacedSize): Statement | null {
  if (!size.reading.ok) return null;
  const { dimension } = size.reading.statement;
  const reading = readStatement(text, { gauges: gaugeBook(), expect: [dimension] });
  return reading.ok ? reading.statement : null;
}

/** What stands under a unit in which the source wrote the size. */
export const AS_WRITTEN = 'as written';

function valueLine(place: string | null, size: PlacedSize | null): ValueLine {
  const written = size?.text ?? '—';
  const statement = size?.reading.ok ? size.reading.statement : null;
  return { place, written, large: written, club: null, house: null, ...equals(statement) };
}

/** What a figure comes to in other units. */
function equals(statement: Statement | null): Pick<ValueLine, 'inch' | 'mm' | 'both' | 'other'> {
  if (statement === null) return { inch: null, mm: null, both: null, other: null };
  const { inch, mm, other } = equivalents(statement);
  const both = [inch, mm].filter((text) => text !== null);
  const isLength = statement.dimension === 'length';
  return {
    inch: inch ?? (isLength ? AS_WRITTEN : null),
    mm: mm ?? (isLength ? AS_WRITTEN : null),
    both: both.length === 0 ? null : both.join(', '),
    other: other.length === 0 ? null : other.join(', '),
  };
}
