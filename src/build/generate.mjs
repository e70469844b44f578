/**
 * Makes src/generated from schemas/, src/kinds/*.yaml and the tables of sizes and instruments, so that the program
 * starts without compiling a schema or parsing a data file. Run by `node src/build/generate.mjs`;
 * the same sources give the same bytes, and a file that would not change is left alone.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import Ajv from 'ajv/dist/2020.js';
import standaloneCode from 'ajv/dist/standalone/index.js';
import { build } from 'esbuild';
import { parseDocument } from 'yaml';
import { laidOver } from '../kinds/lay-over.mjs';
import { factorsModule } from './factors.mjs';
import { instrumentsModule } from './instruments.mjs';
import { referencesModule } from './kind-references.mjs';
import { schemaTypes } from './schema-types.mjs';
import { systemsModule } from './systems.mjs';
import { tablesModule } from './tables.mjs';
import { variantSchemaText } from './variant-schema.mjs';

const SCHEMAS = ['sheet', 'edition', 'kind', 'record', 'export', 'mapping', 'sources', 'reading'];

/** Schemas whose data the program holds as it was written, and the name of its type. */
const TYPED = [
  ['kind', 'KindData'],
  ['export', 'ExportData'],
  ['mapping', 'MappingData'],
];

/** How ajv is set up, here and in the tests of the schemas. */
export const ajvOptions = {
  // A schema with a misspelt keyword must not pass as one that asks for nothing.
  strict: true,
  strictRequired: false,
  allowUnionTypes: true,
  allErrors: true,
  // No text of the validator ever reaches a reader.
  messages: false,
  // What a name in a kind refers to is proved by one walk of its own: `src/kinds/references.ts`.
  keywords: ['refersTo'],
  // The words for a restorer need the schema that an error comes from: names to suggest, examples.
  verbose: true,
};

/** Writes all of src/generated for the project at `root`; fails with the file and the reason. */
export async function generate(root) {
  const out = join(root, 'src', 'generated');
  mkdirSync(out, { recursive: true });
  const validators = new Map();
  for (const name of SCHEMAS) {
    const schema = readSchema(root, name);
    const ajv = new Ajv.default({ ...ajvOptions, code: { source: true, esm: true, lines: true } });
    const validate = ajv.compile(schema);
    validators.set(name, validate);
    put(join(out, `validate-${name}.js`), await validatorModule(root, ajv, validate, name));
    put(join(out, `validate-${name}.d.ts`), validatorTypes(name));
  }
  for (const [name, type] of TYPED) {
    put(join(out, `${name}-data.ts`), await schemaTypes(readSchema(root, name), name, type));
  }
  put(join(root, 'schemas', 'variant.schema.json'), variantSchemaText(readSchema(root, 'sheet')));
  put(join(out, 'sheet-keys.ts'), keysModule(readSchema(root, 'sheet')));
  put(join(out, 'sheet-words.ts'), wordsModule(readSchema(root, 'sheet')));
  put(join(out, 'file-words.ts'), fileWordsModule(root));
  put(join(out, 'kinds.ts'), kindsModule(root, validators.get('kind')));
  put(join(out, 'kind-references.ts'), referencesModule(readSchema(root, 'kind')));
  put(join(out, 'lexicon.ts'), lexiconModule(root));
  put(join(out, 'measured-factors.ts'), factorsModule());
  put(join(out, 'instruments.ts'), instrumentsModule(root));
  put(join(out, 'tables.ts'), tablesModule(root));
  put(join(out, 'gauge-systems.ts'), systemsModule(root));
}

export function readSchema(root, name) {
  return JSON.parse(readFileSync(join(root, 'schemas', `${name}.schema.json`), 'utf8'));
}

/**
 * The compiled validator with ajv's own run-time parts put in: the module imports nothing. Where ajv
 * gathers errors by copying all the earlier ones, they are added to the list instead: a sheet with
 * ten thousand faults would take seconds otherwise.
 */
