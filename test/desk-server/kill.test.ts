import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ChangeSet } from '@codemirror/state';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { forNode } from '../../src/build/for-node.mjs';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { ask } from './at-desk.ts';

/*
 * The server is killed in the midst of typing, after a number of changes that a seed chooses, while further
 * ones are on their way. DESK_KILLS=50 tries as many moments; the suite has fewer.
 */
const kills = Number(process.env.DESK_KILLS ?? 4);
const root = fileURLToPath(new URL('../../', import.meta.url));
const id = 'orlo-f27-wexcombe-four';
const sheet = cleanSheet(id);
let program = '';

beforeAll(async () => {
  const cache = join(root, 'node_modules', '.cache');
  mkdirSync(cache, { recursive: true });
  program = join(mkdtempSync(join(cache, 'gaugeleaf-desk-')), 'desk.mjs');
  await build({
    ...forNode,
    absWorkingDir: root,
    stdin: {
      contents:
        "import { openDesk } from './src/desk-server/index.ts';" +
        'const [folder, cache] = process.argv.slice(2);' +
        "const run = async () => ({ status: 2, out: '', talk: '' });" +
        'const desk = await openDesk({ folder, cwd: folder, port: 0, cache, run });' +
        "process.stdout.write(desk.address() + '\\n');",
      resolveDir: root,
      loader: 'ts',
    },
    outfile: program,
    logLevel: 'silent',
  });
});

afterAll(() => rmSync(dirname(program), { recursive: true, force: true }));

/** A server of its own, as `gaugeleaf desk` has it. */
async function start(folder: string, cache: string) {
  const child = spawn(process.execPath, [program, folder, cache], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const address = await new Promise<URL>((done, failed) => {
    child.stdout.once('data', (chunk: Buffer) => done(new URL(String(chunk).trim())));
    child.once('exit', () => failed(new Error('the server ended at its start')));
  });
  const port = Number(address.port);
  const first = await ask(port, `${address.pathname}${address.search}`);
  const cookie = String(first.headers['set-cookie']).split(';')[0] ?? '';
  return { child, port, cookie, place: address.pathname };
}

test('a server that is killed loses nothing that it had taken, and tears no file', async () => {
  const folder = folderWith({ [`sheets/${id}.md`]: sheet });
  const cache = folderWith();
  let text = sheet;
  let seed = 20261130;
  const chance = (below: number) => {
    seed = (seed * 1103515245 + 12345) % 2147483648;
    return Math.floor((seed / 2147483648) * below);
  };
  let seat = '';
  for (let kill = 0; kill < kills; kill += 1) {
    const server = await start(folder, cache);
    const headers = {
      cookie: server.cookie,
      origin: `http://127.0.0.1:${server.port}`,
      'content-type': 'application/json',
    };
    const get = await ask(server.port, `${server.place}sheet/${id}`, { headers });
    const state = JSON.parse(get.text);
    // All that was taken is there; what was on its way when the server died may be.
    expect([text, `${text.slice(0, 4)}~${text.slice(4)}`]).toContain(state.text);
    text = state.text;
    // An open page finds the server where it was, and its cookie still counts.
    const now = `${server.port}${server.place}${server.cookie}`;
    if (kill > 0) expect(now).toBe(seat);
    seat = now;
    let version: number = state.version;
    const push = (before: string, insert: string) =>
      ask(server.port, `${server.place}sheet/${id}/push`, {
        method: 'POST',
        headers,
        body: JSON.stringify({
          version,
          updates: [
            { clientID: 'a', changes: ChangeSet.of({ from: 4, insert }, before.length).toJSON() },
          ],
        }),
      });
    const letters = 1 + chance(25);
    for (let letter = 0; letter < letters; letter += 1) {
      const answer = JSON.parse((await push(text, '~')).text);
      expect(answer.ok).toBe(true);
      version = answer.version;
      text = `${text.slice(0, 4)}~${text.slice(4)}`;
    }
    if (chance(4) === 0) {
      const saving = ask(server.port, `${server.place}sheet/${id}/save`, {
        method: 'POST',
        headers,
        body: '{}',
      });
      if (chance(2) === 0) await saving;
      else saving.catch(() => undefined);
    }
    const last = push(text, '~').catch(() => null);
    const ended = new Promise((done) => server.child.once('exit', done));
    if (chance(2) === 0) await new Promise((done) => setImmediate(done));
    server.child.kill('SIGKILL');
    await Promise.all([ended, last]);
    // The file is whole at every moment: the sheet with some number of letters put in.
    expect(readFileSync(join(folder, 'sheets', `${id}.md`), 'utf8').replace(/~+/, '')).toBe(
      sheet.replace(/~+/, ''),
    );
  }
  expect(text.length).toBeGreaterThan(sheet.length);
});
