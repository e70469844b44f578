/** Makes the type of what a schema passes, so that no type says again by hand what a schema says. */
import { compile } from 'json-schema-to-typescript';

/**
 * The text of src/generated/NAME-data.ts: `TYPE`, the plain data that the schema lets pass, read-only to its
 * leaves; every key with the schema's words for it.
 */
export async function schemaTypes(schema, name, type) {
  const text = await compile(untitled(schema), `${type}File`, {
    additionalProperties: false,
    bannerComment: '',
    format: false,
    ignoreMinAndMaxItems: true,
  });
  return [
    `// Made by src/build/schema-types.mjs from schemas/${name}.schema.json: change the schema.`,
    "import type { ReadOnly } from '../text/read-only.ts';",
    `/** What ${name}.schema.json lets pass. */`,
    `export type ${type} = ReadOnly<${type}File>;`,
    text.replace(/^export /gm, ''),
  ].join('\n');
}

/** Without titles and addresses, which are for people and would each become the name of a type. */
function untitled(schema) {
  if (Array.isArray(schema)) return schema.map(untitled);
  if (typeof schema !== 'object' || schema === null) return schema;
  const entries = Object.entries(schema).filter(
    ([key, value]) => !(['title', '$id'].includes(key) && typeof value === 'string'),
  );
  return Object.fromEntries(entries.map(([key, value]) => [key, untitled(value)]));
}
