/** What the page of keys reads of a JSON Schema. */
export interface Schema {
  readonly title?: string;
  readonly description?: string;
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, Schema>>;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly additionalProperties?: boolean | Schema;
  readonly items?: Schema;
  readonly examples?: readonly unknown[];
  readonly enum?: readonly unknown[];
  readonly required?: readonly string[];
}

/** A file that a club writes: the words of the page's heading and the schema of the file. */
export type FileKeys = readonly [heading: string, schema: Schema];

/** The page of every key that a club may write, in Markdown, from the schemas that hold it to them. */
export function keysPage(files: readonly FileKeys[]): string {
  const lines = [
    '# Every key',
    '',
    'What may stand in the files that a club writes. This page is made from the schemas by which the program',
    'reads them; an editor with a YAML language server shows the same words beside the keys. A key in **bold**',
    'has to be there.',
    '',
    ...files.map(([heading]) => `- [${heading}](#${heading.toLowerCase().replaceAll(' ', '-')})`),
  ];
  for (const [heading, schema] of files) {
    lines.push('', `## ${heading}`, '', schema.description ?? '');
    lines.push(...tables(schema, schema, []));
  }
  return `${lines.join('\n')}\n`;
}

/** The table of an object's keys, then those of the objects that stand below it, outermost first. */
function tables(schema: Schema, root: Schema, path: readonly string[]): readonly string[] {
  const keys = Object.entries(schema.properties ?? {}).map(
    ([key, value]) => [key, meant(value, root)] as const,
  );
  const lines: string[] = [];
  if (keys.length > 0) {
    if (path.length > 0) lines.push('', `Below \`${path.join(': ')}\`:`);
    lines.push('', '| key | what it says | for example |', '| --- | --- | --- |');
    for (const [key, value] of keys) {
      const name = schema.required?.includes(key) === true ? `**\`${key}\`**` : `\`${key}\``;
      const words = cell(value.description ?? value.title ?? '');
      lines.push(`| ${name} | ${words} | ${shown(value)} |`);
    }
  }
  for (const [key, value] of keys) lines.push(...below(value, root, [...path, key]));
  const { additionalProperties: named } = schema;
  if (typeof named === 'object') lines.push(...below(meant(named, root), root, [...path, 'NAME']));
  return lines;
}

/** The tables below a key: its own keys, or those of each item of a list. */
function below(value: Schema, root: Schema, path: readonly string[]): readonly string[] {
  const lines = tables(value, root, path);
  return value.items === undefined
    ? lines
    : [...lines, ...below(meant(value.items, root), root, path)];
}

/** A schema with what it refers to inside its file put in; its own words go before. */
function meant(schema: Schema, root: Schema): Schema {
  const name = /^#\/\$defs\/(.+)$/.exec(schema.$ref ?? '')?.[1];
  if (name === undefined) return schema;
  const target = root.$defs?.[name];
  if (target === undefined) throw new Error(`no definition ${name}`);
  const { $ref: _, ...own } = schema;
  return { ...meant(target, root), ...own };
}

/** Choices, or else examples, as a club would write them. */
function shown({ enum: choices, examples = [] }: Schema): string {
  const separator = choices === undefined ? ', or ' : ', ';
  return (choices ?? examples.slice(0, 2))
    .map((each) => `\`${cell(written(each))}\``)
    .join(separator);
}

/** A value as YAML on one line. */
function written(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(written).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return String(value);
  const entries = Object.entries(value).map(([key, each]) => `${key}: ${written(each)}`);
  return `{ ${entries.join(', ')} }`;
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replace(/\s+/g, ' ').trim();
}
