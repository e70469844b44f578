import { mkdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';

/**
 * Makes a folder and those above it that are missing; one that is there is left as it is. Fails with the
 * system's error. Node's own `recursive` never ends below a folder that takes none and says that it is
 * not there, as /proc does.
 */
export function makeFolder(path: string, mode = 0o777): void {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory() === true) return;
  const above = dirname(path);
  if (above !== path) makeFolder(above, mode);
  try {
    mkdirSync(path, { mode });
  } catch (error) {
    // Another process made it meanwhile, or a file is in the way.
    const there = (error as NodeJS.ErrnoException).code === 'EEXIST';
    if (!there || statSync(path, { throwIfNoEntry: false })?.isDirectory() !== true) throw error;
  }
}
