import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const base = 'orlo-f27-wexcombe-four';
const files = { [`sheets/${base}.md`]: cleanSheet(base) };

test('a variant takes everything from its base, and says what differs', async () => {
  const cwd = folderWith(files);
  const made = await gaugeleaf(
    ['draft', '--based-on', base, '--out', 'sheets/orlo-f28.md', '--title', 'Orlo F28: export'],
    { cwd },
  );
  expect(made).toMatchObject({ status: 0, out: 'sheets/orlo-f28.md\n' });
  const path = join(cwd, 'sheets/orlo-f28.md');
  const text = readFileSync(path, 'utf8');
  expect(text).toContain('title: "Orlo F28: export"\nbased-on: orlo-f27-wexcombe-four\n');
  expect((await gaugeleaf(['check', 'sheets/orlo-f28.md'], { cwd })).out).toContain('No findings');
  writeFileSync(
    path,
    text.replace(
      'status: draft\n',
      'status: draft\nsettings:\n  float-level: { value: 7/32 in, from: m48 p. 2 }\n',
    ),
  );
  expect((await gaugeleaf(['check', 'sheets/orlo-f28.md'], { cwd })).status).toBe(0);
});

test('a new kind is one that sheets can be drafted for', async () => {
  const cwd = folderWith(files);
  const made = await gaugeleaf(['draft', '--new-kind', 'vacuum-pump', '--title', 'Vacuum pump'], {
    cwd,
  });
  expect(made).toMatchObject({ status: 0, out: 'kinds/vacuum-pump.yaml\n' });
  const sheet = await gaugeleaf(
    ['draft', '--kind=vacuum-pump', '--maker=Orlo', '--model=P29', '--features='],
    { cwd },
  );
  expect(sheet).toMatchObject({ status: 0, out: 'sheets/orlo-p29.md\n' });
  expect(readFileSync(join(cwd, 'sheets/orlo-p29.md'), 'utf8')).toContain(':value[first-setting]');
  const check = await gaugeleaf(['check', 'kinds/vacuum-pump.yaml'], { cwd });
  expect(check).toMatchObject({ status: 0, out: expect.stringContaining('No findings') });
});

test.each([
  [['draft', '--based-on', base], 'a variant needs a name'],
  [['draft', '--based-on', base, '--out', 'sheets/A B.md'], 'A B cannot be the name of a sheet'],
  [['draft', '--based-on', base, '--out', `sheets/${base}.md`], 'a draft never replaces a file'],
  [['draft', '--new-kind', '../x'], '../x cannot be the name of a kind'],
  [['draft', '--new-kind', 'carburetor'], 'there is a kind carburetor already'],
  [
    ['draft', '--title', 'x', '--kind', 'carburetor'],
    '--title is for a variant, a kind or a new folder',
  ],
])('refuses %j', async (argv, said) => {
  const refused = await gaugeleaf(argv, { cwd: folderWith(files) });
  expect(refused.status).toBe(2);
  expect(refused.err).toContain(said);
});
