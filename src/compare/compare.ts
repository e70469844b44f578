import type {
  Change,
  EditionChanges,
  EditionSnapshot,
  SheetChanges,
  SheetSnapshot,
} from './model.ts';
import { pairUp } from './pairing.ts';
import { type SizeReading, settingChanges } from './setting-changes.ts';
import { sameSubstance } from './substance.ts';
import { workChanges } from './work-changes.ts';

/**
 * What an edition says otherwise than an earlier one; sheets are the same that have the same name.
 * Pure, and independent of the order of files.
 */
export function compareEditions(
  before: EditionSnapshot,
  after: EditionSnapshot,
  reading: SizeReading,
): EditionChanges {
  const old = new Map(before.sheets.map((sheet) => [sheet.id, sheet]));
  const found: SheetChanges[] = [];
  for (const sheet of after.sheets) {
    const earlier = old.get(sheet.id);
    old.delete(sheet.id);
    found.push(earlier ? compareSheets(earlier, sheet, reading) : wholeSheet(sheet, 'sheet-added'));
  }
  for (const sheet of old.values()) found.push(wholeSheet(sheet, 'sheet-dropped'));
  const facts = ({ title, edition, date }: EditionSnapshot) => ({ title, edition, date });
  const sheets = found.filter(({ changes }) => changes.length > 0);
  return {
    before: facts(before),
    after: facts(after),
    sheets,
    unchanged: found.length - sheets.length,
  };
}

function wholeSheet(sheet: SheetSnapshot, kind: 'sheet-added' | 'sheet-dropped'): SheetChanges {
  const added = kind === 'sheet-added';
  return {
    id: sheet.id,
    title: sheet.title,
    revisions: { before: added ? null : sheet.revision, after: added ? sheet.revision : null },
    status: added ? sheet.status : null,
    changes: [
      {
        kind,
        weight: 'substance',
        about: '',
        label: sheet.title,
        before: added ? null : sheet.title,
        after: added ? sheet.title : null,
        size: null,
      },
    ],
    unraised: false,
  };
}

/** What a sheet says otherwise than it did; the date and the revision by themselves are no change. */
export function compareSheets(
  before: SheetSnapshot,
  after: SheetSnapshot,
  reading: SizeReading,
): SheetChanges {
  const changes = [
    ...headChanges(before, after),
    ...settingsChanges(before, after, reading),
    ...workChanges(before.operations, after.operations),
  ];
  const raised = (after.revision ?? 0) > (before.revision ?? 0);
  // A sheet that goes from proof to released without another word needs no new revision.
  const told = changes.filter(({ kind }) => kind !== 'status-changed');
  return {
    id: after.id,
    title: after.title,
    revisions: { before: before.revision, after: after.revision },
    status: after.status,
    changes,
    unraised: told.length > 0 && !raised,
  };
}

function headChanges(before: SheetSnapshot, after: SheetSnapshot): Change[] {
  const changes: Change[] = [];
  const put = (
    kind: Change['kind'],
    weight: Change['weight'],
    about: string,
    label: string,
    one: string | null,
    two: string | null,
  ) => {
    if (one !== two)
      changes.push({ kind, weight, about, label, before: one, after: two, size: null });
  };
  put('title-changed', 'wording', '', 'Title', before.title, after.title);
  put('status-changed', 'wording', '', 'Status', before.status, after.status);
  put('unit-changed', 'substance', 'kind', 'kind', before.kind, after.kind);
  for (const key of new Set([...Object.keys(before.unit), ...Object.keys(after.unit)])) {
    const label = key.replaceAll('-', ' ');
    put('unit-changed', 'substance', key, label, before.unit[key] ?? null, after.unit[key] ?? null);
  }
  const fits = (sheet: SheetSnapshot) => sheet.fits.join('; ') || null;
  put('fits-changed', 'substance', 'fits', 'Fits', fits(before), fits(after));
  for (const key of new Set([...Object.keys(before.sources), ...Object.keys(after.sources)])) {
    const [one, two] = [before.sources[key] ?? null, after.sources[key] ?? null];
    put('source-changed', 'wording', key, `Source ${key}`, one, two);
  }
  const weight = sameSubstance(before.opening, after.opening) ? 'wording' : 'substance';
  put('text-reworded', weight, '', 'Opening', before.opening, after.opening);
  return changes;
}

function settingsChanges(
  before: SheetSnapshot,
  after: SheetSnapshot,
  reading: SizeReading,
): Change[] {
  const names = (sheet: SheetSnapshot) => sheet.settings.map(({ name }) => name);
  const { pairs, dropped, added } = pairUp(names(before), names(after), 'equal');
  const changes: Change[] = [];
  const whole = (sheet: SheetSnapshot, at: number, kind: 'setting-added' | 'setting-dropped') => {
    const setting = sheet.settings[at];
    if (!setting) return;
    const text = Object.entries(setting.values)
      .map(([place, value]) => (place === '' ? value : `${place} ${value}`))
      .join('; ');
    changes.push({
      kind,
      weight: 'substance',
      about: setting.name,
      label: setting.label,
      before: kind === 'setting-dropped' ? text : null,
      after: kind === 'setting-added' ? text : null,
      size: null,
    });
  };
  for (const at of dropped) whole(before, at, 'setting-dropped');
  for (const pair of pairs) {
    const [one, two] = [before.settings[pair.before], after.settings[pair.after]];
    if (one && two) changes.push(...settingChanges(one, two, reading));
  }
  for (const at of added) whole(after, at, 'setting-added');
  return changes;
}
