import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const root = join(import.meta.dirname, '..', '..');

test('find tells places as other commands do, in 80 columns on a terminal', async () => {
  const { status, out, err } = await gaugeleaf(['find', '13/64'], { cwd: root });
  expect([status, err]).toEqual([0, '']);
  expect(out).toMatch(/^sheets\/orlo-t71-wexcombe-six\.md {2}Orlo T71/);
  expect(out).toMatch(/^ {2}\d+:12 +Float level +13\/64 ± 1\/64 in$/m);
  const shown = await gaugeleaf(['find', 'unloader'], {
    cwd: root,
    tty: true,
    env: { NO_COLOR: '1' },
  });
  expect(Math.max(...shown.out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
});

test('find gives data', async () => {
  const { out } = await gaugeleaf(['find', 'No.', '6', 'drill', '--json'], { cwd: root });
  const { query, found } = JSON.parse(out);
  expect(query).toBe('No. 6 drill');
  expect(found[0]).toMatchObject({
    sheet: 'orlo-t71-wexcombe-six',
    sort: 'size',
    setting: 'float-level',
    written: '13/64 ± 1/64 in',
    off: '0.001 in less',
  });
});

test('find ends with 1 where nothing is found, and with 2 where it cannot look', async () => {
  const nothing = await gaugeleaf(['find', 'zebra'], { cwd: root });
  expect([nothing.status, nothing.err]).toEqual([
    1,
    'gaugeleaf: zebra is found in none of 14 sheets\n',
  ]);
  const strange = await gaugeleaf(['find', '13/64', '--within', 'soon'], { cwd: root });
  expect(strange.err).toContain('--within soon says no distance');
  expect(strange.status).toBe(2);
  const folder = folderWith({ 'edition.yaml': 'gaugeleaf-edition: 1\ntitle: T\n' });
  expect((await gaugeleaf(['find', 'x'], { cwd: folder })).status).toBe(2);
});
