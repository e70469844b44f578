import type { Finding } from '../checks/define.ts';
import type { Kind, SignalWord } from '../kinds/model.ts';
import type { Sheet } from '../sheet/model.ts';
import { type SheetBody, sheetBody } from './body.ts';
import { type SourceLine, sourceLines } from './citations.ts';
import { type EditorsNote, editorsNotes } from './editors-notes.ts';
import type { EditionFacts, Paper, PictureSource } from './orders.ts';
import { cardMargins, type Margins, type PaperSize, papers } from './paper.ts';
import { ruleNotes } from './rule-notes.ts';
import { type SafetyLine, safetyLines, signalOrder } from './safety.ts';
import { type SettingRow, settingRows } from './setting-rows.ts';
import { hasError, type SheetFace, sheetFace } from './sheet-face.ts';
import { typesetWords } from './typeset.ts';

/** One operation on the card. */
export interface CardOperation {
  readonly number: number;
  /** HTML. */
  readonly title: string;
  /** Numbered steps with their safety messages, as HTML; never empty. */
  readonly steps: string;
}

/** A caution at the head of the card. */
export interface CardCaution {
  readonly signal: SignalWord;
  /** `WARNING`. */
  readonly word: string;
  /** Whether the alert symbol stands with it: not for NOTICE. */
  readonly alert: boolean;
  /** HTML. */
  readonly html: string;
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
  /**
   * The sheet's own messages, in falling order of harm; the kind's words for a hazard that the
   * work meets and the sheet says nothing of.
   */
  readonly cautions: readonly CardCaution[];
  readonly settings: readonly SettingRow[];
  readonly operations: readonly CardOperation[];
  /** Footnotes, as HTML; empty for none. */
  readonly footnotes: string;
  readonly notes: readonly EditorsNote[];
  readonly sources: readonly SourceLine[];
  readonly hasGauges: boolean;
}

/**
 * How closely a card may be set, the roomiest first; `card.css` says what each means. `short` is
 * `tight` with the steps left to the booklet: the operations stand as a list to tick.
 */
export const densities = ['roomy', 'regular', 'close', 'tight', 'short'] as const;

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
    cautions: cautions(body, safetyLines([{ sheet, kind }])),
    settings,
    operations,
    footnotes: body.notes,
    notes: [...editorsNotes(findings), ...ruleNotes(sheet, kind)],
    sources,
    hasGauges: settings.some((row) => row.gauge !== null),
  };
}

function cautions(body: SheetBody, usual: readonly SafetyLine[]): CardCaution[] {
  const found = new Map<string, CardCaution>();
  const covered = new Set<string>();
  const add = (signal: SignalWord, html: string) => {
    const word = signal.toUpperCase();
    found.set(`${signal} ${html}`, { signal, word, alert: signal !== 'notice', html });
  };
  for (const message of body.messages) {
    for (const label of message.hazards.split(', ')) covered.add(label);
    add(message.signal, message.html);
  }
  for (const line of usual) {
    if (covered.has(line.label)) continue;
    add(line.signal, `<p>${typesetWords(`${line.hazard} ${line.consequence} ${line.avoid}`)}</p>`);
  }
  return [...found.values()].sort(
    (first, second) => signalOrder.indexOf(first.signal) - signalOrder.indexOf(second.signal),
  );
}
