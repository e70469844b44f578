/**
 * `node src/build/bench-editor.mjs`: what an editor waits for from the language server, over its pipes, as an
 * editor does. A project of 200 sheets (the demo's own under other names), one of them open: a letter is typed
 * into a step and taken out again, 500 times, and the time from the change to the findings of that version is
 * taken; then completion, hover and cures are asked for. Run after a build.
 */
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import {
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { parseDocument } from 'yaml';

const processor = unified()
  .use(remarkParse)
  .use(remarkGfm)
  .use(remarkFrontmatter)
  .use(remarkDirective)
  .freeze();

const root = resolve(fileURLToPath(import.meta.url), '..', '..', '..');
const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-editor-bench-'));
mkdirSync(join(folder, 'sheets'));
writeFileSync(join(folder, 'edition.yaml'), 'gaugeleaf-edition: 1\ntitle: Bench\n');
const demo = readdirSync(join(root, 'sheets')).filter((name) => name.endsWith('.md'));
for (let i = 0; i < 200; i++) {
  const name = demo[i % demo.length] ?? '';
  const id = `${name.slice(0, -3)}-${i}`;
  const text = readFileSync(join(root, 'sheets', name), 'utf8')
    .replace(/^sheet: .*$/m, `sheet: ${id}`)
    .replace(/^based-on: (.*)$/m, 'based-on: $1-0');
  writeFileSync(join(folder, 'sheets', `${id}.md`), text);
}
// Of the demo's sheets the one nearest to 13 KB.
const sizes = demo.map((name) => readFileSync(join(root, 'sheets', name), 'utf8').length);
const nearest = sizes.reduce(
  (best, size, i) => (Math.abs(size - 13_200) < Math.abs(sizes[best] - 13_200) ? i : best),
  0,
);
const open = join(folder, 'sheets', `${demo[nearest].slice(0, -3)}-${nearest}.md`);
const uri = pathToFileURL(open).href;
const text = readFileSync(open, 'utf8');

const server = spawn(process.execPath, [join(root, 'dist', 'gaugeleaf.js'), 'language-server']);
const client = createProtocolConnection(
  new StreamMessageReader(server.stdout),
  new StreamMessageWriter(server.stdin),
);
let waiting = null;
client.onNotification('textDocument/publishDiagnostics', ({ uri: of, version }) => {
  if (of === uri && waiting?.version === version) waiting.done();
});
client.listen();
const found = (version) => new Promise((done) => (waiting = { version, done }));

const started = performance.now();
await client.sendRequest('initialize', {
  processId: null,
  rootUri: pathToFileURL(folder).href,
  capabilities: { textDocument: { publishDiagnostics: { versionSupport: true } } },
});
await client.sendNotification('initialized', {});
const first = found(1);
await client.sendNotification('textDocument/didOpen', {
  textDocument: { uri, languageId: 'markdown', version: 1, text },
});
await first;
console.log(
  `${text.length} characters open in 200 sheets; first findings after ${ms(performance.now() - started)}`,
);
const lines = text.split('\n');
const line = lines.findIndex((each) => /^1\. /.test(each));
const at = { line, character: lines[line].length - 1 };
// What lies between sheets is read in the background meanwhile.
await new Promise((done) => setTimeout(done, 12_000));

const times = [];
const bare = [];
for (let version = 2; version < 502; version++) {
  const isIn = version % 2 === 0;
  const next = found(version);
  const start = performance.now();
  await client.sendNotification('textDocument/didChange', {
    textDocument: { uri, version },
    contentChanges: [
      isIn
        ? { range: { start: at, end: at }, text: 'e' }
        : { range: { start: at, end: { ...at, character: at.character + 1 } }, text: '' },
    ],
  });
  await next;
  times.push(performance.now() - start);
  if (version % 5 === 0) {
    const from = performance.now();
    const front = processor.parse(text).children[0];
    parseDocument(front.value);
    bare.push(performance.now() - from);
  }
}
tell('change to findings', times);
tell('bare parsing of the same text, between them', bare);

const textDocument = { uri };
const asked = async (title, count, method, params) => {
  const took = [];
  let answer = null;
  for (let i = 0; i < count; i++) {
    const start = performance.now();
    answer = await client.sendRequest(method, { textDocument, ...params });
    took.push(performance.now() - start);
  }
  const size = answer?.items?.length ?? answer?.length ?? 1;
  tell(`${title} (${size})`, took);
};
// As one types: each letter is followed by the question what may stand there.
const after = [];
for (let version = 502; version < 602; version++) {
  const isIn = version % 2 === 0;
  const end = { ...at, character: at.character + (isIn ? 0 : 1) };
  const next = found(version);
  await client.sendNotification('textDocument/didChange', {
    textDocument: { uri, version },
    contentChanges: [{ range: { start: at, end }, text: isIn ? ':' : '' }],
  });
  const start = performance.now();
  await client.sendRequest('textDocument/completion', {
    textDocument: { uri },
    position: { line, character: at.character + (isIn ? 1 : 0) },
  });
  after.push(performance.now() - start);
  await next;
}
tell('completion right after a letter', after);
const settings = lines.indexOf('settings:');
const value = lines.findIndex((each) => /^ {4}value: /.test(each));
await asked('completion of a setting', 100, 'textDocument/completion', {
  position: { line: settings + 1, character: 2 },
});
await asked('completion of a size', 100, 'textDocument/completion', {
  position: { line: value, character: 14 },
});
await asked('completion in the work', 100, 'textDocument/completion', {
  position: { line: line, character: at.character },
});
await asked('hover of a size', 100, 'textDocument/hover', {
  position: { line: value, character: 12 },
});
await asked('hover of a step', 100, 'textDocument/hover', { position: { line, character: 5 } });
await asked('references of a source', 20, 'textDocument/references', {
  position: { line: lines.indexOf('sources:') + 1, character: 3 },
  context: { includeDeclaration: true },
});
console.log(
  `memory ${Math.round(Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${server.pid}/status`, 'utf8'))?.[1] ?? 0) / 1024)} MB`,
);
await client.sendRequest('shutdown');
await client.sendNotification('exit');
client.dispose();
rmSync(folder, { recursive: true, force: true });

function ms(time) {
  return `${time.toFixed(1)} ms`;
}

function tell(title, all) {
  const sorted = [...all].sort((a, b) => a - b);
  const at = (share) => ms(sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]);
  console.log(`${title}: p50 ${at(0.5)}, p95 ${at(0.95)}, of ${all.length}`);
}
