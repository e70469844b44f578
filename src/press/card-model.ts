import type { Finding } from '../checks/define.ts';
import type { Kind } from '../kinds/model.ts';
import type { Sheet } from '../sheet/model.ts';
import { sheetBody } from './body.ts';
import { type SourceLine, sourceLines } from './citations.ts';
import { type EditorsNote, editorsNotes } from './editors-notes.ts';
import type { EditionFacts, Paper, PictureSource } from './orders.ts';
import { cardMargins, type Margins, type PaperSize, papers } from './paper.ts';
import { type SafetyLine, safetyLines } from './safety.ts';
import { type SettingRow, settingRows } from './setting-rows.ts';
import { hasError, type SheetFace, sheetFace } from './sheet-face.ts';

/** One operation on the card. */
export interface CardOperation {
  readonly number: number;
  /** HTML. */
  readonly title: string;
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
  /** How closely it is set, from `densities`. */
  readonly density: string;
  readonly safety: readonly SafetyLine[];
  readonly settings: readonly SettingRow[];
  readonly operations: readonly CardOperation[];
  readonly notes: readonly EditorsNote[];
  readonly sources: readonly SourceLine[];
  readonly hasGauges: boolean;
}

/** How closely a card may be set, the roomiest first; `styles.css` says what each means. */
export const densities = ['roomy', 'regular', 'close', 'tight'] as const;

/** What a card is made with besides the sheet. */
export interface CardOptions {
  readonly paper: Paper;
  readonly draft: boolean;
  readonly picture: PictureSource | null;
}

/**
 * The bench card of a sheet: settings in working order, steps, cautions and sources. A sheet with
 * an error finding is a draft whatever the options say.
 */
export function cardModel(
  sheet: Sheet,
  kind: Kind | null,
  findings: readonly Finding[],
  edition: EditionFacts | null,
  options: CardOptions,
): CardModel {
  const sources = sourceLines(sheet);
  const settings = settingRows(sheet, kind, sources);
  const body = sheetBody(sheet, kind, options.picture, 'card');
  const operations: CardOperation[] = [];
  for (const operation of body.operations) {
    if (operation.steps === '') continue;
    operations.push({
      number: operations.length + 1,
      title: operation.title,
      steps: operation.steps,
    });
  }
  return {
    face: sheetFace(sheet, kind),
    club: edition?.club ?? null,
    edition: edition?.edition ?? null,
    notice: edition?.notice ?? null,
    language: edition?.language ?? 'en',
    paper: papers[options.paper],
    margins: cardMargins(papers[options.paper]),
    draft: options.draft || hasError(findings),
    density: densities[0],
    safety: safetyLines([{ sheet, kind }]),
    settings,
    operations,
    notes: editorsNotes(findings),
    sources,
    hasGauges: settings.some((row) => row.gauge !== null),
  };
}
