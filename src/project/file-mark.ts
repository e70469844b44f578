import { statSync } from 'node:fs';

/** How a file stands on the disk: changes with each save, by rename too; null where no ordinary file is. */
export function fileMark(path: string): string | null {
  const facts = statSync(path, { throwIfNoEntry: false, bigint: true });
  return facts?.isFile() === true ? `${facts.ino} ${facts.size} ${facts.mtimeNs}` : null;
}

/** The files that are new, other or gone, by two looks at how files stood. */
export function changedFiles(
  before: ReadonlyMap<string, string>,
  now: ReadonlyMap<string, string>,
): readonly string[] {
  return [...new Set([...before.keys(), ...now.keys()])].filter(
    (path) => before.get(path) !== now.get(path),
  );
}
