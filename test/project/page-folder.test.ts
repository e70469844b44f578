import { execFileSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { listName, writePages } from '../../src/project/page-folder.ts';
import { folderWith } from './folder.ts';

const first = [
  { path: 'fonts/a.woff2', content: new Uint8Array([1, 2, 3]) },
  { path: 'units/old.html', content: '<p>old' },
  { path: 'units/kept.html', content: '<p>kept' },
  { path: 'index.html', content: '<p>first' },
];
const second = [
  { path: 'fonts/a.woff2', content: new Uint8Array([1, 2, 3]) },
  { path: 'units/kept.html', content: '<p>kept' },
  { path: 'units/new name.html', content: '<p>new' },
  { path: 'index.html', content: '<p>second' },
];

function listing(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();
}

describe('a folder of pages', () => {
  test('is written whole, with a list that sha256sum reads', () => {
    const folder = join(folderWith(), 'new/site');
    expect(writePages(folder, first)).toEqual({ written: 4, removed: [], left: [] });
    expect(readFileSync(join(folder, 'fonts/a.woff2'))).toEqual(Buffer.from([1, 2, 3]));
    const checked = execFileSync('sha256sum', ['-c', listName], { cwd: folder, encoding: 'utf8' });
    expect(checked.split('\n').filter((line) => line.endsWith(': OK'))).toHaveLength(4);
  });

  test('a second run writes what has changed and takes away what it made and has no longer', () => {
    const folder = folderWith();
    writePages(folder, first);
    const before = statSync(join(folder, 'units/kept.html')).mtimeMs;
    expect(writePages(folder, second)).toEqual({
      written: 2,
      removed: ['units/old.html'],
      left: [],
    });
    expect(statSync(join(folder, 'units/kept.html')).mtimeMs).toBe(before);
    expect(listing(folder)).toEqual([
      listName,
      'fonts',
      'fonts/a.woff2',
      'index.html',
      'units',
      'units/kept.html',
      'units/new name.html',
    ]);
    expect(writePages(folder, second)).toEqual({ written: 0, removed: [], left: [] });
  });

  test('a stale page that somebody changed is left and named', () => {
    const folder = folderWith();
    writePages(folder, first);
    writeFileSync(join(folder, 'units/old.html'), '<p>mine now');
    expect(writePages(folder, second).left).toEqual(['units/old.html']);
    expect(readFileSync(join(folder, 'units/old.html'), 'utf8')).toBe('<p>mine now');
  });

  test('a file that no run wrote is not overwritten, and nothing is written beside it', () => {
    const folder = folderWith({ 'index.html': '<p>the club’s own', 'about.html': 'about' });
    expect(() => writePages(folder, first)).toThrow(
      `${join(folder, 'index.html')} is there and was not written by gaugeleaf`,
    );
    expect(listing(folder)).toEqual(['about.html', 'index.html']);
    mkdirSync(join(folder, 'other/index.html'), { recursive: true });
    expect(() => writePages(join(folder, 'other'), first)).toThrow('was not written by gaugeleaf');
  });

  test('other files in the folder stay', () => {
    const folder = folderWith({ 'about.html': 'about', 'units/map.png': 'map' });
    writePages(folder, first);
    writePages(folder, second);
    expect(readFileSync(join(folder, 'about.html'), 'utf8')).toBe('about');
    expect(existsSync(join(folder, 'units/map.png'))).toBe(true);
  });

  test('a list that leads out of the folder, or by a link, takes nothing away', () => {
    const outside = folderWith({ 'precious.html': '<p>old' });
    const folder = folderWith();
    writePages(folder, first);
    const digest = readFileSync(join(folder, listName), 'utf8').match(
      /^\S+(?= {2}units\/old)/m,
    )?.[0];
    const away = `../${outside.split('/').at(-1)}/precious.html`;
    writeFileSync(
      join(folder, listName),
      `${digest}  ${away}\n${digest}  ${outside}/precious.html\n${digest}  linked.html\nnonsense\n`,
      { flag: 'a' },
    );
    symlinkSync(join(outside, 'precious.html'), join(folder, 'linked.html'));
    const { removed, left } = writePages(folder, second);
    expect(removed).toEqual(['units/old.html']);
    expect(left).toEqual(['linked.html']);
    expect(existsSync(join(outside, 'precious.html'))).toBe(true);
  });

  test('a run that was stopped anywhere leaves files that the next one knows as its own', () => {
    // The second run cannot write its third file: a folder stands there that no list has.
    const folder = folderWith();
    writePages(folder, first);
    const stopping = second.map((file) =>
      file.path === 'index.html' ? { ...file, path: 'units/kept.html/index.html' } : file,
    );
    expect(() => writePages(folder, stopping)).toThrow('cannot be written');
    expect(readFileSync(join(folder, 'index.html'), 'utf8')).toBe('<p>first');
    expect(readFileSync(join(folder, 'units/new name.html'), 'utf8')).toBe('<p>new');
    // Everything is still known: the next edition takes the half-done page away.
    expect(writePages(folder, first).removed).toEqual(['units/new name.html']);
  });
});
