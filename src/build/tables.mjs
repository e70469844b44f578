/**
 * Compiles the gauge and thread tables of src/gauges/data into one TypeScript module of plain
 * strings, so that the program starts without reading or parsing a single table.
 *
 * A table is tab-parted: a first line `# where it comes from`, the record of its system in further
 * lines with a `#` (see `systems.mjs`), a line of column names, then one gauge a line. `in` or `mm` is the size, `full-in` the unrounded value where a formula has one.
 * `ordinary-kit.tsv` has a set a line.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { systemsModule, tableLines } from './systems.mjs';

/** Every size in the tables is a whole number of nanometers: 1/64 in is 396,875 of them. */
const NANOMETERS = { in: 25_400_000n, mm: 1_000_000n };

/** Files that hold a part of a system or of a set: `leaf-inch` belongs to `leaf`. */
const PART = /-(inch|metric)$/;

/**
 * The text of src/generated/tables.ts for the project at `root`.
 * Fails with the file, line and reason where a table is not in order.
 */
export function tablesModule(root) {
  const folder = join(root, 'src', 'gauges', 'data');
  const sources = [];
  const systems = new Map();
  let threads = '';
  let kit = [];
  for (const file of readdirSync(folder).sort()) {
    if (!file.endsWith('.tsv')) continue;
    const rows = readTable(file, readFileSync(join(folder, file), 'utf8'));
    if (file === 'threads.tsv') {
      threads = rows.map((row) => threadLine(row, sources)).join('\n');
      continue;
    }
    if (file === 'ordinary-kit.tsv') {
      kit = rows.map(({ value }) => [value.set, value.wide === '-' ? '' : value.wide].join('\t'));
      continue;
    }
    const system = file.slice(0, -'.tsv'.length).replace(PART, '');
    const gauges = systems.get(system) ?? [];
    systems.set(system, gauges);
    for (const row of rows) {
      const gauge = gaugeRow(row, sources);
      if (gauges.some((other) => other.name === gauge.name)) row.fail(`${gauge.name} twice`);
      gauges.push(gauge);
    }
  }
  const tables = [...systems].map(([system, gauges]) => {
    gauges.sort((a, b) => (a.size < b.size ? -1 : a.size > b.size ? 1 : 0));
    return `  ${JSON.stringify(system)}: ${JSON.stringify(gauges.map((g) => g.line).join('\n'))},`;
  });
  return [
    '// Made by src/build/tables.mjs from src/gauges/data: change the tables there.',
    '/** Where sizes come from; rows name a source by its index. */',
    `export const SOURCES: readonly string[] = ${JSON.stringify(sources)};`,
    '/** A row: name, nanometers, decimal places (empty: exact), unit, source, full inches if any. */',
    'export const GAUGES: Readonly<Record<string, string>> = {',
    ...tables,
    '};',
    '/** A row: series, size, threads an inch (empty: none), pitch mm, major nanometers, source. */',
    `export const THREADS: string = ${JSON.stringify(threads)};`,
    '/** Sets of an ordinary kit. A row: the set as a club writes it, how wide its leaves are (empty: round). */',
    `export const ORDINARY_KIT: string = ${JSON.stringify(kit.join('\n'))};`,
    '',
  ].join('\n');
}

function readTable(file, text) {
  const { source, above, lines } = tableLines(text);
  if (!/^# \S/.test(source)) throw new Error(`${file}:1: the first line says the source`);
  const columns = (lines[0] ?? '').split('\t');
  const rows = [];
  lines.slice(1).forEach((line, index) => {
    if (line === '') return;
    const cells = line.split('\t');
    const fail = (reason) => {
      throw new Error(`${file}:${above + index + 2}: ${reason}`);
    };
    if (cells.length !== columns.length) fail(`${columns.length} columns wanted`);
    const value = Object.fromEntries(columns.map((name, i) => [name, cells[i]]));
    if (!value.source) fail('a row without a source');
    rows.push({ value, fail });
  });
  return rows;
}

function gaugeRow(row, sources) {
  const { name, source } = row.value;
  if (!name) row.fail('a gauge without a name');
  const unit = row.value.in === undefined ? 'mm' : 'in';
  const written = row.value[unit] ?? '';
  const size = nanometers(written, unit, row.fail);
  // A fraction drill and a metric drill are exactly what their names say.
  const exact = written.includes('/') || source.startsWith('exact');
  const places = exact ? '' : String((written.split('.')[1] ?? '').length);
  const cells = [name, size, places, unit, sourceIndex(source, sources)];
  if (row.value['full-in']) cells.push(row.value['full-in']);
  return { name, size, line: cells.join('\t') };
}

function threadLine(row, sources) {
  const { series, size, tpi, major, source } = row.value;
  const pitch = row.value['pitch-mm'];
  if (!/^\d+(\/\d+)?$/.test(pitch)) row.fail(`${pitch} is not a ratio`);
  if (tpi !== '-') {
    // The pitch is written out for the reader and proved here: 25.4 mm over the threads an inch.
    const [above, below = '1'] = pitch.split('/');
    const wanted = BigInt(below) * 254n === BigInt(above) * BigInt(tpi) * 10n;
    if (!wanted) row.fail(`${pitch} mm is not 25.4/${tpi}`);
  }
  const [number, unit] = major.split(' ');
  const majorSize = nanometers(number, unit, row.fail);
  const count = tpi === '-' ? '' : tpi;
  return [series, size, count, pitch, majorSize, sourceIndex(source, sources)].join('\t');
}

/** `1-1/16`, `13/64` or `0.0059`, in whole nanometers. */
function nanometers(written, unit, fail) {
  const scale = NANOMETERS[unit] ?? fail(`${unit} is not in or mm`);
  const parts = /^(?:(\d+)-)?(\d+)\/(\d+)$/.exec(written) ?? null;
  const decimal = /^(\d+)(?:\.(\d+))?$/.exec(written);
  if (!parts && !decimal) fail(`${written} is not a size`);
  const below = parts ? BigInt(parts[3]) : 10n ** BigInt((decimal[2] ?? '').length);
  const above = parts
    ? BigInt(parts[1] ?? 0) * below + BigInt(parts[2])
    : BigInt(decimal[1] + (decimal[2] ?? ''));
  const whole = above * scale;
  if (above === 0n || whole % below !== 0n) fail(`${written} ${unit} is not whole nanometers`);
  return whole / below;
}

function sourceIndex(source, sources) {
  const known = sources.indexOf(source);
  return known >= 0 ? known : sources.push(source) - 1;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const root = resolve(fileURLToPath(import.meta.url), '..', '..', '..');
  mkdirSync(join(root, 'src', 'generated'), { recursive: true });
  writeFileSync(join(root, 'src', 'generated', 'tables.ts'), tablesModule(root));
  writeFileSync(join(root, 'src', 'generated', 'gauge-systems.ts'), systemsModule(root));
}
