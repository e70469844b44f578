import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { PressStopped } from '../../src/press/index.ts';
import { findBrowser } from '../../src/project/browser/find-browser.ts';
import { isQuick } from '../suite/part.ts';

const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-browser-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A folder for PATH with these programs in it. */
function programs(name: string, files: Record<string, string>): string {
  const path = join(folder, name);
  mkdirSync(path);
  for (const [file, text] of Object.entries(files)) {
    writeFileSync(join(path, file), text);
    chmodSync(join(path, file), 0o755);
  }
  return path;
}

const cache = join(folder, 'cache');
const linux = { platform: 'linux', arch: 'arm64' } as const;

describe.skipIf(process.platform === 'win32')('finding a browser', () => {
  test('a choice goes before what is installed, as a path or as a name', async () => {
    const path = programs('choice', { chromium: '#!/bin/sh', 'my-chrome': '#!/bin/sh' });
    const env = { PATH: path, GAUGELEAF_CACHE: cache };
    const named = await findBrowser('my-chrome', { env, ...linux });
    expect(named.path).toBe(join(path, 'my-chrome'));
    const placed = await findBrowser(join(path, 'my-chrome'), { env, ...linux });
    expect(placed.path).toBe(join(path, 'my-chrome'));
    const said = await findBrowser(undefined, {
      env: { ...env, GAUGELEAF_BROWSER: 'my-chrome' },
      ...linux,
    });
    expect(said.path).toBe(join(path, 'my-chrome'));
  });

  test('a choice that is not there is said, not passed over', async () => {
    const path = programs('unchosen', { chromium: '#!/bin/sh' });
    await expect(
      findBrowser('/no/such/chrome', { env: { PATH: path, GAUGELEAF_CACHE: cache }, ...linux }),
    ).rejects.toThrow('The browser that was chosen, "/no/such/chrome", is not there.');
  });

  test('an installed one is found on PATH, but no snap and no script that leads to one', async () => {
    const path = programs('installed', {
      'chromium-browser': '#!/bin/sh\nexec /snap/bin/chromium "$@"\n',
      'google-chrome': '#!/bin/sh\n',
    });
    symlinkSync('/nowhere/snap', join(path, 'chromium'));
    const found = await findBrowser(undefined, {
      env: { PATH: path, GAUGELEAF_CACHE: cache },
      ...linux,
    });
    expect(found.path).toBe(join(path, 'google-chrome'));
  });

  test('where there is none it says what to do', async () => {
    const missing = findBrowser(undefined, {
      env: { PATH: programs('empty', {}), GAUGELEAF_CACHE: cache },
      ...linux,
    });
    await expect(missing).rejects.toThrow(PressStopped);
    await expect(missing).rejects.toThrow(
      /There is no browser to print with\. .*linux on arm64.* Install Chromium, Google Chrome or Microsoft Edge/,
    );
  });

  test('a fallback font goes with it', async () => {
    const path = programs('fonts', { chromium: '#!/bin/sh' });
    const found = await findBrowser(undefined, {
      env: { PATH: path, GAUGELEAF_CACHE: cache },
      ...linux,
    });
    const settings = readFileSync(found.env.FONTCONFIG_FILE ?? '', 'utf8');
    const fonts = /<dir>(.*)<\/dir>/.exec(settings)?.[1] ?? '';
    expect(existsSync(join(fonts, 'sans-regular.ttf'))).toBe(true);
    expect(found.args).toEqual(process.getuid?.() === 0 ? ['--no-sandbox'] : []);
  });

  test('a cache that can’t be made is said', async () => {
    writeFileSync(join(folder, 'a-file'), '');
    const path = programs('nocache', { chromium: '#!/bin/sh' });
    await expect(
      findBrowser(undefined, {
        env: { PATH: path, GAUGELEAF_CACHE: join(folder, 'a-file', 'cache') },
        ...linux,
      }),
    ).rejects.toThrow(
      /can't be made \(a part of its path is a file, not a folder\)\. Set GAUGELEAF_CACHE/,
    );
  });

  test.skipIf(isQuick || process.platform !== 'linux' || process.arch !== 'x64')(
    'the packaged one is unpacked once, for its user alone',
    { timeout: 120_000 },
    async () => {
      const said: string[] = [];
      const search = {
        env: { PATH: '', GAUGELEAF_CACHE: join(folder, 'packaged') },
        onProgress: (message: string) => said.push(message),
      };
      const [first, second] = await Promise.all([
        findBrowser('packaged', search),
        findBrowser('packaged', search),
      ]);
      const third = await findBrowser('packaged', search);
      expect(first).toEqual(second);
      expect(third).toEqual(first);
      expect(said.length).toBe(2);
      expect(statSync(first.path).mode & 0o777).toBe(0o700);
      expect(statSync(join(folder, 'packaged')).mode & 0o077).toBe(0);
      expect(existsSync(join(first.env.LD_LIBRARY_PATH ?? '', 'libnss3.so'))).toBe(true);
    },
  );
});
