import type { SheetChanges } from '../../compare/model.ts';
import { tasksOf } from '../../sheet/index.ts';
import type { Setting, Sheet } from '../../sheet/model.ts';
import { typesetWords } from '../lettering/index.ts';
import {
  type EditorsNote,
  editorsNotes,
  endState,
  type HazardWords,
  hazardWords,
  type OperationBody,
  ruleNotes,
  type SettingRow,
  type SheetFace,
  settingRows,
  sheetBody,
  sheetFace,
  sheetMarks,
  sourceLines,
  stepFigures,
  type ValueLine,
  type WorkedFacts,
  type WorkedLine,
  withMarks,
} from '../matter/index.ts';
import { stageTitles } from '../order-picture/index.ts';
import type { Paper, PictureSource, SheetToPrint, Templates } from '../orders/model.ts';
import { type CheckRow, checkGrid } from './check-grid.ts';
import { type FigureColumn, figureColumn } from './figure-column.ts';
import { type BodyStore, keptBody } from './kept-body.ts';
import { type SourcePages, sourcePages } from './source-pages.ts';
import { idOf } from './where-worked.ts';

/** One value of a setting as the table of a chapter prints it. */
export interface ChapterValue extends ValueLine {
  /** Null where it is no length. */
  readonly inchColumn: FigureColumn | null;
  readonly mmColumn: FigureColumn | null;
}

/** A setting in its chapter. */
export interface ChapterSetting extends SettingRow {
  /** Its place to link to: `unit-3-setting-2`. */
  readonly anchor: string;
  /** Whether it bears a bar: it is not what it was in the last edition. */
  readonly changed: boolean;
  readonly lines: readonly ChapterValue[];
  /** The gauge alone, or the pair where there is no other; null where the size itself is its name, or for none. */
  readonly take: string | null;
  /** How that is held, and the pair beside it; null for neither. */
  readonly taken: string | null;
  /** Where it is made: the heading of its task, or its own row. */
  readonly madeAt: string;
  /** Whether anything is said beneath its values. */
  readonly hasDetails: boolean;
  /** How many columns its values take, from the one of what is written on: those behind it may be empty. */
  readonly columns: 1 | 2 | 4;
  /** Whether that is all of them. */
  readonly fills: boolean;
}

/** An operation in its chapter. */
export interface ChapterOperation extends OperationBody {
  /** The number of the task; null for a heading that is no work. */
  readonly number: number | null;
  /** Its place to link to: `unit-3-heading-2`. */
  readonly anchor: string;
  readonly changed: boolean;
  /** The gauges of its settings, parted by commas; null for none. */
  readonly gauge: string | null;
  /** What it leaves otherwise than it found it: `bowl cover inverted`. */
  readonly leaves: string | null;
}

/** The tasks of one stage of the work. */
export interface ChapterStage {
  /** `Bench`. */
  readonly title: string;
  readonly tasks: readonly {
    readonly number: number;
    readonly title: string;
    readonly anchor: string;
  }[];
}

