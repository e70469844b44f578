/**
 * How quickly the desk answers: a project of 200 sheets, one of 13 KB in a real browser, 500 keys. Printed are
 * the times from the key to its findings on the screen, those of reading and checking alone, and beside them
 * the bare parsers' for the same texts in the same place; then completion, and the card. Needs `npm run build`
 * and a browser: `node src/build/bench-desk.mjs BROWSER`.
 */
import { spawn } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { launch } from 'puppeteer-core';

const root = resolve(fileURLToPath(import.meta.url), '..', '..', '..');
const [executablePath, keys = '500'] = process.argv.slice(2);
if (executablePath === undefined)
  throw new Error('name a browser: node src/build/bench-desk.mjs BROWSER');

const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-bench-'));
mkdirSync(join(folder, 'sheets'));
cpSync(join(root, 'sheets', 'pictures'), join(folder, 'sheets', 'pictures'), { recursive: true });
writeFileSync(join(folder, 'edition.yaml'), 'gaugeleaf-edition: 1\ntitle: Two hundred sheets\n');
const demo = readdirSync(join(root, 'sheets')).filter((name) => name.endsWith('.md'));
for (let number = 0; number < 200; number += 1) {
  const name = demo[number % demo.length];
  const text = readFileSync(join(root, 'sheets', name), 'utf8');
  const id = `${name.slice(0, -3)}-${number}`;
  writeFileSync(join(folder, 'sheets', `${id}.md`), text.replace(/^sheet: .*$/m, `sheet: ${id}`));
}
const sheet = 'dunnow-c31-tollgarth-eight-3';
const source = readFileSync(join(root, 'sheets', 'dunnow-c31-tollgarth-eight.md'), 'utf8');
// 13 KB: what is too much of the last section is left off.
writeFileSync(
  join(folder, 'sheets', `${sheet}.md`),
  source.replace(/^sheet: .*$/m, `sheet: ${sheet}`).slice(0, 13_300),
);

const server = spawn(
  process.execPath,
  [join(root, 'dist', 'gaugeleaf.js'), 'desk', folder, '--no-open'],
  {
    stdio: ['ignore', 'pipe', 'ignore'],
  },
);
const address = await new Promise((done) =>
  server.stdout.once('data', (chunk) => done(String(chunk).trim())),
);
const browser = await launch({
  executablePath,
  headless: 'shell',
  args: ['--no-sandbox', '--disable-gpu'],
});
try {
  const page = await browser.newPage();
  await page.setViewport({ width: 1440, height: 900 });
  await page.goto(address);
  await page.waitForSelector('.contents');
  await page.evaluate(`location.hash = '${sheet}'`);
  await page.waitForFunction(`document.querySelector('.lines .here')?.textContent.includes('C31')`);
  // All 200 sheets are read before the clock runs.
  await page.waitForFunction("document.querySelector('.contents .progress').textContent === ''", {
    timeout: 120_000,
  });
  await page.evaluate(`(() => {
    window.times = []; let start = 0;
    document.addEventListener('keydown', () => { start = performance.now(); }, true);
    const after = new MessageChannel(); after.port1.onmessage = () => { window.times.push(performance.now() - start); start = 0; };
    new MutationObserver(() => { if (start > 0) requestAnimationFrame(() => after.port2.postMessage(0)); })
      .observe(document.body, { attributes: true, attributeFilter: ['data-checked'] });
    const content = document.querySelector('.cm-content'); const view = (content.cmTile ?? content.cmView).view; window.view = view;
    const at = view.state.doc.toString().indexOf('\\n1. ') + 8;
    view.dispatch({ selection: { anchor: at }, scrollIntoView: true }); view.focus();
    window.other = new Worker('assets/worker.js', { type: 'module' }); window.open1 = new Map(); let n = 0;
    window.other.onmessage = ({ data }) => { window.open1.get(data.n)(data.answer); };
    window.asks = (what, ask) => new Promise((done) => { n += 1; window.open1.set(n, done); window.other.postMessage({ n, what, ask }); });
  })()`);
  const letters = 'the gauge drags a little and then no more ';
  const bare = [];
  const checked = [];
  const context = await page.evaluate(`fetch('context/${sheet}').then((answer) => answer.json())`);
  await page.evaluate((given) => window.asks('open', { context: given }), context);
  for (let key = 0; key < Number(keys); key += 1) {
    const before = await page.evaluate('window.times.length');
    if (key % 40 === 39) await page.keyboard.press('Backspace');
    else await page.keyboard.type(letters[key % letters.length]);
    await page.waitForFunction(`window.times.length > ${before}`, { polling: 5 });
    if (key % 5 === 0) {
      const text = await page.evaluate('window.view.state.doc.toString()');
      bare.push(await page.evaluate((given) => window.asks('bareParse', { text: given }), text));
      checked.push(
        (await page.evaluate((given) => window.asks('text', { text: given }), text)).took,
      );
    }
  }
  const times = await page.evaluate('window.times');
  const complete =
    await page.evaluate(`(async () => { const out = []; const at = window.view.state.doc.toString().indexOf('from: ') + 6;
    for (let i = 0; i < 50; i += 1) { const start = performance.now(); await window.asks('complete', { offset: at }); out.push(performance.now() - start); } return out; })()`);
  const card = await page.evaluate(`(async () => { const out = [];
    for (let i = 0; i < 10; i += 1) { const frame = document.querySelector('#leaf-card iframe:not(.waiting)'); const start = performance.now();
      window.view.dispatch({ changes: { from: window.view.state.selection.main.head, insert: 'x' } });
      while (document.querySelector('#leaf-card iframe:not(.waiting)') === frame) await new Promise((done) => setTimeout(done, 5));
      out.push(performance.now() - start); } return out; })()`);
  process.stdout.write(
    `sheet of ${Math.min(source.length, 13_300)} letters, 200 sheets, ${keys} keys\n`,
  );
  line('key to findings on the screen', times);
  line('reading and checking in the worker', checked);
  line('bare parsers in the worker', bare);
  line('completion', complete);
  line('last key to card', card);
} finally {
  await browser.close();
  server.kill('SIGINT');
  rmSync(folder, { recursive: true, force: true });
}

function line(label, times) {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share) =>
    sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))].toFixed(1);
  process.stdout.write(`${label}: p50 ${at(0.5)} ms, p95 ${at(0.95)} ms (${times.length})\n`);
}
