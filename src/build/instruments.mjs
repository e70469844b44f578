/**
 * Compiles src/gauges/instruments.tsv into a TypeScript module of plain data. The table is
 * tab-parted: a first line `# where it comes from`, a line of column names, then one instrument a
 * line with the words that name it in a record, parted by `|`.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The text of src/generated/instruments.ts; fails with the line and reason where a row is amiss. */
export function instrumentsModule(root) {
  const file = 'src/gauges/instruments.tsv';
  const [source = '', columns = '', ...lines] = readFileSync(join(root, file), 'utf8').split('\n');
  if (!/^# \S/.test(source)) throw new Error(`${file}:1: the first line says the source`);
  if (columns !== 'name\twords\tuncertainty\tsource') throw new Error(`${file}:2: other columns`);
  const rows = [];
  lines.forEach((line, index) => {
    if (line === '') return;
    const cells = line.split('\t');
    if (cells.length !== 4 || cells.includes(''))
      throw new Error(`${file}:${index + 3}: 4 columns`);
    const [name, words, uncertainty, from] = cells;
    rows.push({ name, words: words.split('|'), uncertainty, source: from });
  });
  return [
    `// Made by src/build/instruments.mjs from ${file}: change the table.`,
    "import type { Instrument } from '../gauges/instruments.ts';",
    '/** Ordinary instruments, in the order of the table. */',
    `export const instruments: readonly Instrument[] = ${JSON.stringify(rows, null, 2)};`,
    '',
  ].join('\n');
}
