import type { ExportData } from '../generated/export-data.ts';

/** What a data file holds of an edition: `export.schema.json` says what each key is. */
export type SheetSnapshot = ExportData['sheets'][number];
export type SettingSnapshot = SheetSnapshot['settings'][number];
export type OperationSnapshot = SheetSnapshot['operations'][number];
export type CautionSnapshot = OperationSnapshot['cautions'][number];
export type DissentSnapshot = SettingSnapshot['but'][number];

/**
 * An edition as it was at one time, without places, layout and file: plain data that is kept in a file and
 * held against a later one. Every text is as written, its white space made single.
 */
export type EditionSnapshot = Pick<ExportData, 'title' | 'edition' | 'date' | 'sheets'>;

const changeKinds = [
  'sheet-added',
  'sheet-dropped',
  'unit-changed',
  'fits-changed',
  'setting-added',
  'setting-dropped',
  'setting-changed',
  'setting-rewritten',
  'condition-changed',
  'equivalent-changed',
  'source-changed',
  'ruling-changed',
  'note-changed',
  'operation-added',
  'operation-dropped',
  'operation-moved',
  'operation-retitled',
  'step-added',
  'step-dropped',
  'step-moved',
  'step-changed',
  'step-reworded',
  'caution-added',
  'caution-dropped',
  'caution-moved',
  'caution-changed',
  'caution-reworded',
  'text-reworded',
  'title-changed',
  'status-changed',
] as const;
export type ChangeKind = (typeof changeKinds)[number];

/** Whether what was and what is are sizes, to be set as sizes, and not words. */
export function isSizeChange(kind: ChangeKind): boolean {
  return kind === 'setting-added' || kind === 'setting-dropped' || kind === 'setting-changed';
}

/** One thing that an edition says otherwise than the one before it. */
export interface Change {
  readonly kind: ChangeKind;
  /** `substance`: somebody at the bench would do otherwise; `wording`: nobody would. */
  readonly weight: 'substance' | 'wording';
  /** What it is about: a setting's or an operation's name, a key of the unit; empty for the sheet. */
  readonly about: string;
  /** The same for people: `Float level`. */
  readonly label: string;
  /** As the old sheet has it; null for what is new. */
  readonly before: string | null;
  /** As the new sheet has it; null for what is gone. */
  readonly after: string | null;
  /** How far it moved and what that is of the old tolerance; null where there is no number. */
  readonly size: string | null;
}

/** What became of one sheet. */
export interface SheetChanges {
  readonly id: string;
  readonly title: string;
  /** The revisions as the sheets have them; null where one has none, or is not there. */
  readonly revisions: { readonly before: number | null; readonly after: number | null };
  readonly status: string | null;
  readonly changes: readonly Change[];
  /** Whether something changed and the revision did not rise. */
  readonly unraised: boolean;
}

export interface EditionChanges {
  readonly before: Pick<EditionSnapshot, 'title' | 'edition' | 'date'>;
  readonly after: Pick<EditionSnapshot, 'title' | 'edition' | 'date'>;
  /** Sheets with a change, in the new edition's order, those dropped at the end. */
  readonly sheets: readonly SheetChanges[];
  /** How many sheets are the same in both. */
  readonly unchanged: number;
}
