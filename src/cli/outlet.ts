import { join, resolve } from 'node:path';
import { isFolder, isTaken, type Project } from '../project/index.ts';
import type { Io } from './io.ts';

/**
 * Where a print goes: `--out` as a file, or as a folder that exists or ends in a slash; `print/` of
 * the project without one.
 */
export function outlet(out: string | undefined, name: string, project: Project, io: Io): Outlet {
  const within = trusted(out, project, io);
  const style = ownStyle(project);
  if (out === '-') return { path: null, within, style };
  if (out === undefined) return { path: join(project.root, 'print', name), within, style };
  const path = resolve(io.cwd, out);
  const isNamed = !/[\\/]$/.test(out) && !isFolder(path);
  return { path: isNamed ? path : join(path, name), within, style };
}

/** Where something is written: a path, or standard output where it is null. */
export interface Outlet {
  readonly path: string | null;
  /** The folder that no link may lead it out of. */
  readonly within: string;
  /** The club's own style, as reports show it, which may be why a print is not as it should be; null for none. */
  readonly style: string | null;
}

function ownStyle({ root, show }: Project): string | null {
  const style = join(root, 'templates', 'club.css');
  return isTaken(style) && isFolder(join(root, 'sheets')) ? show(style) : null;
}

/** What no link may lead a file out of: what `--out` names, else the project. */
export function trusted(
  out: string | undefined,
  project: { readonly root: string },
  io: Io,
): string {
  return out === undefined ? project.root : resolve(io.cwd, out);
}

/**
 * Where a blank to be filled in goes: a folder, in which its command names it, or the path that `--out` gives;
 * null for standard output. `folder` is the one below the project's root that such files have, beside sheets.
 */
export function blankPlace(
  out: string | undefined,
  root: string,
  folder: string,
  io: Io,
): { readonly folder: string } | { readonly path: string } | null {
  if (out === '-') return null;
  if (out === undefined)
    return { folder: isFolder(join(root, 'sheets')) ? join(root, folder) : io.cwd };
  const path = resolve(io.cwd, out);
  if (/[\\/]$/.test(out) || isFolder(path)) return { folder: path };
  return { path: /\.ya?ml$/i.test(path) ? path : `${path}.yaml` };
}
