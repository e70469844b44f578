/**
 * The part of `npm run bench` that prints: a booklet from nothing against the bare browser printing
 * the same final HTML once, and an edition of which one sheet changed against the same from nothing.
 * Whole processes, in turn, in one run; the medians are compared. On Linux also the peak memory of a
 * large edition, browser and all.
 */
import { spawn } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';

const targets = { cold: 1.5, changed: 0.25 };

/** What the bench needs of the press, as a program of its own: the browser, and the demo's final HTML. */
const preparation = `
import { writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import { candidate, pictureSource } from './src/cli/printing.ts';
import { printBooklet } from './src/press/index.ts';
import { findBrowser } from './src/project/browser/index.ts';
import { flate } from './src/project/flate.ts';
import { openProject } from './src/project/project.ts';
import { readTemplates } from './src/project/templates.ts';
const [root, out] = process.argv.slice(2);
const browser = await findBrowser();
const project = openProject(root, root);
const { edition } = project.edition();
const io = { stdout: process.stdout, stderr: process.stderr, env: process.env, cwd: root };
const byName = new Map(project.sheets().map((path) => [basename(path, '.md'), path]));
const sheets = edition.sheets.map((name) => candidate(project, byName.get(name), io));
const printed = await printBooklet({
  sheets,
  edition: edition.facts,
  orderGraphs: edition.orderGraphs,
  paper: edition.paper,
  templates: readTemplates(root),
  picture: pictureSource(project, sheets),
  browser,
  draft: false,
  flate,
  store: null,
});
writeFileSync(out + '.html', printed.html());
writeFileSync(out + '.json', JSON.stringify({ ...browser, pages: printed.pages }));
`;

/** The same browser printing one document once, with no more than that takes. */
const bare = `
import { readFileSync, writeFileSync } from 'node:fs';
import { launch } from 'puppeteer-core';
const { path, args, env } = JSON.parse(readFileSync(process.argv[2] + '.json', 'utf8'));
const browser = await launch({
  executablePath: path,
  headless: 'shell',
  args: ['--disable-gpu', '--font-render-hinting=none', ...args],
  env,
  pipe: true,
  waitForInitialPage: false,
});
const page = await browser.newPage();
await page.setContent(readFileSync(process.argv[2] + '.html', 'utf8'), { waitUntil: 'load' });
const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: true, outline: true });
writeFileSync(process.argv[2] + '.pdf', pdf);
await browser.close();
`;

/** Runs a program to its end: its wall time in milliseconds, and its peak memory with all it started. */
function run(args, { cwd, env }, isWatched = false) {
  return new Promise((done, fail) => {
    const started = performance.now();
    const child = spawn(process.execPath, args, { cwd, env, stdio: ['ignore', 'ignore', 'pipe'] });
    let words = '';
    let peakMiB = 0;
    const watch = isWatched
      ? setInterval(() => {
          peakMiB = Math.max(peakMiB, memoryOf(child.pid));
        }, 250)
      : null;
    child.stderr.on('data', (text) => {
      words += text;
    });
    child.on('error', fail);
    child.on('close', (status) => {
      clearInterval(watch);
      if (status !== 0) fail(new Error(`${args.join(' ')} ended in ${status}\n${words}`));
      else done({ wallMs: performance.now() - started, peakMiB });
    });
  });
}

/** MiB that a process and all below it hold, what they share counted once (Linux's `Pss`). */
function memoryOf(top) {
  const parents = new Map();
  for (const name of readdirSync('/proc')) {
    if (!/^\d+$/.test(name)) continue;
    try {
      const facts = readFileSync(`/proc/${name}/stat`, 'latin1');
      parents.set(Number(name), Number(facts.slice(facts.lastIndexOf(')') + 4).split(' ')[0]));
    } catch {
      // It has ended meanwhile.
    }
  }
  const isBelow = (pid) => pid === top || (parents.has(pid) && isBelow(parents.get(pid)));
  let kib = 0;
  for (const pid of parents.keys()) {
    if (!isBelow(pid)) continue;
    try {
      kib += Number(/^Pss:\s+(\d+)/m.exec(readFileSync(`/proc/${pid}/smaps_rollup`, 'latin1'))[1]);
    } catch {
      // As above.
    }
  }
  return kib / 1024;
}

const median = (values) => values.toSorted((a, b) => a - b)[values.length >> 1];
const seconds = (value) => `${(value / 1000).toFixed(2)} s`;

