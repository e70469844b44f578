import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { listSheets } from '../../src/project/list-sheets.ts';
import { findPicture, pictureData } from '../../src/project/pictures.ts';
import { longestText, readText } from '../../src/project/read-text.ts';
import { Refusal } from '../../src/project/refusal.ts';
import { findRoot } from '../../src/project/root.ts';
import { locate } from '../../src/project/safe-path.ts';
import { writeWhole } from '../../src/project/write-whole.ts';
import { folderWith } from './folder.ts';

const png = Buffer.from('89504e470d0a1a0a0000000d', 'hex');

describe('reading a file', () => {
  it('refuses what is no file, in plain words', () => {
    const folder = folderWith({ 'big.md': Buffer.alloc(longestText + 1, 'a') });
    mkdirSync(join(folder, 'x.md'));
    execFileSync('mkfifo', [join(folder, 'pipe.md')]);
    const say = (name: string) => {
      const read = readText(join(folder, name), name);
      return read.ok ? 'read' : read.message;
    };
    expect(say('x.md')).toBe('x.md is a folder, not a file');
    expect(say('pipe.md')).toBe('pipe.md is not an ordinary file');
    expect(say('none.md')).toBe('none.md cannot be read: there is no such file');
    expect(say('big.md')).toBe('big.md has 1048577 bytes; a file of more than 1048576 is not read');
  });

  it('reads a file of exactly the longest size', () => {
    const folder = folderWith({ 'long.md': Buffer.alloc(longestText, 'a') });
    expect(readText(join(folder, 'long.md')).ok).toBe(true);
  });
});

describe('staying inside the project', () => {
  it('finds what lies inside, and nothing by a name that leads out', () => {
    const root = folderWith({ 'sheets/pictures/a.png': png, 'sheets/a.md': '' });
    const from = join(root, 'sheets');
    expect(locate(root, from, 'pictures/a.png').status).toBe('found');
    expect(locate(root, from, '../sheets/a.md').status).toBe('found');
    expect(locate(root, from, '../../etc/passwd').status).toBe('outside');
    expect(locate(root, from, '/etc/passwd').status).toBe('outside');
    expect(locate(root, from, 'none.png').status).toBe('missing');
    expect(locate(root, from, 'a\0.png').status).toBe('missing');
  });

  it('follows links only where they stay inside', () => {
    const outside = folderWith({ 'secret.png': png });
    const root = folderWith({ 'sheets/pictures/a.png': png });
    symlinkSync(join(outside, 'secret.png'), join(root, 'sheets/pictures/out.png'));
    symlinkSync(outside, join(root, 'sheets/away'));
    symlinkSync('a.png', join(root, 'sheets/pictures/in.png'));
    const from = join(root, 'sheets');
    expect(locate(root, from, 'pictures/out.png').status).toBe('outside');
    expect(locate(root, from, 'away/secret.png').status).toBe('outside');
    expect(locate(root, from, 'pictures/in.png').status).toBe('found');
  });
});

describe('pictures', () => {
  const root = () =>
    folderWith({
      'sheets/a.md': '',
      'sheets/pictures/a b.png': png,
      'sheets/pictures/lie.png': 'GIF89a, in truth',
      'sheets/pictures/drawing.svg': '<svg xmlns="http://www.w3.org/2000/svg"/>',
      'sheets/pictures/notes.txt': 'words',
    });
  const status = (folder: string, url: string) =>
    findPicture(folder, join(folder, 'sheets/a.md'), url).status;

  it('says of every address what it is', () => {
    const folder = root();
    mkdirSync(join(folder, 'sheets/pictures/folder.png'));
    expect(status(folder, 'pictures/a%20b.png')).toBe('found');
    expect(status(folder, 'pictures/drawing.svg#part')).toBe('found');
    expect(status(folder, 'pictures/none.png')).toBe('missing');
    expect(status(folder, 'pictures/%zz.png')).toBe('missing');
    expect(status(folder, 'pictures/notes.txt')).toBe('unsupported');
    expect(status(folder, 'pictures/folder.png')).toBe('unsupported');
    expect(status(folder, 'data:image/png;base64,AAAA')).toBe('unsupported');
    expect(status(folder, 'https://example.org/a.png')).toBe('remote');
    expect(status(folder, '//example.org/a.png')).toBe('remote');
    expect(status(folder, 'file:///etc/passwd')).toBe('outside');
    expect(status(folder, 'C:/windows/win.png')).toBe('outside');
    expect(status(folder, '../../secret.png')).toBe('outside');
    expect(status(folder, '..%2f..%2fsecret.png')).toBe('outside');
  });

  it('turns a picture into data, if its bytes are what its name says', () => {
    const folder = root();
    const sheet = join(folder, 'sheets/a.md');
    expect(pictureData(folder, sheet, 'pictures/a%20b.png')?.dataUri).toBe(
      `data:image/png;base64,${png.toString('base64')}`,
    );
    expect(pictureData(folder, sheet, 'pictures/drawing.svg')?.dataUri).toMatch(
      /^data:image\/svg\+xml;base64,/,
    );
    expect(pictureData(folder, sheet, 'pictures/lie.png')).toBeNull();
    expect(pictureData(folder, sheet, '../../secret.png')).toBeNull();
  });
});

