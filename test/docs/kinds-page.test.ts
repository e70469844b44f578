import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { gaugeleaf } from '../cli/console.ts';
import { folderWith } from '../project/folder.ts';
import { markedBlocks, root } from './marked-blocks.ts';

// The kind on the page for users: tried, drafted from, and spoiled as somebody spoiled it who wrote one.
const [block] = markedBlocks(readFileSync(join(root, 'docs/kinds.md'), 'utf8')).filter(
  ({ mark }) => mark === 'kind',
);
const kind = block?.text ?? '';
const edition = 'gaugeleaf-edition: 1\ntitle: A club\n';

async function sheetOf(text: string): Promise<{ folder: string; sheet: string }> {
  const folder = folderWith({ 'edition.yaml': edition, 'kinds/fuel-pump.yaml': text });
  const features = '--features=rocker-arm';
  const made = ['draft', '--kind=fuel-pump', '--maker=Harl', '--model=P21', features];
  const { status, err } = await gaugeleaf([...made, '--out=sheets/harl-p21.md'], { cwd: folder });
  expect([status, err]).toEqual([0, expect.any(String)]);
  const path = join(folder, 'sheets', 'harl-p21.md');
  const sheet = readFileSync(path, 'utf8')
    .replace(/(arm-play:\n {4}value:) fill in/, '$1 0.010 in')
    .replace(/(delivery-pressure:\n {4}value:) fill in/, '$1 3 psi')
    .replace('speed: fill in', 'speed: 450 rpm')
    .replaceAll('{ title: fill in }', '{ title: Harl leaflet }')
    .replace(
      'How to tell it from its near relations goes here',
      'The tag stands under a cover screw',
    );
  writeFileSync(path, sheet);
  return { folder, sheet };
}

test('the kind of the page has nothing wrong or idle, and a sheet of it is clean', async () => {
  const { folder, sheet } = await sheetOf(kind);
  expect(sheet).not.toContain('fill in');
  const checked = await gaugeleaf(['check', 'kinds/fuel-pump.yaml'], { cwd: folder });
  expect(checked).toEqual({ status: 0, out: 'No findings in 1 file\n', err: '' });
  const found = await gaugeleaf(['check'], { cwd: folder });
  expect([found.status, found.out]).toEqual([0, 'No findings in 1 sheet\n']);
  expect((await gaugeleaf(['kind', 'fuel-pump'], { cwd: folder })).out).toContain('arm-play');
});

test('the page has every dimension that a setting may have', () => {
  const page = readFileSync(join(root, 'docs/kinds.md'), 'utf8');
  const schema = JSON.parse(readFileSync(join(root, 'schemas/kind.schema.json'), 'utf8'));
  const [, told = ''] = /^The dimensions: ([\s\S]*?)Keys that/m.exec(page) ?? [];
  expect([...told.matchAll(/`([a-z-]+)`/g)].map(([, name]) => name)).toEqual(
    schema.$defs.dimension.enum,
  );
});

test('a kind that forgets that its engine runs is told the key', async () => {
  const { folder } = await sheetOf(kind.replaceAll('    home-at-start: false\n', ''));
  const { out } = await gaugeleaf(['check'], { cwd: folder });
  expect(out).toContain('nothing brings the engine back from running before the engine is started');
  expect(out).toContain('write `home-at-start: false` beside `home:` of `engine` in its kind');
});
