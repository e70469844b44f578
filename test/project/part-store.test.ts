import { readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { partFolder } from '../../src/project/part-store.ts';
import { folderWith } from './folder.ts';

const bytes = (text: string) => new Uint8Array(Buffer.from(text));
const textOf = (found: Uint8Array | null) => found && Buffer.from(found).toString();

describe('the store of printed parts', () => {
  test('gives back what it was given, and nothing else', () => {
    const store = partFolder(join(folderWith(), 'parts'));
    const name = store.nameOf('a chapter');
    expect(store.read(name)).toBeNull();
    store.keep(name, bytes('printed'));
    expect(textOf(store.read(name))).toBe('printed');
    expect(store.read(store.nameOf('another'))).toBeNull();
  });

  test.each([
    ['cut short', (whole: Buffer) => whole.subarray(0, -1)],
    ['empty', () => Buffer.alloc(0)],
    [
      'changed in one bit',
      (whole: Buffer) => Buffer.concat([whole.subarray(0, -1), Buffer.from([0x65])]),
    ],
  ])('takes a file that is %s for none', (_, damage) => {
    const folder = folderWith();
    const store = partFolder(folder);
    const name = store.nameOf('a chapter');
    store.keep(name, bytes('printed'));
    const path = join(folder, `${name}.part`);
    writeFileSync(path, damage(readFileSync(path)));
    expect(store.read(name)).toBeNull();
    store.keep(name, bytes('printed'));
    expect(textOf(store.read(name))).toBe('printed');
  });

  test('lets go of what was not used for longest', () => {
    const folder = folderWith();
    const store = partFolder(folder, 3 * (1000 + 32));
    for (let index = 0; index < 5; index++) {
      const name = store.nameOf(String(index));
      store.keep(name, new Uint8Array(1000));
      utimesSync(join(folder, `${name}.part`), index + 1, index + 1);
    }
    store.read(store.nameOf('0'));
    store.tidy();
    const left = ['0', '1', '2', '3', '4'].filter(
      (each) => store.read(store.nameOf(each)) !== null,
    );
    expect(left).toEqual(['0', '3', '4']);
  });

  test('clears away what a killed run left half written, once it is old', () => {
    const folder = folderWith({ 'x.1-1.partial': 'half', 'y.1-1.partial': 'half' });
    utimesSync(join(folder, 'x.1-1.partial'), 1, 1);
    partFolder(folder).tidy();
    expect(readdirSync(folder)).toEqual(['y.1-1.partial']);
  });

  test('does without where it can’t write', () => {
    const store = partFolder(join(folderWith({ file: '' }), 'file', 'parts'));
    store.keep(store.nameOf('a'), bytes('a'));
    store.tidy();
    expect(store.read(store.nameOf('a'))).toBeNull();
  });
});
