import { homedir } from 'node:os';
import { join } from 'node:path';

/**
 * The folder that one user's unpacked browser, printed parts and compiled code are kept in:
 * GAUGELEAF_CACHE, else where the system keeps caches. It need not be there yet.
 */
export function userCache(
  env: Readonly<Record<string, string | undefined>>,
  platform: NodeJS.Platform,
): string {
  if (env.GAUGELEAF_CACHE) return env.GAUGELEAF_CACHE;
  if (platform === 'darwin') return join(homedir(), 'Library', 'Caches', 'gaugeleaf');
  if (platform === 'win32') {
    return join(env.LOCALAPPDATA ?? join(homedir(), 'AppData', 'Local'), 'gaugeleaf', 'cache');
  }
  // XDG Base Directory Specification: a relative path there is to be ignored.
  const xdg = env.XDG_CACHE_HOME;
  return join(xdg?.startsWith('/') ? xdg : join(homedir(), '.cache'), 'gaugeleaf');
}
