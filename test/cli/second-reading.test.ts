import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { PartStore } from '../../src/press/index.ts';
import { checkFile, openProject, recallFile } from '../../src/project/index.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const file = 'sheets/readings/orlo-f27.m48.yaml';
const reading = `gaugeleaf-reading: 1
sheet: orlo-f27
source: m48
by: A. Hale
date: 2026-11-14
pages:
  p. 31: { float-level: { value: 0.203 in, at: free end of the float, gasket: off } }
  p. 40: { idle-mixture: { value: 1-1/4 turns out } }
`;

function club(more: Readonly<Record<string, string>> = {}, status = 'released'): string {
  return folderWith({
    'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Settings\nsecond-reading: released\n',
    'sheets/orlo-f27.md': cleanSheet('orlo-f27').replace('status: proof', `status: ${status}`),
    [file]: reading,
    ...more,
  });
}

const check = (cwd: string, ...words: string[]) => gaugeleaf(['check', ...words], { cwd });

function alter(cwd: string, from: string, to: string, name = 'sheets/orlo-f27.md'): void {
  const path = join(cwd, name);
  const text = readFileSync(path, 'utf8');
  expect(text).toContain(from);
  writeFileSync(path, text.replace(from, to));
}

describe('an edition that asks for a second reading', () => {
  test('has its released sheets read twice, or nothing is printed', async () => {
    const cwd = club();
    const before = await check(cwd);
    expect(before.status).toBe(1);
    expect(before.out).toContain(
      '2 of 2 figures were read once, and this edition asks for two readings: `float-level` and `idle-mixture`',
    );
    expect(before.out).toContain('0 of 2 figures read twice');
    const card = await gaugeleaf(['card', 'orlo-f27'], { cwd });
    expect([card.status, card.err.includes('figure-read-once')]).toEqual([1, true]);
    expect((await gaugeleaf(['reread', file], { cwd })).status).toBe(0);
    const after = await check(cwd);
    expect([after.status, after.out]).toEqual([
      0,
      'No findings in 1 sheet\n2 of 2 figures read twice\n',
    ]);
  });

  test('asks nothing of a sheet in proof', async () => {
    expect((await check(club({}, 'proof'))).out).not.toContain('figure-read-once');
  });

  test.each([
    ['a figure', 'value: 13/64 in', 'value: 7/32 in'],
    ['its unit', '1-1/4 turns out', '7-1/2 flats out'],
    ['where it is measured', 'at: free end of the float', 'at: center of the float'],
    ['the state it is measured in', 'gasket: removed', 'gasket: fitted'],
    ['the page', 'm48 p. 31', 'm48 p. 32'],
  ])('%s that is changed loses its second reading', async (_, from, to) => {
    const cwd = club();
    await gaugeleaf(['reread', file], { cwd });
    alter(cwd, from, to);
    const { status, out } = await check(cwd);
    expect([status, out.includes('1 of 2 figures were read once')]).toEqual([1, true]);
  });

  test.each([
    [
      'a line that moves',
      '    gasket: removed\n    from: m48 p. 31\n',
      '    from: m48 p. 31\n    gasket: removed\n',
    ],
    ['a comment', ' # as the manual prints it', ''],
    ['an equivalent', 'gasket: removed\n', 'gasket: removed\n    also: [0.2031 in]\n'],
    ['a note', 'gasket: removed\n', 'gasket: removed\n    note: see the picture\n'],
    ['quotes', 'value: 13/64 in', "value: '13/64 in'"],
  ])('%s loses nothing', async (_, from, to) => {
    const cwd = club();
    await gaugeleaf(['reread', file], { cwd });
    alter(cwd, from, to);
    expect((await check(cwd)).out).toContain('2 of 2 figures read twice');
  });

  test('an answer that was altered after it was compared counts for nothing', async () => {
    const cwd = club();
    await gaugeleaf(['reread', file], { cwd });
    alter(cwd, '0.203 in', '0.303 in', file);
    expect((await check(cwd)).out).toContain('1 of 2 figures read twice');
  });

  test('a reading that names nobody counts for nothing', async () => {
    const cwd = club({ [file]: reading.replace('A. Hale', '') });
    await gaugeleaf(['reread', file], { cwd });
    expect((await check(cwd)).out).toContain('0 of 2 figures read twice');
  });

  test('tells who compiled the sheet and read it again', async () => {
    const cwd = club();
    await gaugeleaf(['reread', file], { cwd });
    alter(cwd, 'status: released', 'status: released\ncompiled-by: a. hale');
    const { status, out } = await check(cwd);
    expect([status, out.includes('read-by-same')]).toEqual([1, true]);
  });

  test('tells of a reading that is broken, at its place, and of one of no sheet', async () => {
    const cwd = club({
      'sheets/readings/b.m48.yaml': reading.replace('sheet: orlo-f27', 'sheet: orlo-f72'),
      'sheets/readings/c.m48.yaml': reading.replace('by: A. Hale', 'buy: A. Hale'),
      'sheets/readings/d.m48.yaml': 'gaugeleaf-reading: 1\nsheet: [\n',
    });
    const { status, out } = await check(cwd);
    expect(status).toBe(1);
    expect(out).toContain('this project has no sheet `orlo-f72`');
    expect(out).toContain('did you mean `orlo-f27`?');
    expect(out).toContain('buy');
    expect(out.match(/reading-invalid/g)?.length).toBeGreaterThanOrEqual(3);
  });
});

test('a second reading that lies outside of the project is told of, and not read', async () => {
  const cwd = club({}, 'proof');
  const outside = folderWith({ 'x.yaml': reading });
  await gaugeleaf(['reread', file], { cwd });
  symlinkSync(join(outside, 'x.yaml'), join(cwd, 'sheets/readings/orlo-f27.far.yaml'));
  const { status, out } = await check(cwd);
  expect([status, out.includes('a link that leads out of the project')]).toEqual([1, true]);
  expect(out).toContain('2 of 2 figures read twice');
});

test('what is known of a sheet is forgotten when its second readings change, and no other', () => {
  const cwd = club();
  mkdirSync(join(cwd, 'sheets'), { recursive: true });
  writeFileSync(join(cwd, 'sheets/orlo-g27.md'), cleanSheet('orlo-g27'));
  const kept = new Map<string, Uint8Array>();
  const store: PartStore = {
    nameOf: (text) => text,
    read: (name) => kept.get(name) ?? null,
    keep: (name, bytes) => void kept.set(name, bytes),
  } as PartStore;
  const [own, other] = ['sheets/orlo-f27.md', 'sheets/orlo-g27.md'].map((name) => join(cwd, name));
  for (const path of [own, other]) checkFile(openProject(cwd), path ?? '', store);
  const known = () =>
    [own, other].map((path) => recallFile(openProject(cwd), path ?? '', store) !== null);
  expect(known()).toEqual([true, true]);
  alter(cwd, '2026-11-14', '2026-11-15', file);
  expect(known()).toEqual([false, true]);
});
