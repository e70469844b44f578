import type { Setting, Source } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';
import { holds, ownSpan, placeOf } from './document.ts';
import type { DeskDocument, DeskPlace } from './model.ts';
import { citationsOf } from './used.ts';

/** What a word of a sheet names. */
export type Meant =
  | { readonly what: 'setting'; readonly setting: Setting; readonly span: Span }
  | {
      readonly what: 'source';
      readonly id: string;
      readonly source: Source | null;
      readonly span: Span;
    }
  | { readonly what: 'sheet'; readonly id: string; readonly span: Span };

/** What the word at an offset names; null where it names nothing that is defined somewhere. */
export function meantAt(document: DeskDocument, offset: number): Meant | null {
  const { sheet } = document;
  const at = (span: Span): Span | null => {
    const own = ownSpan(document, span);
    return own !== null && holds(own, offset) ? own : null;
  };
  for (const use of sheet.values) {
    const span = at(use.span);
    if (span !== null) return use.setting ? { what: 'setting', setting: use.setting, span } : null;
  }
  for (const setting of sheet.settings.values()) {
    const span = at(setting.name.span);
    if (span !== null) return { what: 'setting', setting, span };
  }
  for (const { id, source } of citationsOf(sheet)) {
    const span = at(source.span);
    if (span !== null) return { what: 'source', id, source: sheet.sources.get(id) ?? null, span };
  }
  for (const source of sheet.sources.values()) {
    const span = source.shared ? null : at(source.name.span);
    if (span !== null) return { what: 'source', id: source.name.value, source, span };
  }
  for (const acceptance of sheet.accept) {
    const span = acceptance.at === null ? null : at(acceptance.at.span);
    if (span === null) continue;
    const name = acceptance.at?.value ?? '';
    const setting = sheet.settings.get(name);
    if (setting) return { what: 'setting', setting, span };
    const source = sheet.sources.get(name);
    if (source) return { what: 'source', id: name, source, span };
  }
  const based = sheet.front?.entries.get('based-on')?.value;
  if (based?.kind === 'scalar' && holds(based.span, offset)) {
    return { what: 'sheet', id: based.text, span: based.span };
  }
  for (const other of sheet.unit.interchanges) {
    const span = at(other.span);
    if (span !== null) return { what: 'sheet', id: other.value, span };
  }
  if (sheet.id !== null) {
    const span = at(sheet.id.span);
    if (span !== null) return { what: 'sheet', id: sheet.id.value, span };
  }
  return null;
}

/** Where the name at an offset is defined; null where nothing is, or where nobody says. */
export function definition(document: DeskDocument, offset: number): DeskPlace | null {
  const meant = meantAt(document, offset);
  if (meant?.what === 'setting') return placeOf(document, meant.setting.name.span);
  if (meant?.what === 'source') {
    const { source } = meant;
    return source === null || source.shared ? null : placeOf(document, source.name.span);
  }
  if (meant?.what === 'sheet') {
    const found = document.project.context.family?.find(meant.id);
    return found ? { file: found.file, span: { start: 0, end: 0 } } : null;
  }
  return null;
}

/** Every place of the project that names what the word at an offset names, its definition first. */
export function references(document: DeskDocument, offset: number): readonly DeskPlace[] {
  const meant = meantAt(document, offset);
  if (meant === null) return [];
  const own = placesIn(document, meant);
  if (meant.what === 'setting') return own;
  const others = [...(document.project.others?.() ?? [])];
  return distinct([...own, ...others.flatMap((other) => placesIn(other, meant))]);
}

/** The places of one sheet that name it. */
export function placesIn(document: DeskDocument, meant: Meant): readonly DeskPlace[] {
  const { sheet } = document;
  const spans: Span[] = [];
  if (meant.what === 'setting') {
    const { id } = meant.setting;
    for (const setting of sheet.settings.values())
      if (setting.id === id) spans.push(setting.name.span);
    for (const use of sheet.values) if (use.id === id) spans.push(innerOf(document, use.span));
    for (const { at } of sheet.accept)
      if (at?.value === id || at?.value === meant.setting.name.value) spans.push(at.span);
  } else if (meant.what === 'source') {
    for (const { name, shared } of sheet.sources.values()) {
      if (name.value === meant.id && !shared) spans.push(name.span);
    }
    for (const { id, source } of citationsOf(sheet)) if (id === meant.id) spans.push(source.span);
    for (const { at } of sheet.accept) if (at?.value === meant.id) spans.push(at.span);
  } else {
    if (sheet.id?.value === meant.id) spans.push(sheet.id.span);
    const based = sheet.front?.entries.get('based-on')?.value;
    if (based?.kind === 'scalar' && based.text === meant.id) {
      return distinct([
        { file: document.file, span: based.span },
        ...spans.map((span) => placeOf(document, span)),
      ]);
    }
    for (const other of sheet.unit.interchanges)
      if (other.value === meant.id) spans.push(other.span);
  }
  return distinct(spans.map((span) => placeOf(document, span)));
}

/** The name within a `:value[...]`. */
function innerOf({ sheet }: DeskDocument, span: Span): Span {
  const text = sheet.text.slice(span.start, span.end);
  const open = text.indexOf('[');
  const close = text.lastIndexOf(']');
  return open === -1 || close <= open
    ? span
    : { start: span.start + open + 1, end: span.start + close };
}

function distinct(places: readonly DeskPlace[]): readonly DeskPlace[] {
  const seen = new Set<string>();
  return places.filter(({ file, span }) => {
    const key = `${file} ${span.start} ${span.end}`;
    return !seen.has(key) && seen.add(key) !== null;
  });
}
