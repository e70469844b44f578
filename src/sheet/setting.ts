import type { Kind, KindScale, KindSetting } from '../kinds/model.ts';
import { type JetNumbering, jetNumbering } from '../quantity/index.ts';
import type { Dimension } from '../quantity/model.ts';
import type { Placed, PlacedEntry, PlacedNode } from '../text/index.ts';
import { entriesOf, type Fields, itemsOf, under } from './fields.ts';
import type { Dissent, PlacedSize, Setting, SourceStatement } from './model.ts';
import { type MeantSetting, settingsMeant } from './names.ts';
import { ruleStatements } from './rule-statements.ts';

/** Keys of a setting that have a field of their own; every other scalar is `said`. */
export const settingKeys: ReadonlySet<string> = new Set([
  'value',
  'also',
  'table',
  'gauge',
  'travel',
  'places',
  'places-differ',
  'conditions',
  'at',
  'rounding',
  'from',
  'but',
  'statements',
  'follows',
  'ruling',
  'note',
]);

const lengthOnly: readonly Dimension[] = ['length'];

/** All settings, by their names as written. */
export function readSettings(
  node: PlacedNode | undefined,
  fields: Fields,
  kind: Kind | null,
  numbering: JetNumbering | null,
  features: ReadonlySet<string>,
): ReadonlyMap<string, Setting> {
  const settings = new Map<string, Setting>();
  const entries = entriesOf(node);
  const meant = settingsMeant(entries.keys(), kind);
  for (const [name, entry] of entries) {
    const { id, known } = meant.get(name) ?? { id: name, known: null };
    settings.set(name, readSetting(name, entry, fields, { id, known }, numbering, features));
  }
  return settings;
}

function readSetting(
  name: string,
  { key, value: node }: PlacedEntry,
  fields: Fields,
  { id, known }: MeantSetting,
  numbering: JetNumbering | null,
  features: ReadonlySet<string>,
): Setting {
  const own = fields.text(under(node, 'jets'));
  const jets = known?.jet === true ? (own ? jetNumbering(own.value) : numbering) : undefined;
  const how: How = { expect: known?.dimensions, jets };
  const gauge = under(node, 'gauge');
  const said = new Map<string, Placed<string>>();
  for (const [word, entry] of entriesOf(node)) {
    if (settingKeys.has(word)) continue;
    const text = fields.text(entry.value);
    if (text) said.set(word, text);
  }
  const statements = itemsOf(under(node, 'statements')).map((item) =>
    readStatementOf(item, fields, how),
  );
  const stated = {
    // `float-level: 13/64 in` is against the schema, and yet plain what it means.
    value: fields.size(under(node, 'value') ?? node, how.expect, jets),
    also: fields.sizes(under(node, 'also'), how.expect, jets),
    from: fields.citations(under(node, 'from')),
    but: itemsOf(under(node, 'but')).map((item) => readDissent(item, fields, how)),
    statements,
    follows: fields.citations(under(node, 'follows'))[0] ?? null,
    ruling: fields.text(under(node, 'ruling')),
  };
  const setting: Setting = {
    name: { value: name, span: key.span, source: name },
    id,
    known,
    jets,
    ...stated,
    ...ruleStatements(stated),
    gauge: fields.gauge(gauge),
    go: fields.gauge(under(gauge, 'go')),
    noGo: fields.gauge(under(gauge, 'no-go')),
    travel: fields.size(under(node, 'travel'), lengthOnly),
    places: readPlaces(under(node, 'places'), fields, how),
    ownConditions: fields.texts(under(node, 'conditions')),
    placesDiffer: fields.text(under(node, 'places-differ')),
    at: fields.text(under(node, 'at')),
    rounding: fields.text(under(node, 'rounding')),
    house: null,
    note: fields.text(under(node, 'note')),
    said,
    scale: scaleOf(known, features),
    rows: [],
    station: null,
    span: { start: key.span.start, end: Math.max(key.span.end, node.span.end) },
  };
  const rows = itemsOf(under(node, 'table'));
  if (rows.length === 0) return setting;
  return { ...setting, rows: rows.map((row) => readRow(row, setting, fields, how)) };
}

/**
 * A row of a table, as a setting: what is said of the whole is said of each row, and what it does not cite
 * itself it has from the source of the whole.
 */
function readRow(node: PlacedNode, whole: Setting, fields: Fields, how: How): Setting {
  const from = fields.citations(under(node, 'from'));
  return {
    ...whole,
    value: fields.size(under(node, 'value'), how.expect, how.jets),
    also: fields.sizes(under(node, 'also'), how.expect, how.jets),
    from: from.length > 0 ? from : whole.from,
    but: itemsOf(under(node, 'but')).map((item) => readDissent(item, fields, how)),
    ruling: fields.text(under(node, 'ruling')),
    note: fields.text(under(node, 'note')),
    station: fields.size(under(node, 'at'), whole.known?.curve?.against),
    gauge: null,
    go: null,
    noGo: null,
    travel: null,
    places: new Map(),
    span: node.span,
  };
}

function scaleOf(known: KindSetting | null, features: ReadonlySet<string>): KindScale | null {
  const scale = known?.curve?.scale ?? known?.sum?.scale ?? null;
  return scale?.unlessFeature.some((name) => features.has(name)) === true ? null : scale;
}

/** What its sizes are read by. */
interface How {
  readonly expect: readonly Dimension[] | undefined;
  readonly jets: JetNumbering | null | undefined;
}

function readPlaces(
  node: PlacedNode | undefined,
  fields: Fields,
  { expect, jets }: How,
): ReadonlyMap<string, PlacedSize> {
  const places = new Map<string, PlacedSize>();
  for (const [place, { value }] of entriesOf(node)) {
    const size = fields.size(under(value, 'value') ?? value, expect, jets);
    if (size) places.set(place, size);
  }
  return places;
}

function readDissent(node: PlacedNode, fields: Fields, { expect, jets }: How): Dissent {
  return {
    value: fields.size(under(node, 'value') ?? node, expect, jets),
    from: fields.citations(under(node, 'from'))[0] ?? null,
    ruling: fields.text(under(node, 'ruling')),
    span: node.span,
  };
}

function readStatementOf(node: PlacedNode, fields: Fields, how: How): SourceStatement {
  return { ...readDissent(node, fields, how), note: fields.text(under(node, 'note')) };
}