describe('finding the project and its sheets', () => {
  it('goes up to the nearest folder that is one', () => {
    const folder = folderWith({ 'club/edition.yaml': 'title: x', 'club/sheets/deep/a.md': '' });
    expect(findRoot(join(folder, 'club/sheets/deep/a.md'))).toBe(join(folder, 'club'));
    expect(findRoot(join(folder, 'club/sheets'))).toBe(join(folder, 'club'));
    const lone = folderWith({ 'lone/a.md': '' });
    expect(findRoot(join(lone, 'lone/a.md'))).toBe(join(lone, 'lone'));
  });

  it('lists sheets in byte order, folders named like sheets too, hidden ones not', () => {
    const root = folderWith({
      'sheets/b.md': '',
      'sheets/B.md': '',
      'sheets/a.md': '',
      'sheets/é.md': '',
      'sheets/.hidden.md': '',
      'sheets/notes.txt': '',
      'sheets/pictures/p.md': '',
    });
    mkdirSync(join(root, 'sheets/x.md'));
    const names = listSheets(root).map((path) => path.slice(root.length + 8));
    expect(names).toEqual(['B.md', 'a.md', 'b.md', 'x.md', 'é.md']);
  });

  it('looks through a plain folder and those below it', () => {
    const folder = folderWith({
      'z.md': '',
      'a/b.md': '',
      'node_modules/c.md': '',
      '.git/d.md': '',
    });
    expect(listSheets(folder)).toEqual([join(folder, 'a/b.md'), join(folder, 'z.md')]);
  });
});

describe('writing whole', () => {
  it('makes the folder, keeps the mode, leaves nothing beside', () => {
    const folder = folderWith({ 'a.md': 'old' });
    chmodSync(join(folder, 'a.md'), 0o640);
    writeWhole(join(folder, 'a.md'), 'new\r\n', { within: folder });
    writeWhole(join(folder, 'print/deep/b.pdf'), new Uint8Array([1, 2, 3]), { within: folder });
    expect(readFileSync(join(folder, 'a.md'), 'utf8')).toBe('new\r\n');
    expect(statSync(join(folder, 'a.md')).mode & 0o777).toBe(0o640);
    expect([...readFileSync(join(folder, 'print/deep/b.pdf'))]).toEqual([1, 2, 3]);
    expect(readdirSync(folder).sort()).toEqual(['a.md', 'print']);
  });

  it('writes through a link and leaves the link', () => {
    const folder = folderWith({ 'real.md': 'old' });
    symlinkSync('real.md', join(folder, 'link.md'));
    writeWhole(join(folder, 'link.md'), 'new', { within: folder });
    expect(lstatSync(join(folder, 'link.md')).isSymbolicLink()).toBe(true);
    expect(readFileSync(join(folder, 'real.md'), 'utf8')).toBe('new');
  });

  it('refuses in plain words, with the old file whole and nothing beside it', () => {
    const folder = folderWith({ 'keep.md': 'old' });
    mkdirSync(join(folder, 'x.md'));
    expect(() => writeWhole(join(folder, 'x.md'), 'new', { within: folder })).toThrow(Refusal);
    expect(() => writeWhole(join(folder, 'x.md'), 'new', { within: folder })).toThrow(
      'it is a folder',
    );
    expect(() => writeWhole(join(folder, 'keep.md/below.md'), 'new', { within: folder })).toThrow(
      Refusal,
    );
    writeFileSync(join(folder, `.keep.md.${process.pid}-999.partial`), 'left by another');
    expect(readFileSync(join(folder, 'keep.md'), 'utf8')).toBe('old');
    expect(readdirSync(folder)).toHaveLength(3);
  });

  it('a reader sees the old text or the new one, never a part', () => {
    const folder = folderWith({ 'a.md': 'A'.repeat(200_000) });
    const path = join(folder, 'a.md');
    // The file that is replaced is never opened for writing: whoever holds it still reads all of it.
    const before = statSync(path).ino;
    writeWhole(path, 'B'.repeat(200_000), { within: folder });
    expect(statSync(path).ino).not.toBe(before);
    expect(readFileSync(path, 'utf8')).toBe('B'.repeat(200_000));
  });

  it('writes nothing over what another has saved since it was read', () => {
    const folder = folderWith({ 'a.md': 'theirs' });
    const path = join(folder, 'a.md');
    expect(() => writeWhole(path, 'ours', { within: folder, was: 'before' })).toThrow(
      'saved by another program meanwhile',
    );
    expect(readFileSync(path, 'utf8')).toBe('theirs');
    expect(readdirSync(folder)).toEqual(['a.md']);
    writeWhole(path, 'ours', { within: folder, was: 'theirs' });
    expect(readFileSync(path, 'utf8')).toBe('ours');
  });
});
