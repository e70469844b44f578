import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

let found: string | null = null;

/**
 * The folder of the installed package itself, where its templates, fonts and schemas lie: the same
 * whether the code runs from `src` or from the bundle in `dist`. Fails with an `Error` where the
 * package was taken apart.
 */
export function packageRoot(): string {
  if (found !== null) return found;
  let folder = dirname(fileURLToPath(import.meta.url));
  for (;;) {
    try {
      const described: unknown = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
      if ((described as { name?: unknown }).name === 'gaugeleaf') {
        found = folder;
        return folder;
      }
    } catch {
      // No package.json here, or another program's: look further up.
    }
    const up = dirname(folder);
    if (up === folder) throw new Error('gaugeleaf cannot find its own package.json');
    folder = up;
  }
}

/** The version that `package.json` states. */
export function packageVersion(): string {
  const described: unknown = JSON.parse(readFileSync(join(packageRoot(), 'package.json'), 'utf8'));
  return String((described as { version?: unknown }).version ?? 'unknown');
}