/** One unit's chapter. It depends on its own sheet and what the edition says, and on no page number. */
export interface Chapter {
  readonly number: number;
  /** Its place to link to, plain ASCII: `unit-3`. */
  readonly anchor: string;
  /** How far down its tab stands, from 0; the units share twelve places. */
  readonly tab: number;
  readonly face: SheetFace;
  /** Whether the last edition, if it is told of, had no such sheet. */
  readonly isNew: boolean;
  /** HTML. */
  readonly intro: string;
  readonly settings: readonly ChapterSetting[];
  /** All its headings, in the order of the sheet. */
  readonly operations: readonly ChapterOperation[];
  /** Headings that are no work: how to tell it, tools; and those that stand behind the work. */
  readonly about: readonly ChapterOperation[];
  readonly after: readonly ChapterOperation[];
  readonly tasks: readonly ChapterOperation[];
  /** The order of work, stage by stage. */
  readonly stages: readonly ChapterStage[];
  /** The gauges of its settings, each once. */
  readonly gauges: readonly string[];
  /** The hazards of its work in their full words. */
  readonly hazards: readonly HazardWords[];
  /** Symptoms and what to look at, and the place of that table. */
  readonly checksAnchor: string;
  readonly checks: readonly CheckRow[];
  /** Footnotes, as HTML; empty for none. */
  readonly footnotes: string;
  readonly notes: readonly EditorsNote[];
  readonly sources: readonly SourcePages[];
  /** Settings that sources differ on. */
  readonly rulings: readonly ChapterSetting[];
  /** Figures that were worked from others, each under the number of its setting. */
  readonly figures: readonly (WorkedLine & { readonly number: string })[];
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
  const { numberOf, tasks } = tasksOf(sheet);
  const headingOf = (task: number) =>
    tasks.find(({ number }) => number === task)?.operation.index ?? 0;
  const settings = settingRows(sheet, sources, facts, entry.proofs ?? null).map((row) => ({
    ...row,
    columns: columnsOf(row),
    fills: columnsOf(row) === 4,
    anchor: `${anchor}-setting-${row.number}`,
    changed: marks.settings.includes(idOf(row.name, sheet)),
    lines: chapterValues(row.values, sheet.settings.get(row.name)),
    ...gaugeIn(row),
    madeAt:
      row.task === null
        ? `${anchor}-setting-${row.number}`
        : `${anchor}-heading-${headingOf(row.task) + 1}`,
    hasDetails: [row.where, row.note, gaugeIn(row).taken].some((text) => text !== null),
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
            narrow: false,
            reduced: true,
            texts: options.texts ?? new Map(),
          });
        },
        adapt: withMarks(marks),
      }),
  );
  const operations = body.operations.map((operation, at): ChapterOperation => {
    const number = numberOf(at);
    const own = sheet.operations[at];
    return {
      ...operation,
      number,
      anchor: `${anchor}-heading-${at + 1}`,
      changed: marks.headings.includes(at),
      gauge: listed(
        settings.filter(({ task }) => task !== null && task === number).flatMap(gaugeOf),
      ),
      leaves: number === null || own === undefined ? null : endState(sheet, own),
    };
  });
  const first = operations.findIndex(({ number }) => number !== null);
  return {
    number: index + 1,
    anchor,
    tab: index % 12,
    face: sheetFace(sheet),
    isNew: marks.isNew,
    intro: body.intro,
    settings,
    operations,
    about: operations.filter(({ number }, at) => number === null && at < first),
    after: operations.filter(({ number }, at) => number === null && at > first),
    tasks: operations.filter(({ number }) => number !== null),
    stages: stagesOf(sheet, operations),
    gauges: [...new Set(settings.flatMap(gaugeOf))],
    hazards: hazardWords(sheet, body.messages, marks, typesetWords),
    checksAnchor: `${anchor}-faults`,
    checks: checkGrid(sheet),
    footnotes: body.notes,
    notes: [...editorsNotes(entry.findings, sheet.kind), ...ruleNotes(sheet)],
    sources: sourcePages(sheet, sources),
    rulings: settings.filter((row) => row.dissents.length > 0),
    figures: settings.flatMap(({ number, worked }) => worked.map((line) => ({ ...line, number }))),
    order: options.orders?.[index] ?? null,
  };
}

function chapterValues(
  values: readonly ValueLine[],
  setting: Setting | undefined,
): readonly ChapterValue[] {
  const sizes = setting
    ? [...(setting.value === null ? [] : [setting.value]), ...setting.places.values()]
    : [];
  return values.map((value, at) => ({
    ...value,
    inchColumn: figureColumn(sizes[at] ?? null, 'in'),
    mmColumn: figureColumn(sizes[at] ?? null, 'mm'),
  }));
}

/** Without a gauge and another unit a value has the width of the row. */
function columnsOf(row: SettingRow): ChapterSetting['columns'] {
  if (gaugeIn(row).take !== null) return 1;
  return row.values.some(({ other, inch, mm }) => [other, inch, mm].some((each) => each)) ? 2 : 4;
}

/** A row's gauge, apart from what is said of its use. */
function gaugeIn({ gauges }: SettingRow): { take: string | null; taken: string | null } {
  const parts = gauges
    .filter(({ isSize }) => !isSize)
    .map(({ take, go, noGo, held }) => {
      const pair = [go === null ? [] : `go ${go}`, noGo === null ? [] : `no-go ${noGo}`].flat();
      const more = [...(held === null ? [] : [held]), ...(take === null ? [] : pair)];
      return { take: take ?? pair.join(', '), taken: more.join('; ') };
    });
  const told = (texts: readonly string[]) => listed(texts.filter((text) => text !== ''));
  return {
    take: told(parts.map(({ take }) => take)),
    taken: told(parts.map(({ taken }) => taken)),
  };
}

function gaugeOf({ take }: ChapterSetting): string[] {
  return take === null ? [] : [take];
}

function listed(texts: readonly string[]): string | null {
  return texts.length === 0 ? null : [...new Set(texts)].join(', ');
}

function stagesOf(sheet: Sheet, operations: readonly ChapterOperation[]): readonly ChapterStage[] {
  const stages: { title: string; tasks: ChapterStage['tasks'][number][] }[] = [];
  for (const [at, { number, title, anchor }] of operations.entries()) {
    if (number === null) continue;
    const stage = sheet.operations[at]?.known?.stage ?? 'any';
    const name = stage === 'any' ? (stages.at(-1)?.title ?? '') : stageTitles[stage];
    if (stages.at(-1)?.title !== name) stages.push({ title: name, tasks: [] });
    stages.at(-1)?.tasks.push({ number, title, anchor });
  }
  return stages;
}
