import type { SignalWord } from '../kinds/model.ts';

/** A step's text as written, white space made single; a caution's words and heads left out. */
export interface StepSnapshot {
  readonly text: string;
}

export interface CautionSnapshot {
  readonly signal: SignalWord;
  /** As written, in the order of the alphabet. */
  readonly hazards: readonly string[];
  readonly text: string;
}

export interface OperationSnapshot {
  /** The kind's name for it, or its heading in lower case where the kind knows none. */
  readonly name: string;
  readonly heading: string;
  readonly steps: readonly StepSnapshot[];
  readonly cautions: readonly CautionSnapshot[];
  /** What stands under the heading besides, as written, white space made single. */
  readonly prose: string;
}

export interface DissentSnapshot {
  readonly value: string | null;
  readonly from: string | null;
  readonly ruling: string | null;
}

export interface SettingSnapshot {
  /** The kind's name for it, or the sheet's own where the kind knows none. */
  readonly name: string;
  readonly label: string;
  /** Values as written, by place; the place is empty where one value serves all. */
  readonly values: Readonly<Record<string, string>>;
  readonly also: readonly string[];
  /** Everything said beside the value, as written: gauge, at, travel, cover ... */
  readonly said: Readonly<Record<string, string>>;
  readonly from: readonly string[];
  readonly but: readonly DissentSnapshot[];
  readonly note: string | null;
}

/**
 * What one sheet says, without places, layout and file: plain data that is kept in a file and held
 * against a later sheet. Every size is as written.
 */
export interface SheetSnapshot {
  readonly id: string;
  readonly title: string;
  readonly kind: string | null;
  readonly revision: number | null;
  readonly status: string | null;
  readonly date: string | null;
  /** Facts of the unit, key to text as written: maker, model, features, sizes, threads. */
  readonly unit: Readonly<Record<string, string>>;
  readonly fits: readonly string[];
  readonly settings: readonly SettingSnapshot[];
  /** What stands before the first heading. */
  readonly opening: string;
  readonly operations: readonly OperationSnapshot[];
  /** Sources by their names: title, kind, year as written. */
  readonly sources: Readonly<Record<string, string>>;
}

/** An edition as it was at one time. */
export interface EditionSnapshot {
  readonly title: string | null;
  readonly edition: string | null;
  readonly date: string | null;
  readonly sheets: readonly SheetSnapshot[];
}

export const changeKinds = [
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
