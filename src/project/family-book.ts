import { readdirSync } from 'node:fs';
import { dirname } from 'node:path';
import type { FamilyBook, SheetText } from '../sheet/index.ts';
import { readText } from './read-text.ts';
import { locate } from './safe-path.ts';

/**
 * Finds the sheets that a sheet at an absolute path may be based on: those beside it, inside the
 * project at `root`. A base that has not changed is the same object each time, so that its variants
 * read it once. `show` tells how reports name a file.
 */
export function familyBooks(
  root: string,
  show: (path: string) => string,
): (sheetPath: string) => FamilyBook {
  const known = new Map<string, SheetText>();
  return (sheetPath) => ({
    find: (id) => {
      // A sheet's id and nothing else: never a path.
      if (!/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id) || id.length > 100) return null;
      const located = locate(root, dirname(sheetPath), `${id}.md`);
      if (located.status !== 'found') return null;
      const { path } = located;
      const file = show(path);
      const read = readText(path, file);
      if (!read.ok) return null;
      const before = known.get(path);
      if (before?.text === read.text) return before;
      const found = { file, text: read.text };
      known.set(path, found);
      return found;
    },
    names: () =>
      readdirSync(dirname(sheetPath))
        .filter((name) => /\.md$/i.test(name))
        .map((name) => name.slice(0, -3)),
  });
}
