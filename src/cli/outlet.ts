import { join, resolve } from 'node:path';
import { isFolder, type Project } from '../project/index.ts';
import type { Io } from './io.ts';

/**
 * Where a print goes: `--out` as a file, or as a folder that exists or ends in a slash; `print/` of
 * the project without one.
 */
export function outlet(out: string | undefined, name: string, project: Project, io: Io): Outlet {
  const within = trusted(out, project, io);
  if (out === '-') return { path: null, within };
  if (out === undefined) return { path: join(project.root, 'print', name), within };
  const path = resolve(io.cwd, out);
  return { path: /[\\/]$/.test(out) || isFolder(path) ? join(path, name) : path, within };
}

/** Where something is written: a path, or standard output where it is null. */
export interface Outlet {
  readonly path: string | null;
  /** The folder that no link may lead it out of. */
  readonly within: string;
}

/** What no link may lead a file out of: what `--out` names, else the project. */
export function trusted(
  out: string | undefined,
  project: { readonly root: string },
  io: Io,
): string {
  return out === undefined ? project.root : resolve(io.cwd, out);
}
