import { copyFileSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checkFile, recallFile } from '../../src/project/checked-sheet.ts';
import { partFolder } from '../../src/project/part-store.ts';
import { openProject } from '../../src/project/project.ts';
import { cleanSheet, folderWith } from './folder.ts';

const wrong = cleanSheet('a').replace('13/64 in #', '13/64 in x #');
const withPicture = cleanSheet('a').replace(/^(1\. .*)$/m, '$1\n\n   ![A float](a.svg)');

function folder(text: string, more: Readonly<Record<string, string>> = {}): string {
  return folderWith({
    'edition.yaml': 'gaugeleaf-edition: 1\ntitle: T\n',
    'sheets/a.md': text,
    'sheets/a.svg': '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"/>',
    ...more,
  });
}

const checked = (root: string, store: ReturnType<typeof partFolder> | null, name = 'a') =>
  checkFile(openProject(root, root), join(root, 'sheets', `${name}.md`), store);

const recalled = (root: string, store: ReturnType<typeof partFolder>, name = 'a') =>
  recallFile(openProject(root, root), join(root, 'sheets', `${name}.md`), store);

describe('what was told of a sheet', () => {
  test('is known the next time, findings, facts and all', () => {
    const root = folder(wrong);
    const store = partFolder(folderWith());
    expect(recalled(root, store)).toBeNull();
    const first = checked(root, store);
    const anew = checked(root, null);
    if (!first.ok || !anew.ok) throw new Error('it is a sheet');
    expect(first.sheet.reports[0]?.findings.length).toBeGreaterThan(0);
    expect(first.sheet.stops).toBe(true);
    expect({ ...first.sheet, digest: null }).toEqual(anew.sheet);
    expect(recalled(root, store)).toEqual(first);
  });

  test.each<[string, (root: string) => void]>([
    ['its text', (root) => writeFileSync(join(root, 'sheets/a.md'), `${withPicture}\nMore.\n`)],
    ['its picture', (root) => rmSync(join(root, 'sheets/a.svg'))],
    [
      'the edition',
      (root) =>
        writeFileSync(
          join(root, 'edition.yaml'),
          'gaugeleaf-edition: 1\ntitle: T\nwire-gauge: imperial\n',
        ),
    ],
    [
      'the sources of all sheets',
      (root) =>
        writeFileSync(
          join(root, 'sources.yaml'),
          'gaugeleaf-sources: 1\nsources:\n  b9: { title: B, kind: manual }\n',
        ),
    ],
  ])('is not known any more when %s changed', (_, change) => {
    const root = folder(withPicture);
    const store = partFolder(folderWith());
    checked(root, store);
    expect(recalled(root, store)).not.toBeNull();
    change(root);
    expect(recalled(root, store)).toBeNull();
  });

  test('is not kept of a sheet that is based on another, which may change', () => {
    const root = folder(cleanSheet('a'), {
      'sheets/b.md': cleanSheet('b').replace('gaugeleaf: 1\n', 'gaugeleaf: 1\nbased-on: a\n'),
    });
    const store = partFolder(folderWith());
    const variant = checked(root, store, 'b');
    expect(variant.ok && variant.sheet.digest).toBeNull();
    expect(recalled(root, store, 'b')).toBeNull();
  });

  test('is checked anew where what is kept is damaged, or another sheet’s', () => {
    const root = folder(wrong, { 'sheets/b.md': cleanSheet('b') });
    const parts = folderWith();
    const store = partFolder(parts);
    const right = checked(root, store);
    const [own = ''] = readdirSync(parts);
    checked(root, store, 'b');
    const other = readdirSync(parts).find((name) => name !== own) ?? '';
    // Whole, and once right: under the other's name it would hide what is wrong.
    copyFileSync(join(parts, other), join(parts, own));
    expect(recalled(root, store)).toBeNull();
    expect(checked(root, store)).toEqual(right);
    const bytes = readFileSync(join(parts, own));
    bytes[40] = (bytes[40] ?? 0) ^ 1;
    writeFileSync(join(parts, own), bytes);
    expect(recalled(root, store)).toBeNull();
    expect(checked(root, store)).toEqual(right);
  });
});
