import { mkdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { PressStopped } from '../press/index.ts';

/**
 * The folder that one user's unpacked browser and font settings are kept in: GAUGELEAF_CACHE, else
 * where the system keeps caches. Made if it is not there; fails with `PressStopped` if it can't be.
 */
export function browserCache(
  env: Readonly<Record<string, string | undefined>>,
  platform: NodeJS.Platform,
): string {
  const folder = env.GAUGELEAF_CACHE ? env.GAUGELEAF_CACHE : usualFolder(env, platform);
  try {
    // Nobody else may put a program where this one will look for it.
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  } catch (error) {
    throw new PressStopped(
      `The folder ${folder}, where the browser for printing is unpacked, can't be made ` +
        `(${error instanceof Error && 'code' in error ? error.code : 'unknown reason'}). ` +
        'Set GAUGELEAF_CACHE to a folder that can be written.',
    );
  }
  return folder;
}

function usualFolder(
  env: Readonly<Record<string, string | undefined>>,
  platform: NodeJS.Platform,
): string {
  if (platform === 'darwin') return join(homedir(), 'Library', 'Caches', 'gaugeleaf');
  if (platform === 'win32') {
    return join(env.LOCALAPPDATA ?? join(homedir(), 'AppData', 'Local'), 'gaugeleaf', 'cache');
  }
  // XDG Base Directory Specification: a relative path there is to be ignored.
  const xdg = env.XDG_CACHE_HOME;
  return join(xdg?.startsWith('/') ? xdg : join(homedir(), '.cache'), 'gaugeleaf');
}
