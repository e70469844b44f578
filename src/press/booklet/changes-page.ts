import { plainStep, sheetSnapshot } from '../../compare/index.ts';
import {
  type Change,
  isSizeChange,
  type SheetChanges,
  type SheetSnapshot,
} from '../../compare/model.ts';
import { typesetSize, typesetWords } from '../lettering/index.ts';
import type { LastEdition, SheetToPrint } from '../orders/model.ts';
import type { Chapter } from './chapter.ts';
import { idOf } from './where-worked.ts';

/** One thing that is not as it was, as a line of the page. */
export interface ChangeLine {
  readonly label: string;
  /** What is said now and what was said before, as HTML. */
  readonly html: string;
  /** `0.016 in more, 0.5 of the old tolerance`; null where there is no number. */
  readonly size: string | null;
  /** Where in the chapter it stands. */
  readonly anchor: string;
}

/** What changed on one unit's sheet. */
export interface ChangedUnit {
  readonly number: number;
  readonly anchor: string;
  readonly title: string;
  /** `revision 2 to 3`; null where the sheets do not say. */
  readonly revision: string | null;
  readonly isNew: boolean;
  readonly lines: readonly ChangeLine[];
}

/** What an edition says otherwise at the bench than the one before it. */
export interface ChangesPage {
  /** The one before it: `first edition, 2025-03-01`. */
  readonly before: string;
  readonly units: readonly ChangedUnit[];
  /** Titles of units that the last edition had and this one leaves out. */
  readonly dropped: readonly string[];
  /** How many changes are of wording, sources and notes alone. */
  readonly wording: number;
}

/** The page of changes, units in the order of the chapters. */
export function changesPage(
  { changes, before }: LastEdition,
  sheets: readonly SheetToPrint[],
  chapters: readonly Chapter[],
): ChangesPage {
  const changed = new Map(changes.sheets.map((each) => [each.id, each]));
  const old = new Map(before.sheets.map((each) => [each.id, each]));
  const units = chapters.flatMap((chapter, index) => {
    const found = changed.get(chapter.face.id);
    const entry = sheets[index];
    return found && entry ? unitOf(found, entry, chapter, old.get(found.id) ?? null) : [];
  });
  const { edition, date } = changes.before;
  const named = edition === null ? 'last edition' : `${edition} edition`;
  return {
    before: date === null ? named : `${named}, ${date}`,
    units,
    dropped: changes.sheets
      .filter((sheet) => sheet.changes[0]?.kind === 'sheet-dropped')
      .map(({ title }) => title),
    wording: changes.sheets
      .flatMap((sheet) => sheet.changes)
      .filter(({ weight }) => weight === 'wording').length,
  };
}

function unitOf(
  { changes, revisions }: SheetChanges,
  { sheet }: SheetToPrint,
  chapter: Chapter,
  old: SheetSnapshot | null,
): ChangedUnit[] {
  const told = changes.filter(({ weight }) => weight === 'substance');
  if (told.length === 0) return [];
  const isNew = told.some((change) => change.kind === 'sheet-added');
  const now = sheetSnapshot(sheet);
  const anchorOf = ({ about, label }: Change): string =>
    chapter.settings.find(({ name }) => idOf(name, sheet) === about)?.anchor ??
    chapter.operations[now.operations.findIndex(({ heading }) => heading === label)]?.anchor ??
    chapter.anchor;
  const ofWork = ({ kind }: Change) => /^(?:operation|step|caution|text)-/.test(kind);
  const { before, after } = revisions;
  return [
    {
      number: chapter.number,
      anchor: chapter.anchor,
      title: chapter.face.title,
      revision:
        before === null || after === null || before === after
          ? null
          : `revision ${before} to ${after}`,
      isNew,
      lines: isNew
        ? []
        : told.map((change) => ({
            label: change.label.charAt(0).toUpperCase() + change.label.slice(1),
            html: lineOf(change, old, now),
            size: change.size,
            anchor: ofWork(change)
              ? (chapter.operations[
                  now.operations.findIndex(({ heading }) => heading === change.label)
                ]?.anchor ?? chapter.anchor)
              : anchorOf(change),
          })),
    },
  ];
}

function lineOf(change: Change, old: SheetSnapshot | null, now: SheetSnapshot): string {
  const { kind } = change;
  const set = (text: string, sheet: SheetSnapshot | null) => {
    if (isSizeChange(kind)) return `<b>${typesetSize(text)}</b>`;
    if (/^(?:step|caution|text)-/.test(kind))
      return `\u201c${typesetWords(plainStep(text, sheet))}\u201d`;
    return typesetWords(text);
  };
  const was = change.before === null ? '' : set(change.before, old);
  const is = change.after === null ? '' : set(change.after, now);
  const [noun = ''] = /^(?:step|caution)/.exec(kind) ?? [];
  const named = noun === '' ? '' : `${noun} `;
  if (kind === 'operation-moved') return `now ${is}; was ${was}`;
  if (kind === 'step-moved' || kind === 'caution-moved') return `${named}${was}, now at ${is}`;
  if (was === '') return `new${noun === '' ? '' : ` ${noun}`}: ${is}`;
  if (is === '') return `left out: ${named}${was}`;
  return `${named}${is}; was ${was}`;
}
