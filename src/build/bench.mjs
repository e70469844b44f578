/**
 * `npm run bench`: what checking costs, against what parsing alone costs on the same files and
 * against Node's own start, in one run; before that, how well steps are read in words, and after it
 * what printing costs. `--strict` ends in 1 where a target is missed; `--sheets N` and `--rounds N`
 * measure less, `--large 0` leaves out the ten thousand sheets whose memory is measured, `--only` with
 * `reading`, `sheets` or `booklets` measures one part. Whole processes are timed, in turn, and the best
 * round counts: a busy machine only ever makes one slower. Checking in one thread is judged by the time of
 * the processor, which is the same whatever else the machine does; on all processors, by the clock.
 */
import { spawnSync } from 'node:child_process';
import {
  cpSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { build } from 'esbuild';
import { benchBooklets } from './bench-booklet.mjs';
import { benchReading } from './bench-reading.mjs';
import { benchSheets } from './bench-sheets.mjs';
import { forNode } from './for-node.mjs';

const targets = {
  /** One thread, the processor's time against bare parsing's. */
  parsing: 1.3,
  /** All processors, from nothing, the clock's time against bare parsing's. */
  wall: 0.6,
  /** The same sheets again, and one of them changed, against from nothing. */
  again: 0.1,
  changed: 0.12,
  start: 3,
  memory: 1.3,
  across: 1.2,
};

const root = resolve(fileURLToPath(import.meta.url), '..', '..', '..');
const gaugeleaf = join(root, 'dist', 'gaugeleaf.js');

/** Bare parsing, as a program of its own: each sheet read, parsed and let go of. */
const parsing = `
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { parseDocument } from 'yaml';
const processor = unified().use(remarkParse).use(remarkGfm).use(remarkFrontmatter).use(remarkDirective).freeze();
const folder = process.argv[2];
let seen = 0;
for (const name of readdirSync(folder)) {
  if (!name.endsWith('.md')) continue;
  const tree = processor.parse(readFileSync(join(folder, name), 'utf8'));
  const front = tree.children[0];
  seen += parseDocument(front.value).contents.items.length + tree.children.length;
}
console.log(seen);
`;

/** Loaded before the program that is measured: what the system has counted for it, at its end. */
const account = `
const { writeFileSync } = require('node:fs');
process.on('exit', () => writeFileSync(process.env.BENCH_ACCOUNT, JSON.stringify(process.resourceUsage())));
`;

const core = `
export { examine } from './src/checks/list.ts';
export { gaugeBook } from './src/gauges/index.ts';
export { builtInKinds } from './src/kinds/index.ts';
export { formatDecimal } from './src/quantity/index.ts';
`;

const bundled = {
  ...forNode,
  absWorkingDir: root,
  minifyWhitespace: true,
  minifySyntax: true,
  logLevel: 'error',
};

async function bundle(contents, outfile) {
  const stdin = { contents, resolveDir: root, loader: 'ts' };
  await build({ ...bundled, stdin, outfile });
  return outfile;
}

/** Whether a sheet is clean and what a drill measures, by the project's own code. */
async function judge(folder) {
  const file = await bundle(core, join(folder, 'core.mjs'));
  const { examine, gaugeBook, builtInKinds, formatDecimal } = await import(
    pathToFileURL(file).href
  );
  const gauges = gaugeBook();
  const context = { gauges, kinds: builtInKinds(), wireGauge: 'imperial', picture: null };
  return {
    clean: (text) => {
      const name = /^sheet: (.*)$/m.exec(text)?.[1] ?? 'sheet';
      return examine(text, `sheets/${name}.md`, context).findings.every((each) => each.accepted);
    },
    drill: (name) => {
      const gauge = gauges.find('number-drill', name);
      if (gauge === null) return null;
      return { inch: formatDecimal(gauge.mm.div('25.4'), 4), mm: formatDecimal(gauge.mm, 3) };
    },
  };
}

/** Runs a program once: wall and processor time in milliseconds, peak memory in MiB, its output. */
function measure(args, folder, cwd, more = {}) {
  const file = join(folder, 'account.json');
  const cache = join(folder, 'kept');
  const env = {
    ...process.env,
    BENCH_ACCOUNT: file,
    NO_COLOR: '1',
    GAUGELEAF_CACHE: cache,
    ...more,
  };
  const preload = join(folder, 'account.cjs');
  const started = performance.now();
  const { status, stdout, stderr } = spawnSync(process.execPath, ['-r', preload, ...args], {
    cwd,
    env,
    encoding: 'utf8',
  });
  const wallMs = performance.now() - started;
  if (status !== 0) throw new Error(`${args.join(' ')} ended in ${status}\n${stderr}${stdout}`);
  const used = JSON.parse(readFileSync(file, 'utf8'));
  const processorMs = (used.userCPUTime + used.systemCPUTime) / 1000;
  return { wallMs, processorMs, peakMiB: used.maxRSS / 1024, out: stdout };
}

/** As `measure`, without the account: only its wall time, for what is over in a moment. */
function moment(args, cwd) {
  const started = performance.now();
  const { status, stdout } = spawnSync(process.execPath, args, { cwd, encoding: 'utf8' });
  if (status !== 0) throw new Error(`${args.join(' ')} ended in ${status}\n${stdout}`);
  return performance.now() - started;
}

const least = (values) => Math.min(...values);
const median = (values) => values.toSorted((a, b) => a - b)[values.length >> 1];

function writeProject(folder, sheets, from = null) {
  mkdirSync(join(folder, 'sheets'), { recursive: true });
  writeFileSync(
    join(folder, 'edition.yaml'),
    'gaugeleaf-edition: 1\ntitle: Bench\nwire-gauge: imperial\n',
  );
  cpSync(join(root, 'sheets', 'pictures'), join(folder, 'sheets', 'pictures'), { recursive: true });
  for (const { name, text } of sheets) {
    const path = join(folder, 'sheets', `${name}.md`);
    if (from === null) writeFileSync(path, text);
    else linkSync(join(from, 'sheets', `${name}.md`), path);
  }
  return folder;
}

/** Checks in one thread and keeps nothing. */
const plain = [gaugeleaf, 'check', '--no-cache'];
const alone = { GAUGELEAF_HELPERS: '0' };

/** The folder of what was checked, emptied. */
const forget = (folder) => rmSync(join(folder, 'kept'), { recursive: true, force: true });

/**
 * Of one project in turn, the order changing: bare parsing, checking in one thread, checking from nothing on
 * all processors, the same again, and again with one sheet changed. The figures of each round.
 */
function compare(project, parser, rounds, folder, changed) {
  const parse = [];
  const single = [];
  const cold = [];
  const again = [];
  const one = [];
  const steps = [
    () => parse.push(measure([parser, join(project, 'sheets')], folder, project)),
    () => single.push(measure(plain, folder, project, alone)),
    (round) => {
      forget(folder);
      cold.push(measure([gaugeleaf, 'check'], folder, project));
      again.push(measure([gaugeleaf, 'check'], folder, project));
      changed(round);
      one.push(measure([gaugeleaf, 'check'], folder, project));
    },
  ];
  for (let round = 0; round < rounds; round++) {
    for (const step of round % 2 === 0 ? steps : [...steps].reverse()) step(round);
  }
  return { parse, single, cold, again, one };
}

/** A project as a whole against its sheets one by one, in turn: processor time of the best round. */
function compareAcross(project, rounds, folder) {
  const parts = [];
  const whole = [];
  const steps = [
    () => parts.push(measure([...plain, 'sheets'], folder, project, alone).processorMs),
    () => whole.push(measure(plain, folder, project, alone).processorMs),
  ];
  for (let round = 0; round < rounds; round++) {
    for (const step of round % 2 === 0 ? steps : [...steps].reverse()) step();
  }
  return { alone: least(parts), whole: least(whole) };
}

/** One sheet against an empty program, in turn, after one of each to warm the disk. */
function compareStarts(sheet, cwd, pairs) {
  const node = [];
  const check = [];
  for (let pair = 0; pair <= pairs; pair++) {
    const empty = moment(['-e', '0'], cwd);
    const one = moment([...plain, sheet], cwd);
    if (pair === 0) continue;
    node.push(empty);
    check.push(one);
  }
  return { node, check };
}

const ms = (value) => `${value.toFixed(0)} ms`;
const times = (value) => `${value.toFixed(2)}x`;

function verdict(value, target) {
  return value < target ? `under ${target}: yes` : `under ${target}: MISSED`;
}

function table(rows) {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  for (const row of rows) {
    console.log(
      row
        .map((cell, column) => cell.padEnd(widths[column]))
        .join('  ')
        .trimEnd(),
    );
  }
}

async function bench({ sheets: count, rounds, pairs, large }) {
  const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-bench-'));
  try {
    writeFileSync(join(folder, 'account.cjs'), account);
    const parser = await bundle(parsing, join(folder, 'parsing.mjs'));
    const sheets = benchSheets(root, count, await judge(folder));
    const bytes = sheets.reduce((sum, { text }) => sum + Buffer.byteLength(text), 0) / count;
    const project = writeProject(join(folder, 'all'), sheets);
    console.log(
      `${count} sheets of ${(bytes / 1000).toFixed(1)} KB, ${rounds} rounds; best of each\n`,
    );

    const { name, text } = sheets[count >> 1];
    const { parse, single, cold, again, one } = compare(project, parser, rounds, folder, (round) =>
      // Only its title: with another figure a note across sheets might come or go.
      writeFileSync(
        join(project, 'sheets', `${name}.md`),
        text.replace(/^(title: .*)$/m, `$1, round ${round}`),
      ),
    );
    const known = [...again, ...cold, ...single].every(({ out }) => out === cold[0].out);
    if (!known) throw new Error('threads or what was kept changed what is told');
    // Hundreds of copies of eleven units are no club: notes on how figures are spread among like units
    // come of that, and stop nothing.
    if (/^ +\d+:\d+ +(?:error|warning) /m.test(cold[0].out)) {
      throw new Error(`the sheets of the bench have findings:\n${cold[0].out.slice(0, 2000)}`);
    }
    const parts = [100, 500].filter((part) => part < count);
    const smaller = parts.map((part) =>
      writeProject(join(folder, String(part)), sheets.slice(0, part), project),
    );
    const peaks = smaller.map(
      (each) => measure([gaugeleaf, 'check', '--no-cache'], folder, each).peakMiB,
    );
    // Of 500 sheets, or of all where there are fewer.
    const across = compareAcross(smaller[1] ?? project, rounds, folder);
    peaks.push(least(cold.map((each) => each.peakMiB)));
    const counts = [...parts, count];
    if (large > count) {
      const many = benchSheets(root, large, await judge(folder));
      const all = writeProject(join(folder, 'large'), many);
      peaks.push(measure([gaugeleaf, 'check', '--no-cache'], folder, all).peakMiB);
      counts.push(large);
    }
    const start = compareStarts(`sheets/${sheets[0].name}.md`, project, pairs);

    const best = (figures, what) => least(figures.map((each) => each[what]));
    const wall = best(cold, 'wallMs') / best(parse, 'wallMs');
    const busy = best(single, 'processorMs') / best(parse, 'processorMs');
    const againRatio = best(again, 'wallMs') / best(cold, 'wallMs');
    const oneRatio = best(one, 'wallMs') / best(cold, 'wallMs');
    // A heap fills to its usual size within some hundred sheets; what counts is whether it then grows
    // on with the number of sheets.
    const growth = peaks.length < 2 ? 1 : peaks.at(-1) / peaks.at(-2);
    const acrossRatio = across.whole / across.alone;
    const startRatio = median(start.check) / median(start.node);
    table([
      ['', 'bare', 'gaugeleaf check', 'ratio', 'target'],
      [
        `${count} sheets in one thread, processor`,
        ms(best(parse, 'processorMs')),
        ms(best(single, 'processorMs')),
        times(busy),
        verdict(busy, targets.parsing),
      ],
      [
        `${count} sheets on ${availableParallelism()} processors, wall`,
        ms(best(parse, 'wallMs')),
        ms(best(cold, 'wallMs')),
        times(wall),
        verdict(wall, targets.wall),
      ],
      [
        'the same, processor',
        ms(best(parse, 'processorMs')),
        ms(best(cold, 'processorMs')),
        times(best(cold, 'processorMs') / best(parse, 'processorMs')),
        '',
      ],
      [
        'again, against from nothing, wall',
        ms(best(cold, 'wallMs')),
        ms(best(again, 'wallMs')),
        times(againRatio),
        verdict(againRatio, targets.again),
      ],
      [
        'one changed, against from nothing, wall',
        ms(best(cold, 'wallMs')),
        ms(best(one, 'wallMs')),
        times(oneRatio),
        verdict(oneRatio, targets.changed),
      ],
      [
        `${Math.min(count, 500)} sheets across, processor`,
        ms(across.alone),
        ms(across.whole),
        times(acrossRatio),
        verdict(acrossRatio, targets.across),
      ],
      [
        'one sheet, wall (median)',
        ms(median(start.node)),
        ms(median(start.check)),
        times(startRatio),
        verdict(startRatio, targets.start),
      ],
      [
        'one sheet, wall (best)',
        ms(least(start.node)),
        ms(least(start.check)),
        times(least(start.check) / least(start.node)),
        '',
      ],
      [
        'peak memory',
        `${best(parse, 'peakMiB').toFixed(0)} MiB`,
        peaks
          .map((peak) => peak.toFixed(0))
          .join(' / ')
          .concat(' MiB'),
        times(growth),
        verdict(growth, targets.memory),
      ],
    ]);
    console.log('\nacross: the sheets of a project one by one, and with what lies between them');
    console.log(
      `peak memory of check: at ${counts.join(' / ')} sheets; the ratio is of the last two`,
    );
    return (
      busy < targets.parsing &&
      wall < targets.wall &&
      againRatio < targets.again &&
      oneRatio < targets.changed &&
      startRatio < targets.start &&
      growth < targets.memory &&
      acrossRatio < targets.across
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const { values } = parseArgs({
  options: {
    strict: { type: 'boolean', default: false },
    sheets: { type: 'string', default: '1000' },
    rounds: { type: 'string', default: '3' },
    pairs: { type: 'string', default: '15' },
    large: { type: 'string', default: '10000' },
    only: { type: 'string' },
  },
});
async function printing(rounds) {
  const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-bench-'));
  try {
    const sheets = benchSheets(root, 200, await judge(folder));
    return await benchBooklets({ root, folder, sheets, rounds, bundle });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const rounds = Number(values.rounds);
const takes = (part) => values.only === undefined || values.only === part;
const isReadWell = !takes('reading') || (await benchReading());
const isCheckedFast =
  !takes('sheets') ||
  (await bench({
    sheets: Number(values.sheets),
    rounds,
    pairs: Number(values.pairs),
    large: Number(values.large),
  }));
const isPrintedFast = !takes('booklets') || (await printing(rounds));
if (!(isReadWell && isCheckedFast && isPrintedFast) && values.strict) process.exitCode = 1;
