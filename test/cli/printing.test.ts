import { chmodSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { browserFor } from '../../src/cli/printing.ts';
import { folderWith } from '../project/folder.ts';

/** What is said of the sandbox of a browser, with this environment and these streams. */
async function said(env: Readonly<Record<string, string>>, isTTY: boolean): Promise<string> {
  const path = join(folderWith(), 'chrome');
  writeFileSync(path, '');
  chmodSync(path, 0o755);
  let text = '';
  const stream = {
    write: (chunk: string | Uint8Array) => {
      text += String(chunk);
    },
    isTTY,
  };
  await browserFor(
    { browser: path },
    {
      stdout: stream,
      stderr: stream,
      stdin: process.stdin,
      env: { ...env, GAUGELEAF_CACHE: folderWith() },
      cwd: folderWith(),
      today: () => '2026-10-03',
    },
    { show: () => {}, done: () => {} } as never,
  );
  return text;
}

test('a line says on a terminal that the browser has no sandbox of its own, and why', async () => {
  expect(await said({ GAUGELEAF_NO_SANDBOX: '1' }, true)).toBe(
    'note: the browser prints without its own sandbox, as GAUGELEAF_NO_SANDBOX says; pages stay shut in from network and files.\n',
  );
  expect(await said({ GAUGELEAF_NO_SANDBOX: '1' }, false)).toBe('');
});

test.runIf(process.getuid?.() === 0)('root is told that it is root', async () => {
  expect(await said({}, true)).toContain('which it refuses to have when root starts it');
});

test.skipIf(process.getuid?.() === 0)('nothing is said where it has one', async () => {
  expect(await said({}, true)).toBe('');
});
