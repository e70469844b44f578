/**
 * Finds where a kind's data names another of its entries: places of kind.schema.json that have `refersTo`. There
 * a text is such a name, of a list each entry, of a mapping each key.
 */

/** The text of src/generated/kind-references.ts. */
export function referencesModule(schema) {
  const found = [...referencesIn(schema, schema, [])];
  return [
    '// Made by src/build/kind-references.mjs from schemas/kind.schema.json: change the schema.',
    "import type { Reference } from '../kinds/references.ts';",
    '/** Where a kind names its own entries, in the order of the schema; `*` stands for any key or entry. */',
    `export const references: readonly Reference[] = ${JSON.stringify(found, null, 2)};`,
    '',
  ].join('\n');
}

function* referencesIn(schema, root, path) {
  if (schema.refersTo) yield { path, to: schema.refersTo };
  if (schema.$ref) yield* referencesIn(root.$defs[schema.$ref.split('/').at(-1)], root, path);
  for (const [key, below] of Object.entries(schema.properties ?? {}))
    yield* referencesIn(below, root, [...path, key]);
  for (const below of [schema.additionalProperties, schema.items])
    if (typeof below === 'object') yield* referencesIn(below, root, [...path, '*']);
  for (const below of [...(schema.anyOf ?? []), ...(schema.oneOf ?? [])])
    yield* referencesIn(below, root, path);
}
