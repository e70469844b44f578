import type { Finding } from '../../checks/index.ts';
import type { Kit } from '../../gauges/index.ts';
import { tasksOf } from '../../sheet/index.ts';
import type { Sheet } from '../../sheet/model.ts';
import {
  type Density,
  type DensityName,
  densitiesFor,
  densityNames,
  usualDistanceMm,
} from '../lettering/index.ts';
import {
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
} from '../matter/index.ts';
import {
  type CardReadings,
  cardMargins,
  type Margins,
  type PaperSize,
  papers,
} from '../orders/index.ts';
import type { EditionFacts, Paper, PictureSource } from '../orders/model.ts';
import { type CardCaution, cardCautions } from './cautions.ts';
import { cardCode } from './code.ts';
import { type CardRow, cardRows } from './rows.ts';

/** One operation on the card. */
interface CardOperation {
  readonly number: number;
  /** HTML. */
  readonly title: string;
  /** The settings that its steps print, by their numbers in the table: `4`, `5a, 5b`; null for none. */
  readonly sets: string | null;
  /** Whether a hazard stands among its steps. */
  readonly alert: boolean;
  /** Numbered steps with their safety messages, as HTML; never empty. */
  readonly steps: string;
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
  /** Whether DRAFT goes across each side. */
  readonly draft: boolean;
  /** Tells by telephone whether two cards say the same; see `cardCode`. */
  readonly code: string;
  readonly readingDistanceMm: number;
  /** The type sizes that the press may choose among, the roomiest first. */
  readonly densities: readonly Density[];
  readonly density: DensityName;
  readonly content: CardContent;
  readonly cautions: readonly CardCaution[];
  readonly settings: readonly CardRow[];
  readonly operations: readonly CardOperation[];
  /** Footnotes, as HTML; empty for none. */
  readonly footnotes: string;
  readonly notes: readonly EditorsNote[];
  readonly sources: readonly SourceLine[];
  readonly hasGauges: boolean;
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

/**
 * How much of the work a card has, the most first. `full`: all. `brief`: of every step its first
 * sentence and what it must not be without, the steps run in, no rulings. `terse`: and of the
 * cautions, the hazard and how to avoid it. `list`: and no steps, the operations as a list to tick.
 */
export const contents = ['full', 'brief', 'terse', 'list'] as const;
export type CardContent = (typeof contents)[number];

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
}

/**
 * The bench card of a sheet: settings in working order, steps, cautions and sources. A sheet with
 * an error finding is a draft whatever the options say.
 */
export function cardModel(
  sheet: Sheet,
  findings: readonly Finding[],
  edition: EditionFacts | null,
  options: CardOptions,
): CardModel {
  const sources = sourceLines(sheet);
  const kit = edition?.kit ?? null;
  const rows = settingRows(sheet, sources, {
    altitude: edition?.altitude ?? null,
    kit,
    gathered: options.gathered ?? gaugesToGather([{ sheet }], kit ?? undefined).kit,
  });
  const settings = cardRows(rows, options.readings, papers[options.paper].small);
  const body = sheetBody(sheet, {
    prefix: 'card',
    picture: options.picture,
    altitude: edition?.altitude ?? null,
  });
  const { numberOf } = tasksOf(sheet);
  const operations: CardOperation[] = [];
  for (const [index, operation] of body.operations.entries()) {
    if (operation.steps === '') continue;
    operations.push({
      number: numberOf(index) ?? 0,
      title: operation.title,
      sets: numbersOf(sheet, index, settings),
      alert: operation.steps.includes('⚠'),
      steps: operation.steps,
    });
  }
  const readingDistanceMm = edition?.readingDistanceMm ?? usualDistanceMm;
  const content = {
    face: sheetFace(sheet),
    club: edition?.club ?? null,
    edition: edition?.edition ?? null,
    notice: edition?.notice ?? null,
    language: edition?.language ?? 'en',
    cautions: cardCautions(body, safetyLines([{ sheet }])),
    operations,
    footnotes: body.notes,
    notes: [...editorsNotes(findings, sheet.kind), ...ruleNotes(sheet)],
    sources,
  };
  return {
    ...content,
    settings,
    code: cardCode(
      plain(JSON.stringify({ ...content, settings: rows.map((row) => byId(row, sheet)) })),
    ),
    paper: papers[options.paper],
    margins: cardMargins(papers[options.paper]),
    draft: options.draft || hasError(findings),
    readingDistanceMm,
    densities: densitiesFor(readingDistanceMm, options.capHeights),
    density: densityNames[0],
    content: contents[0],
    hasGauges: settings.some(
      (row) => row.gauge !== null || row.values.some(({ reading }) => reading?.gauge != null),
    ),
    record: recordOf(options.readings),
  };
}

/** A setting by the one name that it has however the sheet writes it: what is printed is the same. */
function byId(row: SettingRow, sheet: Sheet): SettingRow {
  return { ...row, name: sheet.settings.get(row.name)?.id ?? row.name };
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

/** The numbers of the settings that an operation's steps print. */
function numbersOf(sheet: Sheet, operation: number, rows: readonly CardRow[]): string | null {
  const names = new Set(
    sheet.values.filter((use) => use.operation === operation).map((use) => use.setting?.name.value),
  );
  const numbers = rows.filter(({ name }) => names.has(name)).map(({ number }) => number);
  return numbers.length === 0 ? null : numbers.join(', ');
}
