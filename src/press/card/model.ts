import type { Finding } from '../../checks/index.ts';
import type { Kit } from '../../gauges/index.ts';
import { tasksOf } from '../../sheet/index.ts';
import type { Sheet } from '../../sheet/model.ts';
import { rankedDrawings } from '../drawings/index.ts';
import {
  capHeightMm,
  type Density,
  type DensityName,
  densitiesFor,
  densityNames,
  labelAngles,
  usualDistanceMm,
} from '../lettering/index.ts';
import {
  altitudeReadings,
  type EditorsNote,
  editorsNotes,
  gaugesToGather,
  hasError,
  ruleNotes,
  type SettingRow,
  type SheetFace,
  type SourceLine,
  safetyLines,
  settingRows,
  sheetBody,
  sheetFace,
  sourceLines,
  tableAltitudes,
} from '../matter/index.ts';
import {
  type CardReadings,
  cardMargins,
  type Margins,
  type PaperSize,
  papers,
} from '../orders/index.ts';
import type { EditionFacts, Paper, PictureSource, Proofs } from '../orders/model.ts';
import { cardCode } from './code.ts';
import { type CardHanging, hanging } from './hanging.ts';
import { type CardRow, cardRows } from './rows.ts';
import { type CardHazards, cardHazards } from './strip.ts';

/** One task on the card. */
interface CardOperation {
  readonly number: number;
  /** HTML. */
  readonly title: string;
  /** Numbered steps with a line in each that meets a hazard, as HTML; never empty. */
  readonly steps: string;
  /** Its page in the booklet; null where no booklet is known. */
  readonly page: number | null;
}

