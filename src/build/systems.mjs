/**
 * Compiles what is to be known of the systems of gauges into one TypeScript module: the families and the order from
 * `src/gauges/data/systems.yaml`, and of each system the record at the head of its table.
 *
 * A record stands behind the table's first line, one key a line, as YAML in lines that begin with `# `.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseDocument } from 'yaml';

/** The keys of a record: what each is, and what stands where a table leaves it out (no default: needed). */
const KEYS = {
  family: { is: 'text' },
  named: { is: 'text', of: ['number', 'letter', 'fraction', 'metric', 'size'] },
  label: { is: 'text' },
  'label-whole': { is: 'text', without: null },
  noun: { is: 'text' },
  runs: { is: 'text' },
  table: { is: 'text', without: null },
  letters: { is: 'text', without: null },
  words: { is: 'list', without: [] },
  before: { is: 'list', without: [] },
  'meant-by': { is: 'text', of: ['imperial', 'us-steel'], without: null },
  rounded: { is: 'flag', without: false },
  bench: { is: 'flag', without: false },
  confused: { is: 'list', of: ['unnamed', 'slip'], without: [] },
};

/** The text of src/generated/gauge-systems.ts for the project at `root`; fails with the file and the reason. */
export function systemsModule(root) {
  const folder = join(root, 'src', 'gauges', 'data');
  const { families, systems } = yaml(
    'systems.yaml',
    readFileSync(join(folder, 'systems.yaml'), 'utf8'),
  );
  const records = systems.map((system) => {
    const file = [`${system}.tsv`, `${system}-inch.tsv`].find((name) =>
      existsSync(join(folder, name)),
    );
    if (!file) throw new Error(`systems.yaml: there is no table of ${system}`);
    return [system, record(file, readFileSync(join(folder, file), 'utf8'), Object.keys(families))];
  });
  const sized = records.filter(([, { named }]) => named === 'size').map(([system]) => system);
  const union = (names) => names.map((name) => `'${name}'`).join(' | ');
  const lines = (entries) =>
    entries.map(([name, value]) => `  '${name}': ${JSON.stringify(value)},`).join('\n');
  const told = Object.entries(families).map(([name, { title, words = [] }]) => [
    name,
    { title, words },
  ]);
  return [
    '// Made by src/build/systems.mjs from src/gauges/data: change the heads of the tables and systems.yaml there.',
    "import type { FamilyRecord, SystemRecord } from '../quantity/gauge-systems.ts';",
    `export type GaugeFamily = ${union(Object.keys(families))};`,
    '/** A family of gauge names. */',
    `export type GaugeSystem = ${union(systems)};`,
    '/** Systems whose gauges are named by their own size in inches or mm. */',
    `export type SizedSystem = ${union(sized)};`,
    '/** In the order of a list of what to gather. */',
    `export const FAMILIES: Readonly<Record<GaugeFamily, FamilyRecord>> = {\n${lines(told)}\n};`,
    '/** In the order in which gauges of one size are listed. */',
    `export const SYSTEM_RECORDS: Readonly<Record<GaugeSystem, SystemRecord>> = {\n${lines(records)}\n};`,
    '',
  ].join('\n');
}

/** The parts of a table's text: its source, its record as YAML, and the lines from its columns on, with how many stand above. */
export function tableLines(text) {
  const [source = '', ...rest] = text.split(/\r?\n/);
  const length = rest.findIndex((line) => !line.startsWith('# '));
  const record = rest.slice(0, length).map((line) => line.slice(2));
  return { source, record: record.join('\n'), above: length + 1, lines: rest.slice(length) };
}

function record(file, text, families) {
  const data = yaml(file, tableLines(text).record) ?? {};
  const fail = (reason) => {
    throw new Error(`${file}: ${reason}`);
  };
  const unknown = Object.keys(data).find((key) => !Object.hasOwn(KEYS, key));
  if (unknown !== undefined) fail(`a record has no \`${unknown}\``);
  const found = Object.entries(KEYS).map(([key, { is, of, without }]) => {
    const value = data[key] ?? without;
    if (value === undefined) fail(`its record lacks \`${key}\``);
    if (Object.hasOwn(data, key) && !isOf(is, value)) fail(`\`${key}\` is no ${is}`);
    const odd = of && [value].flat().find((each) => each !== null && !of.includes(each));
    if (odd) fail(`\`${key}\` is one of ${of.join(', ')}, and not ${odd}`);
    return [key.replace(/-(\w)/g, (_, letter) => letter.toUpperCase()), value];
  });
  if (!families.includes(data.family)) fail(`there is no family ${data.family}`);
  return Object.fromEntries(found);
}

function isOf(is, value) {
  if (is === 'list') return Array.isArray(value) && value.every((each) => typeof each === 'string');
  return typeof value === (is === 'flag' ? 'boolean' : 'string');
}

function yaml(file, text) {
  const doc = parseDocument(text, { version: '1.2' });
  const fault = doc.errors[0] ?? doc.warnings[0];
  if (fault) throw new Error(`${file}: ${fault.message}`);
  return doc.toJS();
}
