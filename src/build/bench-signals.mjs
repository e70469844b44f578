/**
 * What the program needs from a signal to its end: every command, ended at moments that chance chooses, in a copy of
 * the demo. Prints for each command the longest and the median (milliseconds), and what was left: files half
 * written, folders of browsers. Run by `node src/build/bench-signals.mjs [moments] [command...]` after a build;
 * SIGNALS_BROWSER names the browser. Fails where an end took half a second or anything stayed for three.
 */
import { spawn, spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const program = join(root, 'dist', 'gaugeleaf.js');
const [moments = '50', ...wanted] = process.argv.slice(2);
const longest = 500;

const sheet = readdirSync(join(root, 'sheets'))
  .find((name) => name.endsWith('.md'))
  .slice(0, -3);
const record = join('sheets', 'records', readdirSync(join(root, 'sheets', 'records'))[0]);
const draft = [
  '--kind',
  'carburetor',
  '--maker',
  'Orlo',
  '--model',
  'Z99',
  '--features',
  'single-barrel,downdraft',
];
const commands = {
  check: ['check', '--no-cache'],
  'check --fix': ['check', '--fix'],
  'check --watch': ['check', '--watch'],
  trace: ['check', '--trace'],
  card: ['card', sheet],
  'card --watch': ['card', sheet, '--watch'],
  booklet: ['booklet', '--no-cache', '--imposed'],
  pages: ['pages'],
  gauges: ['gauges', sheet],
  size: ['size', 'No. 29 drill', '13/64 in'],
  draft: ['draft', ...draft, '--out', 'new/'],
  'draft --club': ['draft', '--club', 'new/club'],
  desk: ['desk', '--no-open'],
  record: ['record', record, '--card'],
  order: ['order', sheet],
  draw: ['draw', sheet],
  compare: ['compare', '.', '--slip'],
  export: ['export', '--format', 'package'],
  work: ['work', sheet, '--full'],
  sources: ['sources', sheet, '--pdf'],
  find: ['find', '13/64'],
  kind: ['kind'],
  schema: ['schema', '--out', 'new/schemas'],
  completion: ['completion', 'bash'],
  explain: ['explain'],
  'language-server': ['language-server', '--stdio'],
};

const home = mkdtempSync(join(tmpdir(), 'gaugeleaf-signals-'));
const place = join(home, 'demo');
const temporary = join(home, 't');
mkdirSync(temporary);
for (const part of ['edition.yaml', 'sheets', 'editions', 'templates', 'sources.yaml']) {
  if (existsSync(join(root, part)))
    cpSync(join(root, part), join(place, part), { recursive: true });
}
// Copies, so that what looks at all sheets takes as long as a club's own edition.
for (const name of readdirSync(join(place, 'sheets'))) {
  if (!name.endsWith('.md')) continue;
  for (const copy of ['b', 'c']) {
    const text = readFileSync(join(place, 'sheets', name), 'utf8');
    writeFileSync(
      join(place, 'sheets', `${name.slice(0, -3)}-${copy}.md`),
      text.replace(/^(sheet: .*)$/m, `$1-${copy}`),
    );
  }
}
const env = {
  ...process.env,
  TMPDIR: temporary,
  GAUGELEAF_CACHE: process.env.GAUGELEAF_CACHE ?? join(home, 'cache'),
};
if (process.env.SIGNALS_BROWSER) env.GAUGELEAF_BROWSER = process.env.SIGNALS_BROWSER;

/** Ends a run after that many milliseconds; null where it had ended before. */
function ended(argv, after, signal) {
  return new Promise((done) => {
    const child = spawn(process.execPath, [program, ...argv], {
      cwd: place,
      env,
      stdio: ['pipe', 'ignore', 'ignore'],
    });
    let asked = null;
    const timer = setTimeout(() => {
      asked = performance.now();
      child.kill(signal);
    }, after);
    child.on('exit', () => {
      clearTimeout(timer);
      done(asked === null ? null : performance.now() - asked);
    });
  });
}

function strays() {
  const partial = readdirSync(place, { recursive: true }).filter((name) =>
    name.endsWith('.partial'),
  );
  return [...partial, ...readdirSync(temporary)];
}

let failed = false;
for (const [name, argv] of Object.entries(commands)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  const goesOn = /watch|desk|server/.test(name);
  const started = performance.now();
  if (!goesOn)
    spawnSync(process.execPath, [program, ...argv], { cwd: place, env, stdio: 'ignore' });
  const whole = goesOn ? 4000 : performance.now() - started;
  const took = [];
  for (let moment = 0; moment < Number(moments); moment += 1) {
    rmSync(join(place, 'new'), { recursive: true, force: true });
    const signal = moment % 3 === 2 ? 'SIGTERM' : 'SIGINT';
    const ms = await ended(argv, 20 + Math.random() * whole, signal);
    if (ms !== null) took.push(ms);
  }
  took.sort((a, b) => a - b);
  let left = strays();
  for (let round = 0; round < 30 && left.some((stray) => !stray.endsWith('.partial')); round += 1) {
    await new Promise((resolve) => setTimeout(resolve, 100));
    left = strays();
  }
  const half = left.filter((stray) => stray.endsWith('.partial')).length;
  const worst = took.at(-1) ?? 0;
  failed ||= worst >= longest || left.length > half;
  const figures = `${took.length} ended, longest ${worst.toFixed(0)} ms, median ${(took[took.length >> 1] ?? 0).toFixed(0)} ms`;
  console.log(
    `${name.padEnd(16)} ${Math.round(whole)} ms whole; ${figures}; half written ${half}, other strays ${left.length - half}`,
  );
}
rmSync(home, { recursive: true, force: true });
process.exitCode = failed ? 1 : 0;
