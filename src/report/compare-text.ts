import { areNamedAlike } from '../compare/index.ts';
import type { Change, ChangeKind, EditionChanges, SheetChanges } from '../compare/model.ts';
import { visible } from '../text/index.ts';
import type { Paint } from './paint.ts';
import { wrap } from './wrap.ts';

/** What to call a change in front of what changed. */
const words: Readonly<Record<ChangeKind, string>> = {
  'sheet-added': 'new sheet',
  'sheet-dropped': 'sheet dropped',
  'unit-changed': 'unit',
  'fits-changed': 'fits',
  'setting-added': 'new setting',
  'setting-dropped': 'setting dropped',
  'setting-changed': 'setting',
  'setting-rewritten': 'written otherwise',
  'condition-changed': 'how it is measured',
  'equivalent-changed': 'also written',
  'source-changed': 'source',
  'ruling-changed': 'ruling',
  'note-changed': 'note',
  'operation-added': 'new operation',
  'operation-dropped': 'operation dropped',
  'operation-moved': 'operation moved',
  'operation-retitled': 'heading',
  'step-added': 'new step',
  'step-dropped': 'step dropped',
  'step-moved': 'step moved',
  'step-changed': 'step',
  'step-reworded': 'step reworded',
  'caution-added': 'new caution',
  'caution-dropped': 'caution dropped',
  'caution-moved': 'caution moved',
  'caution-changed': 'caution',
  'caution-reworded': 'caution reworded',
  'text-reworded': 'text',
  'title-changed': 'title',
  'status-changed': 'status',
};

/** A comparison as text: by sheet, what matters at the bench first, then rewording. */
export function comparisonText(
  changes: EditionChanges,
  labels: { readonly before: string; readonly after: string },
  { color, width }: { readonly color: Paint; readonly width: number | null },
): string {
  const alike = areNamedAlike(changes.before, changes.after);
  const name = ({ edition, date }: EditionChanges['before'], label: string) => {
    const named = [edition, date].filter((part) => part !== null).join(', ');
    return named === '' ? label : alike ? `${named} (${label})` : named;
  };
  const lines = [
    visible(
      `From ${name(changes.before, labels.before)} to ${name(changes.after, labels.after)}: ${totals(changes)}`,
    ),
  ];
  for (const sheet of changes.sheets) {
    lines.push(
      '',
      `${color.bold(visible(sheet.id))}  ${visible(sheet.title)}${revisionText(sheet)}`,
    );
    const [bench, other] = [
      sheet.changes.filter(({ weight }) => weight === 'substance'),
      sheet.changes.filter(({ weight }) => weight === 'wording'),
    ];
    for (const change of bench) lines.push(...changeLines(change, width));
    if (other.length > 0) {
      if (bench.length > 0) lines.push('  without effect at the bench:');
      for (const change of other) lines.push(...changeLines(change, width));
    }
  }
  return `${lines.join('\n')}\n`;
}

function totals({ sheets, unchanged }: EditionChanges): string {
  const count = (kind: ChangeKind) =>
    sheets.filter(({ changes }) => changes[0]?.kind === kind).length;
  const [added, dropped] = [count('sheet-added'), count('sheet-dropped')];
  const changed = sheets.length - added - dropped;
  const sheetsOf = (number: number, word: string) =>
    number === 0 ? [] : [`${number} ${number === 1 ? 'sheet' : 'sheets'} ${word}`];
  const parts = [
    ...sheetsOf(changed, 'changed'),
    ...sheetsOf(added, 'added'),
    ...sheetsOf(dropped, 'dropped'),
    ...sheetsOf(unchanged, 'the same'),
  ];
  return parts.length === 0 ? 'no sheets at all' : parts.join(', ');
}

function revisionText({ revisions: { before, after } }: SheetChanges): string {
  if (before === null || after === null) return after === null ? '' : `, revision ${after}`;
  return before === after ? `, revision ${after} as before` : `, revision ${before} to ${after}`;
}

function changeLines(change: Change, width: number | null): string[] {
  const { kind, label, before, after, size } = change;
  const what =
    before === null
      ? after
      : after === null
        ? before
        : `${shortened(before)} → ${shortened(after)}`;
  const isWhole = kind === 'sheet-added' || kind === 'sheet-dropped';
  const head = isWhole ? words[kind] : `${label}, ${words[kind]}`;
  const tail = size === null ? '' : ` (${size})`;
  const line = isWhole ? head : `${head}: ${shortened(what ?? '')}${tail}`;
  const [first = '', ...rest] = wrap(visible(line), width === null ? null : width - 6);
  return [`  ${first}`, ...rest.map((more) => `      ${more}`)];
}

/** Long texts are told by their beginning and end: the sheets hold the whole. */
function shortened(text: string): string {
  return text.length <= 160
    ? text
    : `${text.slice(0, 100).trimEnd()} … ${text.slice(-50).trimStart()}`;
}
