import type { Kind } from '../kinds/model.ts';
import { jetNumbering } from '../quantity/index.ts';
import type { Placed, PlacedNode } from '../text/index.ts';
import { entriesOf, type Fields, itemsOf, under } from './fields.ts';
import { citing, figuresIn } from './figures.ts';
import { withHouse } from './held-limits.ts';
import { type ReadingsBy, type RecordBook, readMeasured } from './measured-readings.ts';
import type { Acceptance, Fit, HouseTolerance, PlacedSize, Sheet, Source, Unit } from './model.ts';
import { nameAmong } from './names.ts';
import { readSettings } from './setting.ts';
import { type SharedSources, withShared } from './shared-sources.ts';
import { readWorkRules } from './work-rules.ts';

/** The part of a sheet that its front matter fills. */
export type Header = Pick<
  Sheet,
  | 'format'
  | 'id'
  | 'title'
  | 'unit'
  | 'kind'
  | 'fits'
  | 'revision'
  | 'date'
  | 'status'
  | 'compiledBy'
  | 'rounding'
  | 'wireGauge'
  | 'sources'
  | 'settings'
  | 'figures'
  | 'accept'
  | 'work'
>;

/**
 * Reads the front matter as far as its shape allows; `root` null gives a header of nothing. `shared`
 * are the sources that the project describes for all its sheets, `records` the bench records beside it,
 * `house` the edition's tolerances by the ids of settings.
 */
export function readHeader(
  root: PlacedNode | null,
  fields: Fields,
  kind: Kind | null,
  shared: SharedSources | null = null,
  records: RecordBook | null = null,
  house: ReadonlyMap<string, HouseTolerance> = new Map(),
): Header {
  const at = (key: string): PlacedNode | undefined => under(root, key);
  const unit = readUnit(at('unit'), fields, kind);
  const jets = jetNumbering(unit.jets?.value);
  const features = new Set(unit.features.map(({ id }) => id));
  const read = readSettings(at('settings'), fields, kind, jets, features);
  const settings = withHouse(read, house);
  const sources = readSources(at('sources'), fields, { kind, jets, records });
  return {
    format: fields.number(at('gaugeleaf')),
    id: fields.text(at('sheet')),
    title: fields.text(at('title')),
    unit,
    kind,
    fits: itemsOf(at('fits')).map((item) => readFit(item, fields)),
    revision: fields.number(at('revision')),
    date: fields.text(at('date')),
    status: fields.text(at('status')),
    compiledBy: fields.text(at('compiled-by')),
    rounding: fields.text(at('rounding')),
    wireGauge: fields.text(at('wire-gauge')),
    sources: withShared(sources, citing({ settings }), shared),
    settings,
    figures: figuresIn(settings),
    accept: itemsOf(at('accept')).flatMap((item) => readAcceptance(item, fields) ?? []),
    work: readWorkRules(at('work'), fields),
  };
}

const unitKeys: ReadonlySet<string> = new Set([
  'kind',
  'maker',
  'model',
  'part-numbers',
  'features',
  'interchanges',
  'own-sizes',
  'jets',
]);

function readUnit(node: PlacedNode | undefined, fields: Fields, kind: Kind | null): Unit {
  const sizes = new Map<string, PlacedSize>();
  const threads = new Map<string, Placed<string>>();
  const other = new Map<string, Placed<string>>();
  for (const [key, value] of unitEntries(node, kind)) {
    const text = unitKeys.has(key) ? null : fields.text(value);
    if (!text) continue;
    const expect = kind?.dimensionsOfUnit.get(key);
    if (key.endsWith('-thread')) threads.set(key, text);
    else if (expect) {
      const size = fields.size(value, expect);
      if (size) sizes.set(key, size);
    } else {
      // A key that the kind does not know is a size if its number reads as one.
      const size = /\d/.test(text.value) ? fields.size(value) : null;
      if (size?.reading.ok) sizes.set(key, size);
      else other.set(key, text);
    }
  }
  return {
    kind: fields.text(under(node, 'kind')),
    maker: fields.text(under(node, 'maker')),
    model: fields.text(under(node, 'model')),
    partNumbers: fields.texts(under(node, 'part-numbers')),
    features: fields.texts(under(node, 'features')).map((feature) => {
      const known = kind?.featureNamed(feature.value) ?? null;
      return { ...feature, known, id: known?.name ?? feature.value };
    }),
    interchanges: fields.texts(under(node, 'interchanges')),
    ownSizes: fields.texts(under(node, 'own-sizes')),
    jets: fields.text(under(node, 'jets')),
    sizes,
    threads,
    other,
  };
}

/** What stands under `unit:` by the kind's names, which are read in any case and spacing. */
function unitEntries(
  node: PlacedNode | undefined,
  kind: Kind | null,
): ReadonlyMap<string, PlacedNode> {
  const names = new Set([...(kind?.dimensionsOfUnit.keys() ?? []), ...(kind?.threadsOfUnit ?? [])]);
  const entries = entriesOf(node);
  const found = new Map<string, PlacedNode>();
  for (const [key, { value }] of entries) {
    const name = nameAmong(key, names) ?? key;
    // Of two spellings of one name the plain one counts, and the other is told as unknown.
    found.set(name !== key && (entries.has(name) || found.has(name)) ? key : name, value);
  }
  return found;
}

function readFit(node: PlacedNode, fields: Fields): Fit {
  const word = (key: string): string | null => fields.text(under(node, key))?.value ?? null;
  return { marque: word('marque'), model: word('model'), years: word('years'), span: node.span };
}

function readSources(
  node: PlacedNode | undefined,
  fields: Fields,
  by: ReadingsBy,
): ReadonlyMap<string, Source> {
  const sources = new Map<string, Source>();
  for (const [name, { key, value }] of entriesOf(node)) {
    sources.set(name, {
      name: { value: name, span: key.span, source: name },
      title: fields.text(under(value, 'title')),
      kind: fields.text(under(value, 'kind')),
      year: fields.year(under(value, 'year')),
      units: fields.number(under(value, 'units')),
      ...readMeasured(value, fields, by),
      described: describedIn(value, fields),
      shared: false,
      span: { start: key.span.start, end: Math.max(key.span.end, value.span.end) },
    });
  }
  return sources;
}

function describedIn(node: PlacedNode, fields: Fields): ReadonlyMap<string, Placed<string>> {
  const described = new Map<string, Placed<string>>();
  for (const [key, { value }] of entriesOf(node)) {
    const text = fields.text(value);
    if (text) described.set(key, text);
  }
  return described;
}

function readAcceptance(node: PlacedNode, fields: Fields): Acceptance | null {
  const finding = fields.text(under(node, 'finding'));
  if (!finding) return null;
  return {
    finding,
    at: fields.text(under(node, 'at')),
    reason: fields.text(under(node, 'reason')),
    span: node.span,
  };
}
