import { scanStatements } from '../../quantity/index.ts';
import type { GaugeBook } from '../../quantity/model.ts';
import { regionIn, settingLabel } from '../../sheet/index.ts';
import type { PlacedSize, Setting, Sheet } from '../../sheet/model.ts';
import type { Span } from '../../text/index.ts';
import type { Found, Query } from './model.ts';
import { meets } from './sizes.ts';
import { around, holdsAll } from './words.ts';

/** What of a sheet is found, without what all of a sheet's finds have in common. */
type Hit = Pick<Found, 'sort' | 'setting' | 'label' | 'written' | 'off'> & { readonly span: Span };

/** All that sheets say of what is looked for, sheet by sheet, in the order of each sheet's text. */
export function findIn(sheets: Iterable<Sheet>, query: Query, gauges: GaugeBook): readonly Found[] {
  return [...sheets].flatMap((sheet) => {
    const hits = [
      ...(query.sizes.length > 0 ? sizeHits(sheet, query, gauges) : []),
      ...(query.words.length > 0 ? wordHits(sheet, query) : []),
    ];
    hits.sort((a, b) => a.span.start - b.span.start);
    const seen = new Set<number>();
    return hits.flatMap(({ span, ...hit }) => {
      // A bare number may be found as a figure and again as a word; once is enough.
      if (seen.has(span.start)) return [];
      seen.add(span.start);
      const { file, line, column } = regionIn(sheet, span);
      const place = { file, line, column };
      const title = sheet.title?.value ?? '';
      return [{ sheet: sheet.id?.value ?? sheet.file, title, ...place, ...hit }];
    });
  });
}

function* sizeHits(sheet: Sheet, { sizes }: Query, gauges: GaugeBook): Generator<Hit> {
  const hit = (size: PlacedSize, label: string, setting: string | null): readonly Hit[] => {
    const met = size.reading.ok ? meets(size.reading.statement, sizes) : null;
    if (met === null) return [];
    return [{ span: size.span, sort: 'size', setting, label, written: size.text, off: met.off }];
  };
  for (const [key, size] of sheet.unit.sizes) yield* hit(size, key, null);
  for (const setting of sheet.settings.values()) {
    const label = settingLabel(setting);
    for (const [key, size] of sizesOf(setting))
      yield* hit(size, key === '' ? label : `${label}, ${key}`, setting.id);
  }
  for (const { text, span, operation } of sheet.prose) {
    for (const found of scanStatements(text, { gauges })) {
      const met = meets(found.statement, sizes);
      if (met === null) continue;
      yield {
        span: { start: span.start + found.start, end: span.start + found.end },
        sort: 'size',
        setting: null,
        label: headingOf(sheet, operation),
        written: around(text, found.start, found.end),
        off: met.off,
      };
    }
  }
}

/** Every size of a setting with the key that holds it; empty for the value itself. */
function* sizesOf(setting: Setting): Generator<readonly [string, PlacedSize]> {
  const { value, also, gauge, go, noGo, travel, places, but } = setting;
  if (value) yield ['', value];
  for (const size of also) yield ['also', size];
  if (gauge) yield ['gauge', gauge];
  if (go) yield ['go', go];
  if (noGo) yield ['no-go', noGo];
  if (travel) yield ['travel', travel];
  for (const [place, size] of places) yield [place, size];
  for (const { value: other, from } of but)
    if (other) yield [from === null ? 'but' : `but ${from.id}`, other];
}

