import { settingLabel } from '../sheet/index.ts';
import type { Operation, Setting, Source } from '../sheet/model.ts';
import type { PlacedEntry } from '../text/index.ts';
import { ownSpan } from './document.ts';
import type { DeskDocument, DeskLink, Fold, OutlineEntry } from './model.ts';

/** The sheet as a tree: its front matter by keys, and the work by headings and steps. */
export function outline(document: DeskDocument): readonly OutlineEntry[] {
  const { sheet, text } = document;
  const front = sheet.front?.entries;
  const part = (key: string, children: readonly OutlineEntry[]): readonly OutlineEntry[] => {
    const entry = front?.get(key);
    if (entry === undefined) return [];
    return [
      {
        name: key,
        detail: null,
        kind: 'part',
        span: spanOf(entry),
        nameSpan: entry.key.span,
        children,
      },
    ];
  };
  const own = <T>(all: Iterable<T>, entry: (each: T) => OutlineEntry | null) =>
    [...all].flatMap((each) => entry(each) ?? []);
  return [
    ...part('unit', []),
    ...part(
      'sources',
      own(sheet.sources.values(), (each) => sourceEntry(document, each)),
    ),
    ...part(
      'settings',
      own(sheet.settings.values(), (each) => settingEntry(document, each)),
    ),
    ...part('accept', []),
    ...part('work', []),
    ...own(sheet.operations, (each) => operationEntry(document, each)),
  ].filter(({ span }) => span.end <= text.length);
}

function spanOf({ key, value }: PlacedEntry) {
  return { start: key.span.start, end: Math.max(key.span.end, value.span.end) };
}

function sourceEntry(document: DeskDocument, source: Source): OutlineEntry | null {
  if (source.shared) return null;
  return named(document, {
    name: source.name.value,
    detail: source.title?.value ?? null,
    kind: 'source',
    span: source.span,
    nameSpan: source.name.span,
  });
}

function settingEntry(document: DeskDocument, setting: Setting): OutlineEntry | null {
  return named(document, {
    name: settingLabel(setting),
    detail: setting.value?.text ?? null,
    kind: 'setting',
    span: setting.span,
    nameSpan: setting.name.span,
  });
}

function operationEntry(document: DeskDocument, operation: Operation): OutlineEntry | null {
  const entry = named(document, {
    name: operation.heading.value,
    detail: operation.steps.length === 1 ? '1 step' : `${operation.steps.length} steps`,
    kind: 'operation',
    span: operation.span,
    nameSpan: operation.heading.span,
  });
  if (entry === null) return null;
  const children = operation.steps.flatMap(({ span, number }) => {
    const [line = ''] = document.sheet.text.slice(span.start, span.end).split('\n', 1);
    const words = line.replace(/^\s*\d+[.)]\s*/, '').trim();
    return (
      named(document, {
        name: `${number}. ${words.length > 60 ? `${words.slice(0, 59)}…` : words}`,
        detail: null,
        kind: 'step',
        span,
        nameSpan: span,
      }) ?? []
    );
  });
  return { ...entry, children };
}

/** The entry in the document's own offsets; null where it stands in a base. */
function named(document: DeskDocument, entry: Omit<OutlineEntry, 'children'>): OutlineEntry | null {
  const nameSpan = ownSpan(document, entry.nameSpan);
  const span = ownSpan(document, entry.span);
  if (nameSpan === null || span === null) return null;
  const end = Math.max(span.end, nameSpan.end);
  return {
    ...entry,
    nameSpan,
    span: { start: Math.min(span.start, nameSpan.start), end },
    children: [],
  };
}

/** What folds away: the front matter, its longer entries, and the work under each heading. */
export function folding(document: DeskDocument): readonly Fold[] {
  const { sheet, lines, text } = document;
  const folds: Fold[] = [];
  const fold = (start: number, end: number): void => {
    const startLine = lines.place(start).line;
    // Empty lines below stay with what follows.
    const endLine = lines.place(start + text.slice(start, end).trimEnd().length).line;
    if (endLine > startLine) folds.push({ startLine, endLine });
  };
  if (sheet.frontMatter !== null && document.bodyStart > 0) fold(0, document.bodyStart - 1);
  for (const entry of sheet.front?.entries.values() ?? []) {
    const { start, end } = spanOf(entry);
    fold(start, end);
    if (entry.value.kind !== 'map') continue;
    for (const inner of entry.value.entries.values()) fold(spanOf(inner).start, spanOf(inner).end);
  }
  for (const operation of sheet.operations) {
    const span = ownSpan(document, operation.span);
    if (span !== null) fold(span.start, span.end);
  }
  return folds;
}

/** Words that lead to other files: the base, sheets of other units, and pictures. */
export function links(document: DeskDocument): readonly DeskLink[] {
  const { sheet } = document;
  const found: DeskLink[] = [];
  const based = sheet.front?.entries.get('based-on')?.value;
  if (based?.kind === 'scalar' && isId(based.text)) {
    found.push({
      span: based.span,
      target: `${based.text}.md`,
      explain: 'the sheet it is based on',
    });
  }
  for (const other of sheet.unit.interchanges) {
    const span = ownSpan(document, other.span);
    if (span !== null && isId(other.value)) {
      found.push({ span, target: `${other.value}.md`, explain: 'the sheet of the other unit' });
    }
  }
  for (const { url, span } of sheet.pictures) {
    const own = ownSpan(document, span);
    if (own !== null && /^[\w./ -]+$/.test(url)) {
      found.push({ span: own, target: url, explain: 'the picture' });
    }
  }
  return found;
}

function isId(text: string): boolean {
  return /^[a-z0-9]+(-[a-z0-9]+)*$/.test(text);
}
