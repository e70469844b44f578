/** A JSON Schema, or part of one. */
export type Schema = { [keyword: string]: unknown };

/** A name that an editor is to offer, and what it says beside it. */
export interface Offered {
  readonly name: string;
  readonly words: string;
}

/**
 * Puts names into a schema so that editors offer them where it stands, refusing nothing that it let pass: a
 * name in other letters, by an alias or new is for the program to judge. `lists` says how deep in lists the
 * names stand.
 */
export function offer(schema: Schema, offered: readonly Offered[], lists = 0): void {
  if (offered.length === 0) return;
  let named: Schema = { enum: offered.map(({ name }) => name) };
  for (let list = 0; list < lists; list++)
    named = { type: 'array', items: { anyOf: [named, true] } };
  const before = Array.isArray(schema.allOf) ? schema.allOf : [];
  schema.allOf = [...before, { anyOf: [named, true] }];
}

/** Puts names as keys into a schema of an object, each with what any other key of it may hold. */
export function offerKeys(schema: Schema, offered: readonly Offered[]): void {
  const other = schema.additionalProperties;
  const held = typeof other === 'object' && other !== null ? other : {};
  const properties: Schema = { ...(schema.properties as Schema | undefined) };
  for (const { name, words } of offered) {
    if (!Object.hasOwn(properties, name)) properties[name] = { ...held, description: words };
  }
  schema.properties = properties;
}