async function validatorModule(root, ajv, validate, name) {
  const joined = /vErrors === null \? ([\w.]+) : vErrors\.concat\(\1\)/g;
  const compiled = standaloneCode
    .default(ajv, validate)
    .replace(joined, 'vErrors === null ? $1 : ($1.forEach((e) => vErrors.push(e)), vErrors)');
  if (compiled.includes('.concat(')) throw new Error(`${name}: ajv gathers errors in a new way`);
  const bundle = await build({
    stdin: { contents: compiled, resolveDir: root, loader: 'js' },
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    minifySyntax: true,
    legalComments: 'none',
    logLevel: 'silent',
  });
  return `// Made by src/build/generate.mjs from schemas/${name}.schema.json: change the schema.\n${bundle.outputFiles[0].text}`;
}

function validatorTypes(name) {
  return [
    `// Made by src/build/generate.mjs from schemas/${name}.schema.json: change the schema.`,
    "import type { ErrorObject } from 'ajv';",
    '/** Whether plain data keeps to the schema; `errors` holds what was wrong at the last call. */',
    'export declare const validate: {',
    '  (data: unknown): boolean;',
    '  errors?: ErrorObject[] | null;',
    '};',
    'export default validate;',
    '',
  ].join('\n');
}

/** The keys that a schema names where free ones may stand too: what a free key may be a slip for. */
function keysModule(schema) {
  const keys = (name) => JSON.stringify(Object.keys(schema.$defs[name].properties));
  return [
    '// Made by src/build/generate.mjs from schemas/sheet.schema.json: change the schema.',
    '/** Keys of `unit:` that the schema names; a kind adds its own sizes and threads. */',
    `export const unitKeys: readonly string[] = ${keys('unit')};`,
    '/** Keys of a setting that the schema names; anything else is only said beside the value. */',
    `export const settingKeys: readonly string[] = ${keys('setting')};`,
    '',
  ].join('\n');
}

/** What each key of front matter says, for whoever writes it: the words and examples of the schema. */
function wordsOfSchema(schema) {
  const known = ({ $ref, ...own }) =>
    $ref === undefined ? own : { ...schema.$defs[$ref.replace('#/$defs/', '')], ...own };
  // Of what may be written in one form or another all forms are told.
  const resolved = (raw) => {
    const { anyOf = [], ...own } = known(raw);
    const forms = anyOf.map(known);
    return { ...Object.assign({}, ...forms), ...own };
  };
  const wordsOf = (raw) => {
    const {
      description,
      examples = [],
      properties,
      additionalProperties,
      items,
      ...rest
    } = resolved(raw);
    const choices = rest.enum ?? [];
    const texts = examples.flat().filter((each) => ['string', 'number'].includes(typeof each));
    return {
      explain: description ?? '',
      choices: choices.map(String),
      examples: texts.map(String),
      keys: Object.fromEntries(
        Object.entries(properties ?? {}).map(([key, value]) => [key, wordsOf(value)]),
      ),
      any:
        typeof additionalProperties === 'object' && !additionalProperties.$comment
          ? wordsOf(additionalProperties)
          : null,
      items: typeof items === 'object' ? wordsOf(items) : null,
      required: rest.required ?? [],
    };
  };
  return wordsOf(schema);
}

/** The words for the keys of files that are no sheets. */
function fileWordsModule(root) {
  const words = Object.fromEntries(
    ['kind', 'edition', 'sources'].map((name) => [name, wordsOfSchema(readSchema(root, name))]),
  );
  return [
    '// Made by src/build/generate.mjs from schemas/*.schema.json: change the schemas.',
    "import type { KeyWords } from './sheet-words.ts';",
    '/** What the keys of a kind, an edition and shared sources say. */',
    `export const fileWords: Readonly<Record<'kind' | 'edition' | 'sources', KeyWords>> = ${JSON.stringify(words)};`,
    '',
  ].join('\n');
}