/** A drawing of the unit, at the size that it is made for. */
interface CardDrawing {
  /** The number of the task that it belongs to. */
  readonly number: number;
  /** What it shows, in a few words. */
  readonly title: string;
  /** SVG. */
  readonly svg: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A setting that falls with altitude, at some heights. */
interface CardAltitude {
  /** The number of the setting. */
  readonly number: string;
  readonly label: string;
  readonly readings: readonly {
    readonly altitude: string;
    readonly isClubs: boolean;
    /** Null where none can be given. */
    readonly reading: string | null;
  }[];
}

/** Everything a bench card prints, as plain data: what the template `card.hbs` is given. */
export interface CardModel {
  readonly face: SheetFace;
  readonly club: string | null;
  readonly edition: string | null;
  readonly notice: string | null;
  readonly language: string;
  readonly paper: PaperSize;
  readonly margins: Margins;
  /** Where it is hung by, and what that leaves of the width on either side. */
  readonly hanging: CardHanging;
  /** Whether DRAFT goes across each side. */
  readonly draft: boolean;
  /** Tells by telephone whether two cards say the same; see `cardCode`. */
  readonly code: string;
  readonly readingDistanceMm: number;
  /** The type sizes that the press may choose among, the roomiest first. */
  readonly densities: readonly Density[];
  readonly density: DensityName;
  readonly hazards: CardHazards;
  readonly settings: readonly CardRow[];
  /** Drawings of the unit, those first that its kind ranks first; as many are printed as there is room for. */
  readonly drawings: readonly CardDrawing[];
  readonly operations: readonly CardOperation[];
  /** Readings by altitude; empty where none depends on it. */
  readonly altitudes: readonly CardAltitude[];
  /** Footnotes, as HTML; empty for none. */
  readonly footnotes: string;
  readonly notes: readonly EditorsNote[];
  readonly sources: readonly SourceLine[];
  readonly hasGauges: boolean;
  /** Whether anything is said behind the work of any setting. */
  readonly hasMore: boolean;
  /** Whether marks tell how far figures are proved. */
  readonly hasProofs: boolean;
  /** Who set the unit, which one and when, from a bench record; null for a card to be filled in. */
  readonly record: CardRecord | null;
}

/** The foot of a card that a bench record fills in. */
interface CardRecord {
  readonly serial: string | null;
  readonly by: string | null;
  readonly date: string | null;
  readonly rule: string;
}

/** What a card is made with besides the sheet. */
interface CardOptions {
  readonly paper: Paper;
  readonly draft: boolean;
  readonly picture: PictureSource | null;
  /** The heights of capitals of the fonts in ems, by family. */
  readonly capHeights: ReadonlyMap<string, number>;
  readonly readings: CardReadings | null;
  /** The gauges that the edition gathers, for all of its sheets; null or absent chooses for this one alone. */
  readonly gathered?: Kit | null;
  /** The pages of the booklet, by the task's number; none where absent. */
  readonly pages?: ReadonlyMap<number, number>;
  readonly proofs?: Proofs | null;
}

/** The heights up to which a card tells what a reading comes to: as many as go side by side. */
const mostAltitudes = { large: 7, small: 4 };

/**
 * The bench card of a sheet: its hazards, its settings in the order of their tasks, the work, and what
 * stands behind the figures. A sheet with an error finding is a draft whatever the options say.
 */
export function cardModel(
  sheet: Sheet,
  findings: readonly Finding[],
  edition: EditionFacts | null,
  options: CardOptions,
): CardModel {
  const sources = sourceLines(sheet);
  const kit = edition?.kit ?? null;
  const altitude = edition?.altitude ?? null;
  const gathered = options.gathered ?? gaugesToGather([{ sheet }], kit ?? undefined).kit;
  const rows = settingRows(sheet, sources, { altitude, kit, gathered }, options.proofs ?? null);
  const settings = cardRows(rows, options.readings);
  const body = sheetBody(sheet, { prefix: 'card', picture: options.picture, altitude });
  const { numberOf } = tasksOf(sheet);
  const operations = body.operations.flatMap(({ title, steps }, index): CardOperation[] => {
    const number = numberOf(index);
    if (number === null || steps === '') return [];
    return [{ number, title, steps, page: options.pages?.get(number) ?? null }];
  });
  const readingDistanceMm = edition?.readingDistanceMm ?? usualDistanceMm;
  const content = {
    face: sheetFace(sheet),
    club: edition?.club ?? null,
    edition: edition?.edition ?? null,
    notice: edition?.notice ?? null,
    language: edition?.language ?? 'en',
    hazards: cardHazards(body, safetyLines([{ sheet }])),
    footnotes: body.notes,
    notes: [...editorsNotes(findings, sheet.kind), ...ruleNotes(sheet)],
    sources,
  };
  const paper = papers[options.paper];
  const said = operations.map(({ page: _, ...operation }) => operation);
  return {
    ...content,
    operations,
    settings,
    // Worked from what the content has, at as many heights as the paper is broad enough for.
    altitudes: cardAltitudes(
      sheet,
      rows,
      altitude,
      paper.small ? mostAltitudes.small : mostAltitudes.large,
    ),
    code: cardCode(
      plain(
        JSON.stringify({
          ...content,
          operations: said,
          settings: rows.map((row) => byId(row, sheet)),
        }),
      ),
    ),
    paper,
    margins: cardMargins(paper),
    hanging: hanging(paper),
    draft: options.draft || hasError(findings),
    readingDistanceMm,
    densities: densitiesFor(readingDistanceMm, options.capHeights),
    density: densityNames[0],
    drawings: cardDrawings(sheet, readingDistanceMm),
    hasGauges: settings.some(
      (row) =>
        row.gaugeLines.length > 0 || row.values.some(({ reading }) => reading?.gauge != null),
    ),
    hasMore: settings.some((row) => row.hasMore),
    hasProofs: settings.some(({ proof }) => proof !== null),
    record: recordOf(options.readings),
  };
}

/**
 * Up to which height of the least capitals drawings are printed, in millimeters: theirs have 2.3 and the
 * figures of their fractions 1.8, and they are not printed larger.
 */
const drawnUpToMm = 2.2;

/** None where the card is read from so far that their lettering could not be. */
function cardDrawings(sheet: Sheet, distanceMm: number): CardDrawing[] {
  const leastMm = capHeightMm(distanceMm, labelAngles.least);
  if (leastMm > drawnUpToMm) return [];
  const { numberOf } = tasksOf(sheet);
  return rankedDrawings(sheet, { prefix: 'card-drawing', alone: false }).flatMap(
    ({ operation, title, svg, widthMm, heightMm }) => {
      const number = numberOf(operation.index);
      return number === null ? [] : [{ number, title, svg, widthMm, heightMm }];
    },
  );
}

function cardAltitudes(
  sheet: Sheet,
  rows: readonly SettingRow[],
  clubs: string | null,
  most: number,
): CardAltitude[] {
  const { club, altitudes } = tableAltitudes(clubs);
  const shown = altitudes.slice(0, most);
  if (club !== null && !shown.includes(club)) shown.push(club);
  return altitudeReadings(sheet, shown, clubs).map(({ setting, readings }) => {
    const row = rows.find(({ name }) => name === setting.name.value);
    return {
      number: row?.number ?? '',
      label: row?.label ?? '',
      readings: shown.map((altitude, at) => ({
        altitude: altitude.text,
        isClubs: altitude === club,
        reading: readings[at] ?? null,
      })),
    };
  });
}

/** A setting by the one name that it has however the sheet writes it: what is printed is the same. */
function byId(row: SettingRow, sheet: Sheet): Omit<SettingRow, 'proof'> {
  const { proof: _, ...said } = row;
  return { ...said, name: sheet.settings.get(row.name)?.id ?? row.name };
}

/** Words and figures alone: how they are marked up is layout, and no content of a card. */
function plain(html: string): string {
  return html.replace(/<[^>]*>/g, '');
}

function recordOf(readings: CardReadings | null): CardRecord | null {
  if (readings === null) return null;
  const { serial, by, date, rule } = readings;
  return { serial, by, date, rule };
}