function writeEdition(folder, root, sheets) {
  mkdirSync(join(folder, 'sheets'), { recursive: true });
  cpSync(join(root, 'sheets', 'pictures'), join(folder, 'sheets', 'pictures'), { recursive: true });
  writeFileSync(
    join(folder, 'edition.yaml'),
    'gaugeleaf-edition: 1\ntitle: Bench\nwire-gauge: imperial\npaper: half-letter\norder-graphs: true\n',
  );
  for (const { name, text } of sheets) writeFileSync(join(folder, 'sheets', `${name}.md`), text);
  return folder;
}

/** One more sentence in the first step of a sheet. */
function changed(text, round) {
  const altered = text.replace(/^1\. /m, `1. Look at it ${round + 2} times. `);
  if (altered === text) throw new Error('the sheet has no step to change');
  return altered;
}

/**
 * Prints what it finds. `sheets`: two hundred or more, without findings; `bundle(source, file)` makes
 * a program. Returns whether both targets are met; true where there is no browser to measure with.
 */
export async function benchBooklets({ root, folder, sheets, rounds, bundle }) {
  const gaugeleaf = join(root, 'dist', 'gaugeleaf.js');
  const bundles = join(root, 'node_modules', '.cache', 'gaugeleaf-bench');
  mkdirSync(bundles, { recursive: true });
  const prepare = await bundle(preparation, join(bundles, 'prepare.mjs'));
  const print = await bundle(bare, join(bundles, 'bare.mjs'));
  const whole = join(folder, 'whole');
  try {
    await run([prepare, root, whole], { cwd: root, env: process.env });
  } catch (error) {
    if (!String(error).includes('no browser')) throw error;
    console.log('\nThere is no browser here: printing is not measured.');
    return true;
  }
  const browser = JSON.parse(readFileSync(`${whole}.json`, 'utf8'));
  // A store of its own, and the packaged browser as it lies unpacked in the user's.
  const cache = join(folder, 'cache');
  mkdirSync(cache, { recursive: true });
  const home = dirname(browser.path);
  if (/^chromium-/.test(home.split(/[\\/]/).at(-1))) {
    symlinkSync(home, join(cache, home.split(/[\\/]/).at(-1)));
  }
  const env = { ...process.env, GAUGELEAF_CACHE: cache };
  const forget = () => rmSync(join(cache, 'parts'), { recursive: true, force: true });
  const booklet = (cwd, watched = false) =>
    run([gaugeleaf, 'booklet', '--out', join(folder, 'out.pdf')], { cwd, env }, watched);

  const once = [];
  const cold = [];
  const steps = [
    async () => once.push((await run([print, whole], { cwd: root, env })).wallMs),
    async () => {
      forget();
      cold.push((await booklet(root)).wallMs);
    },
  ];
  for (let round = 0; round < rounds; round++) {
    for (const step of round % 2 === 0 ? steps : [...steps].reverse()) await step();
  }
  const hundred = writeEdition(join(folder, 'hundred'), root, sheets.slice(0, 100));
  const { name, text } = sheets[49];
  const anew = [];
  const again = [];
  for (let round = 0; round < rounds; round++) {
    forget();
    anew.push((await booklet(hundred)).wallMs);
    writeFileSync(join(hundred, 'sheets', `${name}.md`), changed(text, round));
    again.push((await booklet(hundred)).wallMs);
  }
  const coldRatio = median(cold) / median(once);
  const changedRatio = median(again) / median(anew);
  if (existsSync('/proc/self/smaps_rollup')) {
    forget();
    const large = writeEdition(join(folder, 'large'), root, sheets.slice(0, 200));
    const { peakMiB, wallMs } = await booklet(large, true);
    console.log(
      `\nbooklet of 200 sheets, from nothing: ${peakMiB.toFixed(0)} MiB at its peak, browser and all; ${seconds(wallMs)}`,
    );
  }
  const say = (ratio, target) => (ratio <= target ? 'yes' : 'MISSED');
  console.log(
    `booklet of the demo (${browser.pages} pages), from nothing: ${seconds(median(cold))}; the browser alone, ` +
      `the same pages once: ${seconds(median(once))}; ratio ${coldRatio.toFixed(2)}, ` +
      `within ${targets.cold}: ${say(coldRatio, targets.cold)}`,
  );
  console.log(
    `booklet of 100 sheets, one changed: ${seconds(median(again))}; from nothing: ${seconds(median(anew))}; ` +
      `ratio ${changedRatio.toFixed(2)}, within ${targets.changed}: ${say(changedRatio, targets.changed)}`,
  );
  return coldRatio <= targets.cold && changedRatio <= targets.changed;
}
