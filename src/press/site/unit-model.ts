import { tasksOf } from '../../sheet/index.ts';
import type { Sheet } from '../../sheet/model.ts';
import { typesetWords } from '../lettering/index.ts';
import {
  editorsNotes,
  ruleNotes,
  safetyLines,
  settingRows,
  sheetBody,
  sheetFace,
  sourceLines,
  stepFigures,
  type WorkedFacts,
} from '../matter/index.ts';
import type { PictureSource, SheetToPrint, Templates } from '../orders/model.ts';
import { forScreen } from './for-screen.ts';
import { idMaker } from './ids.ts';
import type { PageFrame, UnitOperation, UnitPage, UnitSetting } from './model.ts';

/** What a unit's page is made with besides its sheet. */
interface UnitOptions {
  readonly facts: WorkedFacts;
  readonly picture: PictureSource | null;
  readonly texts: Templates['texts'];
  /** The sheets that have a page, by file name without `.md`. */
  readonly pages: ReadonlySet<string>;
}

/** A unit's page without its frame and its links to other pages. */
export type UnitMatter = Omit<UnitPage, keyof PageFrame | 'workedHref' | 'previous' | 'next'>;

/** What the page of one unit says. `number` is its place in the edition, from 1. */
export function unitMatter(entry: SheetToPrint, number: number, options: UnitOptions): UnitMatter {
  const { sheet } = entry;
  const id = idMaker();
  const { tasks, numberOf } = tasksOf(sheet);
  const operations = sheet.operations.map((operation, index) => {
    const words = operation.heading.value.replace(/\s*\{#[^}]*\}\s*$/, '');
    const name = operation.known?.name ?? operation.id?.value ?? words;
    return { id: id('work', name), words, number: numberOf(index) };
  });
  const body = sheetBody(sheet, {
    prefix: 'note',
    picture: options.picture,
    altitude: options.facts.altitude,
    figures: (at) => {
      const operation = sheet.operations[at];
      if (operation === undefined) return null;
      const prefix = `figure-${operations[at]?.id ?? at}`;
      return stepFigures(sheet, operation, { prefix, narrow: false, texts: options.texts });
    },
    adapt: (nodes, at) => {
      const work = at === null ? null : (operations[at]?.words ?? null);
      return forScreen(nodes, { work, under: at === null ? 1 : 3, pages: options.pages });
    },
  });
  const sources = sourceLines(sheet);
  const settings = settingRows(sheet, sources, options.facts, entry.proofs ?? null).map(
    (row): UnitSetting => {
      const made =
        operations[tasks.find(({ number }) => number === row.task)?.operation.index ?? -1];
      return {
        ...row,
        id: id('setting', row.name),
        madeBy: made === undefined ? null : { href: `#${made.id}`, label: made.words },
      };
    },
  );
  const spoken = new Set(body.messages.flatMap(({ hazards }) => hazards.split(', ')));
  return {
    number,
    face: sheetFace(sheet),
    intro: body.intro,
    settings,
    cautions: safetyLines([entry]).map((line) => ({
      ...line,
      isInWork: spoken.has(line.label),
    })),
    operations: operations.map(({ id, words, number }, at): UnitOperation => {
      const { title = typesetWords(words), html = '' } = body.operations[at] ?? {};
      return { number, id, title, html, sets: settingsSet(at, sheet, settings) };
    }),
    // The press has its own head for footnotes, and leaves the reader's empty.
    footnotes: body.notes.replace(/<h2><\/h2>\s*/g, ''),
    rulings: settings.filter((row) => row.dissents.length > 0),
    hasProofs: settings.some(({ proof }) => proof !== null),
    hasWorked: settings.some((row) => row.worked.length > 0),
    notes: [...editorsNotes(entry.findings, sheet.kind), ...ruleNotes(sheet)],
    sources,
  };
}

/** The settings that an operation's steps print, in the order of the table. */
function settingsSet(
  operation: number,
  sheet: Sheet,
  settings: readonly UnitSetting[],
): UnitOperation['sets'] {
  const names = new Set(
    sheet.values.filter((use) => use.operation === operation).map((use) => use.setting?.name.value),
  );
  return settings
    .filter(({ name }) => names.has(name))
    .map(({ id, number, label, values, gauge }) => ({
      href: `#${id}`,
      number,
      label,
      values,
      gauge,
    }));
}
