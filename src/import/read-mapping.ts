import type { MappingData } from '../generated/mapping-data.ts';
import validate from '../generated/validate-mapping.js';
import { kindNamed } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import { lookup, nearestName, readYaml, type Span, schemaWords } from '../text/index.ts';
import { columnNumber } from './cell-address.ts';
import { type ColumnMapping, isShared, type Mapping } from './mapping.ts';
import { targetNamed } from './target-named.ts';
import { type SizeTools, unitWorks } from './written-size.ts';

/** What is wrong with a mapping file, at its place. */
export interface MappingFault {
  readonly span: Span;
  readonly message: string;
  readonly fix: string | null;
}

/** A mapping, or null with what is wrong. */
export interface MappingRead {
  readonly mapping: Mapping | null;
  readonly faults: readonly MappingFault[];
}

/** Reads the text of a mapping file. Every mistake comes back with its place; never throws. */
export function readMapping(
  text: string,
  kinds: ReadonlyMap<string, Kind>,
  tools: SizeTools,
): MappingRead {
  const base = text.startsWith('\ufeff') ? 1 : 0;
  const yaml = readYaml(text.slice(base), base);
  const faults: MappingFault[] = yaml.problems.map(({ span, message, fix }) => ({
    span,
    message,
    fix,
  }));
  const start = { start: base, end: base };
  const place = (path: readonly (string | number)[], part: 'key' | 'value' = 'value') =>
    lookup(yaml.root, path, part) ?? yaml.root?.span ?? start;
  if (yaml.sound && !validate(yaml.value)) {
    for (const { path, onKey, message, fix } of schemaWords(validate.errors, yaml.value)) {
      faults.push({ span: place(path, onKey ? 'key' : 'value'), message, fix });
    }
  }
  if (faults.length > 0) return { mapping: null, faults };
  const data = yaml.value as MappingData;
  const kind = kindNamed(data.kind, kinds);
  if (kind === null) {
    const near = nearestName(data.kind, kinds.keys());
    const message = `there is no kind of unit called \`${data.kind}\``;
    const fix = near === null ? `the kinds are: ${[...kinds.keys()].join(', ')}` : `write ${near}`;
    return { mapping: null, faults: [{ span: place(['kind']), message, fix }] };
  }
  const features: string[] = [];
  for (const [index, written] of (data.features ?? []).entries()) {
    const feature = kind.featureNamed(written);
    if (feature !== null) features.push(feature.name);
    else {
      const near = nearestName(written, kind.features.keys());
      const message = `a ${kind.name} has no feature called \`${written}\``;
      faults.push({ span: place(['features', index]), message, fix: near && `write ${near}` });
    }
  }
  const says = new Map<string, ReadonlyMap<string, string>>();
  for (const [name, keys] of Object.entries(data.says ?? {})) {
    const setting = kind.settingNamed(name);
    if (setting === null) {
      const near = nearestName(name, kind.settings.keys());
      const message = `a ${kind.name} has no setting called \`${name}\``;
      faults.push({ span: place(['says', name], 'key'), message, fix: near && `write ${near}` });
    } else {
      says.set(
        setting.name,
        new Map(Object.entries(keys).map(([key, said]) => [key, String(said)])),
      );
    }
  }
  const columns = readColumns(data, kind, tools, place, faults);
  if (faults.length > 0) return { mapping: null, faults };
  const { source } = data;
  return {
    mapping: {
      table: data.table ?? null,
      heads: data.heads,
      first: data.first ?? null,
      last: data.last ?? null,
      layout: data.layout,
      kind: kind.name,
      maker: data.maker ?? null,
      features,
      source: {
        title: source?.title ?? null,
        kind: source?.kind ?? null,
        year: source?.year === undefined ? null : String(source.year),
      },
      merged: data.merged ?? 'list',
      hidden: data.hidden ?? 'skip',
      says,
      columns,
    },
    faults: [],
  };
}

function readColumns(
  data: MappingData,
  kind: Kind,
  tools: SizeTools,
  place: (path: readonly string[], part?: 'key' | 'value') => Span,
  faults: MappingFault[],
): readonly ColumnMapping[] {
  const columns: ColumnMapping[] = [];
  const taken = new Map<string, string>();
  for (const [letters, { head, to, unit }] of Object.entries(data.columns)) {
    const column = columnNumber(letters) ?? 0;
    const read = targetNamed(to, kind, data.layout);
    if (!read.ok) {
      const fix = read.near === null ? null : `did you mean \`${read.near}\`?`;
      faults.push({ span: place(['columns', letters, 'to']), message: read.message, fix });
      continue;
    }
    const other = taken.get(to.trim());
    if (other !== undefined && !isShared(read.target)) {
      faults.push({
        span: place(['columns', letters, 'to']),
        message: `columns ${other} and ${letters} are both \`${to}\``,
        fix: 'give one of them `to: nothing`, or `also` behind the setting',
      });
    }
    taken.set(to.trim(), letters);
    const setting = 'setting' in read.target ? kind.settings.get(read.target.setting) : undefined;
    if (unit !== undefined && setting && !unitWorks(unit, setting.dimensions, tools)) {
      faults.push({
        span: place(['columns', letters, 'unit']),
        message: `\`${unit}\` is no unit in which ${setting.name} is stated`,
        fix: 'write it as a sheet does, such as `in`, `mm`, `turns out`, or `No. {} drill`',
      });
    }
    columns.push({ column, head: String(head), to: read.target, unit: unit ?? null });
  }
  return columns.sort((a, b) => a.column - b.column);
}
