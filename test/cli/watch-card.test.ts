import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { browserHere } from '../press/stand.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';
import { watching } from './watching.ts';

const browser = await browserHere();
if (typeof browser === 'string') console.warn(`Watching a card is not tested: ${browser}`);

const wrong = (sheet: string) => cleanSheet(sheet).replace('from: m48 p. 40', 'from: m84 p. 40');

describe.skipIf(typeof browser === 'string')('card --watch', () => {
  test('prints again at each save what it may alter, and goes on after an error', async () => {
    const folder = folderWith({
      'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Settings\n',
      'sheets/one.md': cleanSheet('one'),
      'sheets/two.md': cleanSheet('two'),
    });
    const card = (name: string) => join(folder, `print/${name}-card.pdf`);
    const watched = watching(['card', 'one', 'two', '--watch'], folder, process.env);
    expect(await watched.round()).toMatch(/one-card\.pdf[\s\S]*two-card\.pdf/);
    const before = readFileSync(card('one'));
    const one = join(folder, 'sheets/one.md');
    writeFileSync(`${one}~`, cleanSheet('one').replace('1-1/4 turns out', '1-1/2 turns out'));
    renameSync(`${one}~`, one);
    const told = await watched.round();
    expect(told).toContain('one-card.pdf');
    expect(told).not.toContain('two-card.pdf');
    const after = readFileSync(card('one'));
    expect(after.equals(before)).toBe(false);
    writeFileSync(one, wrong('one'));
    expect(await watched.round()).toContain('Nothing was printed');
    expect(readFileSync(card('one')).equals(after)).toBe(true);
    writeFileSync(join(folder, 'edition.yaml'), 'gaugeleaf-edition: 1\ntitle: Other settings\n');
    expect(await watched.round()).toContain('Nothing was printed');
    writeFileSync(one, cleanSheet('one'));
    expect(await watched.round()).toContain('one-card.pdf');
    expect(await watched.end()).toBe(0);
    // What was printed last is what the command prints by itself.
    await gaugeleaf(['card', 'one', '-o', 'alone.pdf'], { cwd: folder, env: process.env });
    expect(readFileSync(join(folder, 'alone.pdf')).equals(readFileSync(card('one')))).toBe(true);
  });
});

test('card --watch refuses standard output, and a sheet that is none', async () => {
  const folder = folderWith({ 'sheets/one.md': cleanSheet('one') });
  const out = await gaugeleaf(['card', 'one', '--watch', '-o', '-'], { cwd: folder });
  expect([out.status, out.err]).toEqual([2, expect.stringContaining('not to standard output')]);
  const none = await gaugeleaf(['card', 'oen', '--watch'], { cwd: folder });
  expect([none.status, none.err]).toEqual([2, expect.stringContaining('perhaps sheets/one.md')]);
  expect(existsSync(join(folder, 'print'))).toBe(false);
});
