import { areNamedAlike, plainStep } from '../../compare/index.ts';
import {
  type Change,
  type ChangeKind,
  type EditionChanges,
  type EditionSnapshot,
  isSizeChange,
  type SheetSnapshot,
} from '../../compare/model.ts';
import {
  type Density,
  densitiesFor,
  densityNames,
  typesetSize,
  typesetWords,
} from '../lettering/index.ts';
import { type Margins, type PaperSize, papers } from '../orders/index.ts';
import type { EditionFacts, Paper } from '../orders/model.ts';

/** One correction to a copy that is already sold. */
interface SlipLine {
  /** What it is about: `Float level`. */
  readonly label: string;
  /** What to do to the old copy, as HTML: `for 13/64 in read 7/32 in`. */
  readonly html: string;
  /** `0.016 in more, 0.5 of the old tolerance`; null where there is no number. */
  readonly size: string | null;
}

interface SlipUnit {
  readonly title: string;
  /** `revision 2 to 3`; null where the sheets do not say. */
  readonly revision: string | null;
  readonly lines: readonly SlipLine[];
}

/** Everything an errata slip prints: what the template `slip.hbs` is given. */
export interface SlipModel {
  readonly title: string;
  readonly club: string | null;
  readonly language: string;
  /** Of which edition this corrects copies, and which one has it right: `corrected` where both have one name. */
  readonly before: string;
  readonly after: string;
  readonly paper: PaperSize;
  readonly margins: Margins;
  readonly densities: readonly Density[];
  readonly density: string;
  readonly units: readonly SlipUnit[];
  readonly added: readonly string[];
  readonly dropped: readonly string[];
  /** How many changes of mere wording are left out, as a sentence; null for none. */
  readonly rest: string | null;
}

/** What a slip is made with besides the comparison. */
export interface SlipOptions {
  readonly paper: Paper;
  readonly before: EditionSnapshot;
  readonly after: EditionSnapshot;
  readonly labels: { readonly before: string; readonly after: string };
  readonly capHeights: ReadonlyMap<string, number>;
}

/**
 * An errata slip: what somebody at the bench would do otherwise, unit by unit, told so that an old
 * copy can be corrected with a pen. Changes of wording are counted and left out.
 */
export function slipModel(
  changes: EditionChanges,
  edition: EditionFacts | null,
  { paper, before, after, labels, capHeights }: SlipOptions,
): SlipModel {
  const sheets = (snapshot: EditionSnapshot) => new Map(snapshot.sheets.map((s) => [s.id, s]));
  const [old, now] = [sheets(before), sheets(after)];
  const whole = (kind: ChangeKind) =>
    changes.sheets.filter((sheet) => sheet.changes[0]?.kind === kind).map(({ title }) => title);
  const units: SlipUnit[] = [];
  let reworded = 0;
  for (const { id, title, changes: list, revisions } of changes.sheets) {
    reworded += list.filter(({ weight }) => weight === 'wording').length;
    const lines = list
      .filter(({ weight, kind }) => weight === 'substance' && !kind.startsWith('sheet-'))
      .map((change) => slipLine(change, old.get(id) ?? null, now.get(id) ?? null));
    if (lines.length === 0) continue;
    const { before: from, after: to } = revisions;
    const known = from !== null && to !== null && from !== to;
    units.push({
      title,
      revision: known ? `revision ${from} to ${to}` : null,
      lines,
    });
  }
  const named = ({ edition: name, date }: EditionChanges['before'], label: string) =>
    name === null ? label : `${name} edition${date === null ? '' : `, ${date}`}`;
  const corrected = areNamedAlike(changes.before, changes.after) ? 'corrected ' : '';
  return {
    title: edition?.title ?? after.title ?? before.title ?? 'Adjustment sheets',
    club: edition?.club ?? null,
    language: edition?.language ?? 'en',
    before: named(changes.before, labels.before),
    after: `${corrected}${named(changes.after, labels.after)}`,
    paper: papers[paper],
    margins: slipMargins,
    densities: densitiesFor(edition?.readingDistanceMm ?? 500, capHeights),
    density: densityNames[0],
    units,
    added: whole('sheet-added'),
    dropped: whole('sheet-dropped'),
    rest: restOf(reworded),
  };
}

function restOf(count: number): string | null {
  if (count === 0) return null;
  return count === 1
    ? '1 more change is of wording, sources or notes alone.'
    : `${count} more changes are of wording, sources or notes alone.`;
}

/** A slip is folded into a booklet and not bound: narrow margins all round. */
const slipMargins: Margins = { topMm: 10, bottomMm: 10, innerMm: 10, outerMm: 10 };

function slipLine(change: Change, old: SheetSnapshot | null, now: SheetSnapshot | null): SlipLine {
  const { kind, label, size } = change;
  const set = (text: string, sheet: SheetSnapshot | null) =>
    isSizeChange(kind)
      ? `<b>${typesetSize(text)}</b>`
      : kind.startsWith('setting') || kind === 'condition-changed' || kind === 'unit-changed'
        ? `<b>${typesetWords(text)}</b>`
        : `<q>${typesetWords(plainStep(text, sheet))}</q>`;
  const was = change.before === null ? '' : set(change.before, old);
  const is = change.after === null ? '' : set(change.after, now);
  return { label, html: instruction(kind, was, is), size };
}

/** What to do to the old copy; `was` and `is` are HTML, empty where there is none. */
function instruction(kind: ChangeKind, was: string, is: string): string {
  if (kind === 'step-moved') return `move the step ${was} to ${is}`;
  if (kind === 'operation-moved') return `do it ${is}, no longer ${was}`;
  if (kind === 'caution-moved') return `the caution ${was} now stands at ${is}`;
  const noun = kind.startsWith('step')
    ? 'the step '
    : kind.startsWith('caution')
      ? 'the caution '
      : kind.startsWith('operation')
        ? 'the operation '
        : '';
  if (was === '') return `add ${noun}${is}`;
  if (is === '') return `strike out ${noun}${was}`;
  return `for ${was} read ${is}`;
}