function* wordHits(sheet: Sheet, { text, words }: Query): Generator<Hit> {
  const { unit, kind } = sheet;
  const said = (sort: Hit['sort'], label: string, written: string, span: Span): readonly Hit[] =>
    holdsAll(`${label} ${written}`, words)
      ? [{ span, sort, setting: null, label, written, off: null }]
      : [];
  if (sheet.title) yield* said('unit', 'Title', sheet.title.value, sheet.title.span);
  const made = [unit.maker, unit.model].filter((part) => part !== null);
  if (made[0]) yield* said('unit', 'Unit', made.map(({ value }) => value).join(' '), made[0].span);
  for (const { value, span } of unit.partNumbers) yield* said('unit', 'Part number', value, span);
  for (const { value, span, known } of unit.features)
    yield* said('unit', 'Feature', known === null ? value : `${value} (${known.label})`, span);
  for (const { marque, model, years, span } of sheet.fits)
    yield* said('unit', 'Fits', [marque, model, years].filter(Boolean).join(' '), span);
  for (const [id, source] of sheet.sources) {
    const described = [...source.described.values()].map(({ value }) => value).join(', ');
    yield* said('source', `Source ${id}`, described, source.span);
  }
  const meant = kind?.settingNamed(text)?.name ?? null;
  for (const setting of sheet.settings.values()) yield* settingHits(setting, words, meant);
  yield* textHits(sheet, words);
}

/** A setting by its names, and what is said beside its figure. */
function* settingHits(
  setting: Setting,
  words: readonly string[],
  meant: string | null,
): Generator<Hit> {
  const label = settingLabel(setting);
  const figure =
    setting.value?.text ?? [...setting.places.values()].map(({ text }) => text).join(', ');
  const hit = (span: Span, what: string, written: string): Hit => ({
    span,
    sort: 'setting',
    setting: setting.id,
    label: what === '' ? label : `${label}, ${what}`,
    written,
    off: null,
  });
  const names = [setting.id, label, ...(setting.known?.aliases ?? [])].join(', ');
  if (setting.id === meant || holdsAll(names, words)) {
    yield hit(setting.name.span, '', figure);
    return;
  }
  if (setting.value && holdsAll(`${label} ${figure}`, words))
    yield hit(setting.value.span, '', figure);
  for (const { span, id, page } of setting.from) {
    const written = page === null ? id : `${id} ${page}`;
    if (holdsAll(`${label} ${written}`, words)) yield hit(span, 'from', `${figure}, ${written}`);
  }
  for (const { span, value, from, ruling } of setting.but) {
    const written = [value?.text, from && `${from.id} ${from.page ?? ''}`.trim(), ruling?.value]
      .filter(Boolean)
      .join(', ');
    if (holdsAll(`${label} ${written}`, words)) yield hit(span, 'but', written);
  }
  for (const [key, { value, span }] of setting.said)
    if (!listed.has(key) && holdsAll(`${label} ${key} ${value}`, words))
      yield hit(span, key, value);
}

/** Keys that are looked at by themselves. */
const listed: ReadonlySet<string> = new Set(['value', 'also', 'from', 'but', 'gauge', 'places']);

/** Paragraphs, steps and headings that hold the words, each once. */
function* textHits(sheet: Sheet, words: readonly string[]): Generator<Hit> {
  const blocks = new Map<number, { readonly span: Span; readonly operation: number | null }>();
  for (const { block, operation } of sheet.prose)
    blocks.set(block.start, { span: block, operation });
  for (const { span, operation } of blocks.values()) {
    const text = sheet.text.slice(span.start, span.end);
    // A heading is told as the label of what stands under it, and a setting that is named by a mark above.
    if (text.startsWith('#') || !holdsAll(text.replace(/:value\[[^\]]*\]/g, ''), words)) continue;
    const at = text.toLowerCase().indexOf(words[0] ?? '');
    yield {
      span: { start: span.start + Math.max(0, at), end: span.end },
      sort: 'text',
      setting: null,
      label: headingOf(sheet, operation),
      written: around(text, Math.max(0, at), Math.max(0, at) + (words[0]?.length ?? 0)),
      off: null,
    };
  }
}

function headingOf(sheet: Sheet, operation: number | null): string {
  const heading = operation === null ? null : sheet.operations[operation]?.heading.value;
  return heading ?? 'Text';
}
