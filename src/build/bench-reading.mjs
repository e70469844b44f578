/**
 * How well steps are read in words: the demo's steps with their marks passed over, against what the
 * marks say, and what a step costs. Printed first by `npm run bench`; by itself with
 * `node src/build/bench-reading.mjs`.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { forNode } from './for-node.mjs';

const targets = { recall: 0.8, precision: 0.9, stepUs: 30 };

const root = resolve(fileURLToPath(import.meta.url), '..', '..', '..');

const core = `
export { gaugeBook } from './src/gauges/index.ts';
export { builtInKinds } from './src/kinds/index.ts';
export { readSteps } from './src/order/reading.ts';
export { readSheet } from './src/sheet/index.ts';
export { compareReading, noFigures } from './test/order/reading-figures.ts';
`;

/** Prints the figures for every kind that the demo has sheets of; whether all targets are met. */
export async function benchReading() {
  const { gaugeBook, builtInKinds, readSteps, readSheet, compareReading, noFigures } =
    await loadCore();
  const kinds = builtInKinds();
  const context = { gauges: gaugeBook(), kinds, wireGauge: 'imperial' };
  const folder = join(root, 'sheets');
  const sheets = readdirSync(folder)
    .filter((name) => name.endsWith('.md'))
    .map((name) => readSheet(readFileSync(join(folder, name), 'utf8'), name, context));
  let met = true;
  for (const kind of kinds.values()) {
    const own = sheets.filter(({ unit }) => unit.kind?.value === kind.name);
    if (own.length === 0) continue;
    const figures = noFigures();
    for (const sheet of own) compareReading(sheet, kind, figures);
    const recall = figures.recalled / figures.marked;
    const precision = figures.right / figures.read;
    const stepUs = costOf(own, kind, readSteps);
    met &&= recall >= targets.recall && precision >= targets.precision && stepUs < targets.stepUs;
    console.log(
      `reading ${kind.name}: ${own.length} sheets, ${figures.steps} steps with their marks passed over\n` +
        `  recall     ${share(figures.recalled, figures.marked)} of what marks say` +
        ` (${share(figures.changesRecalled, figures.changes)} of what changes something)\n` +
        `  precision  ${share(figures.right, figures.read)} of what is read holds\n` +
        `  cost       ${stepUs.toFixed(1)} µs a step, warm`,
    );
  }
  console.log(
    `  targets    recall ${targets.recall}, precision ${targets.precision}, ${targets.stepUs} µs: ${met ? 'met' : 'MISSED'}\n`,
  );
  return met;
}

async function loadCore() {
  const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-reading-'));
  try {
    const outfile = join(folder, 'core.mjs');
    await build({
      ...forNode,
      stdin: { contents: core, resolveDir: root, loader: 'ts' },
      absWorkingDir: root,
      outfile,
      logLevel: 'error',
    });
    return await import(pathToFileURL(outfile).href);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Processor time of one step in microseconds: the least of many rounds, so that others do not count. */
function costOf(sheets, kind, readSteps) {
  const texts = sheets.flatMap(({ text, operations }) =>
    operations.flatMap(({ steps }) => steps.map(({ span }) => text.slice(span.start, span.end))),
  );
  const costs = Array.from({ length: 40 }, () => {
    const before = process.cpuUsage();
    readSteps(texts, kind);
    const { user, system } = process.cpuUsage(before);
    return (user + system) / texts.length;
  });
  return Math.min(...costs);
}

const share = (part, whole) => `${((100 * part) / whole).toFixed(1)} % (${part} of ${whole})`;

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  if (!(await benchReading())) process.exitCode = 1;
}
