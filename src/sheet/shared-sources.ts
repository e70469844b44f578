import type { Placed, YamlRead } from '../text/index.ts';
import { entriesOf, under } from './fields.ts';
import type { Citation, Setting, Source } from './model.ts';

/** What a project's `sources.yaml` says: by a source's short name, key to text as written. */
export type SharedSources = ReadonlyMap<string, Readonly<Record<string, string>>>;

/**
 * The sources of a sheet with those that it cites and leaves to `sources.yaml`, in the order it cites
 * them. What the sheet describes itself goes before what is shared.
 */
export function withShared(
  own: ReadonlyMap<string, Source>,
  settings: Iterable<Setting>,
  shared: SharedSources | null,
): ReadonlyMap<string, Source> {
  if (shared === null || shared.size === 0) return own;
  const all = new Map(own);
  for (const { from, but } of settings) {
    for (const citation of [...from, ...but.flatMap((dissent) => dissent.from ?? [])]) {
      const name = citation.id;
      const described = all.has(name) ? undefined : shared.get(name);
      if (described) all.set(name, sharedSource(citation, described));
    }
  }
  return all;
}

/** A shared source as if it were described where it is first cited. */
function sharedSource(
  { source, id }: Citation,
  described: Readonly<Record<string, string>>,
): Source {
  const { span } = source;
  const placed = <T>(value: T, written: string): Placed<T> => ({ value, span, source: written });
  const texts = new Map(Object.entries(described).map(([key, text]) => [key, placed(text, text)]));
  const year = /(?<!\d)\d{4}(?!\d)/.exec(described.year ?? '')?.[0];
  const units = /^\d+$/.test(described.units ?? '') ? Number(described.units) : null;
  return {
    name: { ...source, value: id },
    title: texts.get('title') ?? null,
    kind: texts.get('kind') ?? null,
    year: year === undefined ? null : placed(Number(year), described.year ?? ''),
    units: units === null ? null : placed(units, described.units ?? ''),
    readings: [],
    records: [],
    described: texts,
    shared: true,
    span,
  };
}

/** The sources that the text of a `sources.yaml` describes, as far as it can be read. */
export function sourcesIn({ root }: YamlRead): SharedSources {
  const sources = new Map<string, Record<string, string>>();
  for (const [name, { value }] of entriesOf(under(root, 'sources'))) {
    const described: Record<string, string> = {};
    for (const [key, entry] of entriesOf(value)) {
      if (entry.value.kind === 'scalar') described[key] = entry.value.text;
    }
    sources.set(name, described);
  }
  return sources;
}
