import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { cleanSheet, folderWith } from '../project/folder.ts';

const program = join(import.meta.dirname, '..', '..', 'dist', 'gaugeleaf.js');
const isBuilt = existsSync(program);
if (!isBuilt) console.warn('dist is not built: its threads are not tried');

function folder(): string {
  const sheets = Array.from({ length: 70 }, (_, index) => {
    const id = `s${String(index).padStart(2, '0')}`;
    const text = cleanSheet(id);
    return [`sheets/${id}.md`, index % 9 === 0 ? text.replace('13/64 in #', '13/46 in #') : text];
  });
  return folderWith({
    'edition.yaml': 'gaugeleaf-edition: 1\ntitle: T\n',
    ...Object.fromEntries(sheets),
  });
}

function check(cwd: string, cache: string, helpers: string, ...more: readonly string[]) {
  const env = { ...process.env, GAUGELEAF_CACHE: cache, GAUGELEAF_HELPERS: helpers };
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [program, 'check', '--format', 'json', ...more],
    { cwd, env, encoding: 'utf8' },
  );
  return { status, stdout, stderr };
}

describe.runIf(isBuilt)('check on several processors', () => {
  test('says the same to the byte, with threads or without, known or not', () => {
    const root = folder();
    const cache = folderWith();
    const alone = check(root, cache, '0', '--no-cache');
    expect(alone.status).toBe(1);
    expect(readdirSync(cache)).toEqual([]);
    expect(check(root, cache, '3')).toEqual(alone);
    expect(readdirSync(join(cache, 'parts')).length).toBeGreaterThan(70);
    expect(check(root, cache, '3')).toEqual(alone);
  });

  test('may be called twice at once, and killed, and leaves nothing that the next would take', async () => {
    const root = folder();
    const cache = folderWith();
    const env = { ...process.env, GAUGELEAF_CACHE: cache, GAUGELEAF_HELPERS: '2' };
    const start = () =>
      spawn(process.execPath, [program, 'check', '--format', 'json'], { cwd: root, env });
    const end = (child: ReturnType<typeof start>) =>
      new Promise<{ out: string; code: number | null; signal: string | null }>((resolve) => {
        let out = '';
        child.stdout.on('data', (text) => {
          out += text;
        });
        child.on('close', (code, signal) => resolve({ out, code, signal }));
      });
    // One is interrupted when the first sheets are kept, in the midst of the others.
    const killed = start();
    const ended = end(killed);
    const watch = setInterval(() => {
      if (!existsSync(join(cache, 'parts'))) return;
      clearInterval(watch);
      killed.kill('SIGINT');
    }, 5);
    const { code, signal } = await ended;
    clearInterval(watch);
    expect(signal === 'SIGINT' || code === 1).toBe(true);
    const [one, two] = await Promise.all([end(start()), end(start())]);
    const right = check(root, cache, '0', '--no-cache').stdout;
    expect(one.out).toBe(right);
    expect(two.out).toBe(right);
    expect(check(root, cache, '0').stdout).toBe(right);
  });
});
