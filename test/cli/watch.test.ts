import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { describe, expect, test } from 'vitest';
import { check } from '../../src/cli/commands/check.ts';
import type { Checked } from '../../src/project/checked-sheet.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';
import { watching } from './watching.ts';

const wrong = (sheet: string) => cleanSheet(sheet).replace('from: m48 p. 40', 'from: m84 p. 40');

/** Saves as some editors do: the new text under another name, which then takes the old one's place. */
function saveByRename(path: string, text: string): void {
  writeFileSync(`${path}.new~`, text);
  renameSync(`${path}.new~`, path);
}

/** Saves as others do: the old file is put aside first. */
function saveWithBackup(path: string, text: string): void {
  renameSync(path, `${path}~`);
  writeFileSync(path, text);
}

describe('check --watch', () => {
  test('checks again at every save, in place, by rename and with a backup', async () => {
    const folder = folderWith({
      'sheets/one.md': cleanSheet('one'),
      'sheets/two.md': cleanSheet('two'),
    });
    const one = join(folder, 'sheets/one.md');
    const watched = watching(['check', '--watch'], folder);
    expect(await watched.round()).toBe('No findings in 2 sheets\n');
    for (const save of [writeFileSync, saveByRename, saveWithBackup]) {
      save(one, wrong('one'));
      const told = await watched.round();
      expect(told).toContain('changed: sheets/one.md');
      expect(told).toContain('source-unknown');
      expect(told).toContain('1 error in 1 of 2 sheets');
      save(one, cleanSheet('one'));
      expect(await watched.round()).toMatch(
        /changed: sheets\/one\.md[\s\S]*No findings in 2 sheets\n$/,
      );
    }
    expect(await watched.end()).toBe(0);
  });

  test('sees new files and gone ones, and what holds for all sheets', async () => {
    const folder = folderWith({
      'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Settings\n',
      'sheets/one.md': cleanSheet('one'),
    });
    const watched = watching(['check', '-w'], folder);
    expect(await watched.round()).toContain('No findings in 1 sheet');
    writeFileSync(join(folder, 'sheets/two.md'), wrong('two'));
    expect(await watched.round()).toContain('1 error in 1 of 2 sheets');
    rmSync(join(folder, 'sheets/two.md'));
    expect(await watched.round()).toContain('No findings in 1 sheet');
    writeFileSync(join(folder, 'edition.yaml'), 'gaugeleaf-edition: 1\ntitel: Settings\n');
    expect(await watched.round()).toContain('edition-invalid');
    mkdirSync(join(folder, 'kinds'));
    writeFileSync(join(folder, 'kinds/odd.yaml'), 'no-such-key: 1\n');
    expect(await watched.round()).toContain('kind-invalid');
    expect(await watched.end()).toBe(1);
  });

  test('says of every sheet what a whole check says, whatever changed before', async () => {
    const variant = `---
gaugeleaf: 1
sheet: export
based-on: base
title: Export
unit: { model: F28 }
revision: 1
date: 2026-10-03
status: draft
settings: { idle-mixture: { value: 1 turn out, from: m48 p. 40 } }
---

# Export
`;
    const folder = folderWith({
      'sheets/base.md': cleanSheet('base'),
      'sheets/export.md': variant,
      'sheets/other.md': cleanSheet('other'),
    });
    const watched = watching(['check', '--watch', '--all'], folder);
    await watched.round();
    const texts = [wrong('base'), cleanSheet('base'), cleanSheet('base').replace('p. 40', 'p. 41')];
    for (const [file, text] of [
      ...texts.map((text) => ['base', text] as const),
      ['export', variant.replace('1 turn', '2 turns')] as const,
      ['other', wrong('other')] as const,
    ]) {
      saveByRename(join(folder, `sheets/${file}.md`), text);
      const told = (await watched.round()).replace(/^changed: .*\n/, '');
      const whole = await gaugeleaf(['check', '--all'], { cwd: folder });
      expect(told).toBe(whole.out);
    }
    expect(await watched.end()).toBe(1);
  });

  test('takes no notice of what editors keep beside a sheet, nor of what is printed', async () => {
    const folder = folderWith({ 'sheets/one.md': cleanSheet('one') });
    const watched = watching(['check', '--watch', 'sheets/one.md'], folder);
    await watched.round();
    mkdirSync(join(folder, 'print'));
    for (const name of [
      'print/one.pdf',
      'sheets/.one.md.swp',
      'sheets/one.md~',
      'sheets/4913',
      'notes.txt',
    ])
      writeFileSync(join(folder, name), 'x');
    writeFileSync(join(folder, 'sheets/one.md'), wrong('one'));
    expect(await watched.round()).toMatch(/^changed: sheets\/one\.md\n/);
    expect(await watched.end()).toBe(1);
  });

  test('watches a sheet that lies in no project', async () => {
    const folder = folderWith({ 'loose.md': cleanSheet('loose') });
    const watched = watching(['check', '--watch', 'loose.md'], folder);
    expect(await watched.round()).toContain('No findings in 1 sheet');
    saveByRename(join(folder, 'loose.md'), wrong('loose'));
    expect(await watched.round()).toContain('1 error in 1 sheet');
    expect(await watched.end()).toBe(1);
  });

  test('goes on where a file cannot be read, and refuses what never can be', async () => {
    const folder = folderWith({ 'sheets/one.md': cleanSheet('one') });
    const one = join(folder, 'sheets/one.md');
    const text = readFileSync(one);
    const watched = watching(['check', '--watch', 'oen.md'], folder);
    await expect(watched.round()).rejects.toThrow(/there is no/);
    const again = watching(['check', '--watch', 'sheets/one.md'], folder);
    await again.round();
    writeFileSync(one, Buffer.from([0xff, 0xfe, 0x00]));
    expect(await again.round()).not.toContain('No findings');
    writeFileSync(one, text);
    expect(await again.round()).toContain('No findings in 1 sheet');
    expect(await again.end()).toBe(0);
    const fix = await gaugeleaf(['check', '--watch', '--fix'], { cwd: folder });
    expect([fix.status, fix.err]).toEqual([2, expect.stringContaining('--fix and --watch')]);
  });

  test('examines only what is not kept', async () => {
    const folder = folderWith({
      'sheets/one.md': cleanSheet('one'),
      'sheets/two.md': cleanSheet('two'),
    });
    const kept = new Map<string, Checked>();
    const examined: string[] = [];
    const store = {
      get: (path: string) => kept.get(path),
      set: (path: string, checked: Checked) => {
        examined.push(path);
        kept.set(path, checked);
      },
    };
    const io = {
      stdout: { write: () => {} },
      stderr: { write: () => {} },
      stdin: Readable.from([]),
      env: {},
      cwd: folder,
      today: () => '2026-10-03',
    };
    await check([], { format: 'text', kept: store }, io);
    expect(examined.length).toBe(2);
    kept.delete(join(folder, 'sheets/two.md'));
    await check([], { format: 'text', kept: store }, io);
    expect(examined.length).toBe(3);
  });
});
