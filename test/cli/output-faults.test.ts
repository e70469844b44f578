import { spawnSync } from 'node:child_process';
import { closeSync, existsSync, openSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { makeFolder } from '../../src/project/make-folder.ts';
import { folderWith } from '../project/folder.ts';

const program = join(import.meta.dirname, '..', '..', 'dist', 'gaugeleaf.js');

test.skipIf(!existsSync('/dev/full')).each([
  ['size', '13/64 in'],
  ['explain', 'sizes-disagree'],
])('%s on a full disk ends in 2 with one plain line', (...argv) => {
  const full = openSync('/dev/full', 'w');
  try {
    const { status, stderr } = spawnSync(process.execPath, [program, ...argv], {
      stdio: ['ignore', full, 'pipe'],
      encoding: 'utf8',
    });
    expect(stderr).toBe('gaugeleaf: what it writes cannot be taken: the disk is full\n');
    expect(status).toBe(2);
  } finally {
    closeSync(full);
  }
});

test('a folder is made with those above it, and one that is there is left', () => {
  const home = folderWith({ file: 'x' });
  makeFolder(join(home, 'a', 'b', 'c'));
  makeFolder(join(home, 'a', 'b', 'c'));
  expect(existsSync(join(home, 'a', 'b', 'c'))).toBe(true);
  expect(() => makeFolder(join(home, 'file', 'a'))).toThrow(/ENOTDIR|EEXIST/);
});

test.skipIf(!existsSync('/proc/self'))(
  'a folder that takes none is a fault, and no endless work',
  () => {
    expect(() => makeFolder('/proc/none/of/these')).toThrow(/ENOENT/);
  },
);
