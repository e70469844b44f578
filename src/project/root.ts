import { statSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';

function isFile(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isFile() === true;
}

/** Whether a folder of that path exists. */
export function isFolder(path: string): boolean {
  try {
    return statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
  } catch {
    return false;
  }
}

/** Whether a folder is a project's: it holds `edition.yaml`, or a folder `sheets`. */
export function isProjectFolder(folder: string): boolean {
  try {
    return isFile(join(folder, 'edition.yaml')) || isFolder(join(folder, 'sheets'));
  } catch {
    return false;
  }
}

/**
 * The project that a file or folder belongs to: the nearest folder upward, itself included, that is
 * one; where there is none, the folder itself, or the folder that the file lies in.
 */
export function findRoot(start: string): string {
  const absolute = resolve(start);
  const first = isFolder(absolute) ? absolute : dirname(absolute);
  let folder = first;
  for (;;) {
    if (isProjectFolder(folder)) return folder;
    const up = dirname(folder);
    if (up === folder) return first;
    folder = up;
  }
}

/** A path as reports show it: from the working folder, parted by `/`. */
export function shownPath(path: string, cwd: string): string {
  const way = relative(cwd, resolve(cwd, path));
  return (way === '' ? '.' : way).split(sep).join('/');
}
