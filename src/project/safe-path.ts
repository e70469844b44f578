import { lstatSync, realpathSync } from 'node:fs';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';

/** Whether `path` is `folder` or lies below it, by their names alone: no link is followed. */
export function isBelow(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way === '' || (way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way));
}

/** The outcome of looking for a file that a sheet or an edition names. */
export type Located =
  | { readonly status: 'found'; readonly path: string }
  | { readonly status: 'missing' | 'outside' };

/**
 * Finds a file that a project's own text names, and makes sure that it lies in the project: by
 * name first, so that nothing outside is even looked at, then with every link resolved. `root` is
 * the project's folder, `from` the folder that the name counts from; an absolute name is outside.
 */
export function locate(root: string, from: string, name: string): Located {
  if (name === '' || name.includes('\0')) return { status: 'missing' };
  if (isAbsolute(name)) return { status: 'outside' };
  const path = resolve(from, name);
  if (!isBelow(root, path)) return { status: 'outside' };
  let real: string;
  try {
    real = realpathSync(path);
  } catch {
    // A link that leads nowhere, or out to something that is not there, is missing either way.
    return { status: 'missing' };
  }
  let realRoot: string;
  try {
    realRoot = realpathSync(root);
  } catch {
    return { status: 'missing' };
  }
  if (!isBelow(realRoot, real)) return { status: 'outside' };
  return { status: 'found', path: real };
}

/**
 * The path, links resolved, at which a file would be written by that name, be it there or not. A link that
 * leads nowhere counts as the place it stands at: it is replaced and not followed.
 */
export function landing(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    const above = dirname(path);
    return above === path ? path : join(landing(above), basename(path));
  }
}

/** Whether something of that name exists, be it a link that leads nowhere. */
export function isTaken(path: string): boolean {
  try {
    lstatSync(path);
    return true;
  } catch {
    return false;
  }
}
