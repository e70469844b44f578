import type { KindReference } from '../../kinds/reference/model.ts';
import { type Offered, offer, offerKeys, type Schema } from './offer.ts';

/** The schemas that come with the program, as they were read. */
export interface BaseSchemas {
  readonly edition: Schema;
  readonly kind: Schema;
  readonly mapping: Schema;
  readonly reading: Schema;
  readonly record: Schema;
  readonly sheet: Schema;
  readonly sources: Schema;
  readonly variant: Schema;
}

/** What a project's schemas are to know of it. */
export interface ProjectNames {
  readonly kinds: readonly KindReference[];
  readonly sheets: readonly Offered[];
  /** Settings that sheets state and no kind knows. */
  readonly ownSettings: readonly Offered[];
  readonly sources: readonly Offered[];
  readonly findings: readonly Offered[];
}

/**
 * The schemas with the names of a project in them, so that an editor that knows JSON Schema completes these as
 * well. They refuse what those of the program refuse, and nothing else.
 */
export function projectSchemas(base: BaseSchemas, names: ProjectNames): BaseSchemas {
  const schemas = structuredClone(base);
  const known = vocabulary(names);
  offer(at(schemas.edition, 'order', 'items'), names.sheets);
  offer(at(schemas.reading, 'sheet'), names.sheets);
  offer(at(schemas.reading, 'source'), names.sources);
  offer(at(schemas.record, 'sheet'), names.sheets);
  offerKeys(at(schemas.record, 'settings'), [...known.setting, ...names.ownSettings]);
  offer(at(schemas.mapping, 'kind'), known.kind);
  offer(at(schemas.mapping, 'features'), known.feature, 1);
  const column = at(schemas.mapping, 'columns', 'additionalProperties');
  offer(at(column, 'to'), [
    ...known.setting,
    ...known.setting.map(({ name, words }) => ({ name: `${name} also`, words })),
    ...known.size.map(({ name, words }) => ({ name: `unit ${name}`, words })),
    ...known.feature.map(({ name, words }) => ({ name: `has ${name}`, words })),
  ]);
  offerKeys(at(schemas.sources, 'sources'), names.sources);
  offerReferences(schemas.kind, schemas.kind, known);
  for (const schema of [schemas.sheet, schemas.variant]) offerSheet(schema, known, names);
  return schemas;
}

type Vocabulary = Readonly<
  Record<
    'kind' | 'setting' | 'operation' | 'feature' | 'hazard' | 'part' | 'size',
    readonly Offered[]
  >
>;

/** The names of all kinds by what they are of, each once. */
function vocabulary({ kinds }: ProjectNames): Vocabulary {
  const all = (entries: (kind: KindReference) => readonly Offered[]) => {
    const byName = new Map<string, Offered>();
    for (const each of kinds.flatMap(entries))
      if (!byName.has(each.name)) byName.set(each.name, each);
    return [...byName.values()];
  };
  const words = (label: string, explain: string) => ({ words: `${label}. ${explain}`.trim() });
  return {
    kind: kinds.map(({ kind, title }) => ({ name: kind, words: title })),
    setting: all(({ settings }) =>
      settings.map(({ name, label, explain }) => ({ name, ...words(label, explain) })),
    ),
    operation: all(({ operations }) =>
      operations.map(({ name, label, explain }) => ({ name, ...words(label, explain) })),
    ),
    feature: all(({ features }) =>
      features.map(({ name, label, explain }) => ({ name, ...words(label, explain) })),
    ),
    hazard: all(({ hazards }) =>
      hazards.map(({ name, label, message }) => ({ name, ...words(label, message.hazard) })),
    ),
    part: all(({ parts }) => parts.map(({ name, label }) => ({ name, words: label }))),
    size: all(({ unit }) =>
      unit.map(({ name, dimensions }) => ({ name, words: dimensions.join(', ') })),
    ),
  };
}

/** What stands below a schema: a property by its name, or `items` and `additionalProperties`. */
function at(schema: Schema, ...steps: readonly string[]): Schema {
  let here = schema;
  for (const step of steps) {
    const properties = here.properties as Record<string, Schema> | undefined;
    const next = properties?.[step] ?? (here[step] as Schema | undefined);
    if (typeof next !== 'object') throw new Error(`the schema has no ${steps.join(' › ')}`);
    here = next;
  }
  return here;
}

function offerSheet(schema: Schema, known: Vocabulary, names: ProjectNames): void {
  const defs = schema.$defs as Record<string, Schema>;
  const unit = at({ properties: defs }, 'unit');
  offer(at(unit, 'kind'), known.kind);
  offer(at(unit, 'features'), known.feature, 1);
  offerKeys(unit, known.size);
  offerKeys(at(schema, 'settings'), known.setting);
  offerKeys(at(schema, 'work'), known.operation);
  offerKeys(at(schema, 'sources'), names.sources);
  offer(at(schema, 'based-on'), names.sheets);
  offer(at({ properties: defs }, 'acceptance', 'finding'), names.findings);
}

/** At every place of a schema that says what its names refer to, the names of that. */
function offerReferences(schema: unknown, whole: Schema, known: Vocabulary): void {
  if (typeof schema !== 'object' || schema === null) return;
  if (Array.isArray(schema)) {
    for (const each of schema) offerReferences(each, whole, known);
    return;
  }
  const here = schema as Schema;
  for (const [key, value] of Object.entries(here)) {
    if (key !== 'examples' && key !== 'enum') offerReferences(value, whole, known);
  }
  const offered = known[here.refersTo as keyof Vocabulary] as readonly Offered[] | undefined;
  if (offered === undefined) return;
  const ref = /^#\/\$defs\/(.+)$/.exec(String(here.$ref ?? ''))?.[1];
  const target = ref === undefined ? here : ((whole.$defs as Record<string, Schema>)[ref] ?? here);
  const types = [target.type ?? 'string'].flat();
  if (types.includes('object')) offerKeys(here, offered);
  if (types.includes('string')) offer(here, offered);
  if (types.includes('array')) {
    const items = target.items as Schema | undefined;
    offer(here, offered, items?.type === 'array' ? 2 : 1);
  }
}
