import { rmSync } from 'node:fs';
import { join } from 'node:path';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { examineFile } from '../../src/project/examine-file.ts';
import { partFolder } from '../../src/project/part-store.ts';
import { openProject } from '../../src/project/project.ts';
import { cleanSheet, folderWith } from './folder.ts';

const withPicture = cleanSheet('a').replace(/^(1\. .*)$/m, '$1\n\n   ![A float](a.svg)');

function examined(root: string, store: ReturnType<typeof partFolder> | null) {
  const project = openProject(root, root);
  const found = examineFile(project, project.sheets()[0] ?? '', store);
  if (!found.ok) throw new Error(found.refused.message);
  return found;
}

function project() {
  return folderWith({
    'edition.yaml': 'gaugeleaf-edition: 1\ntitle: T\n',
    'sheets/a.md': withPicture,
    'sheets/a.svg': '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"/>',
  });
}

describe('a sheet that is kept', () => {
  test('comes back as it was read, exact numbers and all', () => {
    const root = project();
    const store = partFolder(folderWith());
    const anew = examined(root, null);
    const { digest, ...first } = examined(root, store);
    const again = examined(root, store);
    expect(first).toEqual(anew.digest === null ? { ...anew, digest: undefined } : anew);
    expect(again.digest).toBe(digest);
    expect(again.sheet).toEqual(first.sheet);
    // What marks mean comes back as the very things of the sheet and of the project's kind.
    expect(again.sheet.kind).toBe(first.sheet.kind);
    for (const [at, { setting }] of again.sheet.values.entries()) {
      expect(setting?.known).toBe(first.sheet.values[at]?.setting?.known);
      if (setting) expect([...again.sheet.settings.values()]).toContain(setting);
    }
    expect(again.sheet).not.toBe(first.sheet);
    expect(again.findings).toEqual(first.findings);
    // A number that came back as its parts alone could not be reckoned with.
    const numbers = (value: unknown): Fraction[] => {
      if (value instanceof Fraction) return [value];
      if (value instanceof Map) return [...value.values()].flatMap(numbers);
      return Array.isArray(value) ? value.flatMap(numbers) : [];
    };
    const flat = (sheet: object): unknown =>
      Object.values(sheet).map((each) =>
        each instanceof Map || Array.isArray(each)
          ? [...each.values()].flatMap((one) => flat(one as object))
          : each instanceof Object && !(each instanceof Fraction)
            ? flat(each)
            : each,
      );
    const { tree: _, ...again2 } = again.sheet;
    const found = numbers((flat(again2) as unknown[]).flat(Infinity));
    expect(found.length).toBeGreaterThan(0);
    expect(found.every((number) => number.mul(2).div(2).equals(number))).toBe(true);
  });

  test('is read anew when a picture of it is gone', () => {
    const root = project();
    const store = partFolder(folderWith());
    const before = examined(root, store);
    rmSync(join(root, 'sheets', 'a.svg'));
    const after = examined(root, store);
    expect(before.findings.map(({ check }) => check)).not.toContain('picture-unprintable');
    expect(after.findings.map(({ check }) => check)).toContain('picture-unprintable');
    expect(after.digest).not.toBe(before.digest);
  });

  test('is kept in a club with kinds of its own, and read anew when a kind changes', () => {
    const kind = (title: string) =>
      `gaugeleaf-kind: 1\nkind: pump\ntitle: ${title}\nalways:\n  settings: [[lift]]\nsettings:\n` +
      '  lift: { label: Lift, explain: How high., dimensions: [length] }\n' +
      'operations:\n  lift: { label: Lift, explain: How., stage: bench, settings: [lift] }\n';
    const folder = (title: string) =>
      folderWith({
        'edition.yaml': 'gaugeleaf-edition: 1\ntitle: T\n',
        'sheets/a.md': cleanSheet('a'),
        'kinds/pump.yaml': kind(title),
      });
    const store = partFolder(folderWith());
    expect(openProject(folder('Pump'), '/').kindFaults).toEqual([]);
    const first = examined(folder('Pump'), store);
    expect(first.digest).not.toBeNull();
    expect(examined(folder('Pump'), store).digest).toBe(first.digest);
    expect(examined(folder('Fuel pump'), store).digest).not.toBe(first.digest);
  });

  test('keeps what a directive says that looks like a mark of ours', () => {
    const text = cleanSheet('a').replace(
      /^(1\. .*)$/m,
      '$1 :state[bowl dry]{ofKind=kind name=carburetor}',
    );
    const root = folderWith({ 'edition.yaml': '', 'sheets/a.md': text });
    const store = partFolder(folderWith());
    const first = examined(root, store);
    const again = examined(root, store);
    expect(first.digest).not.toBeNull();
    expect(again.sheet).not.toBe(first.sheet);
    expect(again.sheet.tree).toEqual(first.sheet.tree);
    expect(JSON.stringify(again.sheet.tree)).toContain('"ofKind":"kind"');
  });

  test.each([
    ['wire-gauge', 'imperial'],
    ['altitude', '5000 ft'],
    ['measured-units', '3'],
    ['usual-order', 'false'],
    ['kit', '[leaf gauges 0.002 in to 0.02 in by 0.001 in]'],
  ])('is read anew when the edition says another %s', (key, value) => {
    const digestOf = (edition: string) => {
      const files = { 'edition.yaml': edition, 'sheets/a.md': cleanSheet('a') };
      return examined(folderWith(files), store).digest;
    };
    const store = partFolder(folderWith());
    const edition = 'gaugeleaf-edition: 1\ntitle: T\n';
    expect(digestOf(edition)).toBe(digestOf(`${edition}subtitle: S\n`));
    expect(digestOf(`${edition}${key}: ${value}\n`)).not.toBe(digestOf(edition));
  });
});