function wordsModule(schema) {
  return [
    '// Made by src/build/generate.mjs from schemas/sheet.schema.json: change the schema.',
    '/** What a key of front matter says, and what may stand under it. */',
    'export interface KeyWords {',
    '  readonly explain: string;',
    '  /** The only words that may stand there; empty where others may. */',
    '  readonly choices: readonly string[];',
    '  readonly examples: readonly string[];',
    '  readonly keys: Readonly<Record<string, KeyWords>>;',
    '  /** What stands under names that the sheet chooses; null where it chooses none. */',
    '  readonly any: KeyWords | null;',
    '  /** What each item of a list is; null for no list. */',
    '  readonly items: KeyWords | null;',
    '  readonly required: readonly string[];',
    '}',
    '/** The front matter as a whole. */',
    `export const sheetWords: KeyWords = ${JSON.stringify(wordsOfSchema(schema))};`,
    '',
  ].join('\n');
}

/** The kinds of unit as plain data, each checked against its schema. */
function kindsModule(root, validate) {
  const folder = join(root, 'src', 'kinds');
  const yamlIn = (where) =>
    readdirSync(where)
      .filter((file) => file.endsWith('.yaml'))
      .sort();
  const readIn = (where, file) => {
    const doc = parseDocument(readFileSync(join(where, file), 'utf8'), { version: '1.2' });
    const fault = doc.errors[0] ?? doc.warnings[0];
    if (fault) throw new Error(`${file}: ${fault.message}`);
    return doc.toJS();
  };
  const proven = (data, file) => {
    if (validate(data)) return data;
    const { instancePath, keyword, params } = validate.errors[0];
    throw new Error(`${file}: ${instancePath}: ${keyword} ${JSON.stringify(params)}`);
  };
  const shelf = join(folder, 'common');
  const commons = Object.fromEntries(
    yamlIn(shelf).map((file) => {
      const { common, ...data } = readIn(shelf, file);
      return [common, data];
    }),
  );
  const kinds = yamlIn(folder).map((file) => {
    const { 'builds-on': names = [], ...own } = readIn(folder, file);
    const base = names.reduce((under, name) => laidOver(under, commons[name]), {});
    return proven(laidOver(base, own), file);
  });
  return [
    '// Made by src/build/generate.mjs from src/kinds/*.yaml: change the kinds there.',
    "import type { KindData } from '../kinds/data.ts';",
    '/** The kinds that come with the program, by name; each is parsed when it is asked for. */',
    'export const kinds: Readonly<Record<string, () => KindData>> = {',
    ...kinds.map(
      (data) => `  '${data.kind}': () => JSON.parse(${JSON.stringify(JSON.stringify(data))}),`,
    ),
    '};',
    '/** What kinds build on (`builds-on`), by name. */',
    'export const commons: Readonly<Record<string, () => Partial<KindData>>> = {',
    ...Object.entries(commons).map(
      ([name, data]) => `  '${name}': () => JSON.parse(${JSON.stringify(JSON.stringify(data))}),`,
    ),
    '};',
    '',
  ].join('\n');
}

/** The words that every kind shares, as plain data. */
function lexiconModule(root) {
  const read = (name) => {
    const file = join('src', 'kinds', 'lexicon', `${name}.yaml`);
    const doc = parseDocument(readFileSync(join(root, file), 'utf8'), { version: '1.2' });
    const fault = doc.errors[0] ?? doc.warnings[0];
    if (fault) throw new Error(`${file}: ${fault.message}`);
    return doc.toJS();
  };
  const data = { changes: read('changes'), parts: read('parts') };
  return [
    '// Made by src/build/generate.mjs from src/kinds/lexicon/: change the words there.',
    "import type { ChangesData, PartWordsData } from '../kinds/lexicon.ts';",
    '/** Words of steps that every kind shares. */',
    'export const lexicon: { readonly changes: ChangesData; readonly parts: PartWordsData } = JSON.parse(',
    `  ${JSON.stringify(JSON.stringify(data))},`,
    ');',
    '',
  ].join('\n');
}

function put(path, text) {
  if (existsSync(path) && readFileSync(path, 'utf8') === text) return;
  writeFileSync(path, text);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await generate(resolve(fileURLToPath(import.meta.url), '..', '..', '..'));
}
