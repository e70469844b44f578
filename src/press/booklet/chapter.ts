import type { SheetChanges } from '../../compare/model.ts';
import { tasksOf } from '../../sheet/index.ts';
import {
  type EditorsNote,
  editorsNotes,
  type OperationBody,
  ruleNotes,
  type SettingRow,
  type SheetFace,
  type SourceLine,
  settingRows,
  sheetBody,
  sheetFace,
  sheetMarks,
  sourceLines,
  stepFigures,
  type WorkedFacts,
  withMarks,
} from '../matter/index.ts';
import { papers } from '../orders/index.ts';
import type { Paper, PictureSource, SheetToPrint, Templates } from '../orders/model.ts';
import { type BodyStore, keptBody } from './kept-body.ts';
import { idOf } from './where-worked.ts';

/** A setting in its chapter. */
export interface ChapterSetting extends SettingRow {
  /** Its place to link to: `unit-3-setting-2`. */
  readonly anchor: string;
  /** Whether it bears a bar: it is not what it was in the last edition. */
  readonly changed: boolean;
  /** Whether anything is said beside its values. */
  readonly hasDetails: boolean;
}

/** An operation in its chapter. */
export interface ChapterOperation extends OperationBody {
  /** The number of the task; null for a heading that is no work. */
  readonly number: number | null;
  /** Its place to link to: `unit-3-heading-2`. */
  readonly anchor: string;
  readonly changed: boolean;
}

/** One unit's chapter. It depends on its own sheet and what the edition says, and on no page number. */
export interface Chapter {
  readonly number: number;
  /** Its place to link to, plain ASCII: `unit-3`. */
  readonly anchor: string;
  readonly face: SheetFace;
  /** Whether the last edition, if it is told of, had no such sheet. */
  readonly isNew: boolean;
  /** HTML. */
  readonly intro: string;
  readonly settings: readonly ChapterSetting[];
  readonly operations: readonly ChapterOperation[];
  /** Footnotes, as HTML; empty for none. */
  readonly footnotes: string;
  readonly notes: readonly EditorsNote[];
  readonly sources: readonly SourceLine[];
  /** Settings that sources differ on. */
  readonly rulings: readonly ChapterSetting[];
  /** The picture of its order of work, as SVG; null for none. */
  readonly order: string | null;
}

/** What chapters are made with besides their sheets. */
export interface ChapterOptions {
  readonly paper: Paper;
  readonly picture: PictureSource | null;
  /** Pictures of the order of work, by the sheet's place; none where the edition wants none. */
  readonly orders?: readonly (string | null)[];
  /** Where the sheets' bodies are kept from one print to the next; nowhere if null or absent. */
  readonly bodies?: BodyStore | null;
  /** The templates, for a club's own pictures in place of drawings; none where absent. */
  readonly texts?: Templates['texts'];
}

/** The chapter of the sheet at an index; `changes` is null where it is as it was, or nobody says. */
export function bookletChapter(
  entry: SheetToPrint,
  index: number,
  options: ChapterOptions,
  facts: WorkedFacts,
  changes: SheetChanges | null,
): Chapter {
  const { sheet } = entry;
  const anchor = `unit-${index + 1}`;
  const sources = sourceLines(sheet);
  const marks = sheetMarks(sheet, changes);
  const { numberOf } = tasksOf(sheet);
  const settings = settingRows(sheet, sources, facts).map((row) => ({
    ...row,
    anchor: `${anchor}-setting-${row.number}`,
    changed: marks.settings.includes(idOf(row.name, sheet)),
    hasDetails:
      [row.where, row.also, row.note].some((text) => text !== null) || row.worked.length > 0,
  }));
  const bodies = options.bodies ?? null;
  const marked = JSON.stringify([facts.altitude, marks.opening, marks.steps, marks.cautions]);
  const body = keptBody(
    bodies === null ? null : { ...bodies, around: `${bodies.around} ${marked}` },
    entry,
    anchor,
    options.picture,
    (picture) =>
      sheetBody(sheet, {
        prefix: anchor,
        picture,
        altitude: facts.altitude,
        figures: (at) => {
          const operation = sheet.operations[at];
          if (operation === undefined) return null;
          return stepFigures(sheet, operation, {
            prefix: `${anchor}-work-${at + 1}`,
            narrow: papers[options.paper].small,
            texts: options.texts ?? new Map(),
          });
        },
        adapt: withMarks(marks),
      }),
  );
  return {
    number: index + 1,
    anchor,
    face: sheetFace(sheet),
    isNew: marks.isNew,
    intro: body.intro,
    settings,
    operations: body.operations.map((operation, at) => ({
      ...operation,
      number: numberOf(at),
      anchor: `${anchor}-heading-${at + 1}`,
      changed: marks.headings.includes(at),
    })),
    footnotes: body.notes,
    notes: [...editorsNotes(entry.findings, sheet.kind), ...ruleNotes(sheet)],
    sources,
    rulings: settings.filter((row) => row.dissents.length > 0),
    order: options.orders?.[index] ?? null,
  };
}
