import { PressStopped } from '../../press/index.ts';
import { makeFolder } from '../make-folder.ts';
import { causeInWords } from '../refusal.ts';
import { userCache } from '../user-cache.ts';

/**
 * The folder that one user's unpacked browser and font settings are kept in. Made if it is not there;
 * fails with `PressStopped` if it can't be.
 */
export function browserCache(
  env: Readonly<Record<string, string | undefined>>,
  platform: NodeJS.Platform,
): string {
  const folder = userCache(env, platform);
  try {
    // Nobody else may put a program where this one will look for it.
    makeFolder(folder, 0o700);
  } catch (error) {
    throw new PressStopped(
      `The folder ${folder}, where the browser for printing is unpacked, can't be made ` +
        `(${causeInWords(error)}). ` +
        'Set GAUGELEAF_CACHE to a folder that can be written.',
    );
  }
  return folder;
}
