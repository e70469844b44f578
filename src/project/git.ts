import { spawnSync } from 'node:child_process';

/** What git printed, null where it failed; `fault` where it could not be run at all. */
export interface GitRun {
  readonly output: Buffer | null;
  readonly fault: NodeJS.ErrnoException | null;
}

/** Runs git in a folder, without a word of its own on the terminal. `most` bounds what it prints, in bytes. */
export function runGit(root: string, args: readonly string[], most?: number): GitRun {
  const { error, status, stdout } = spawnSync('git', ['-C', root, ...args], {
    ...(most === undefined ? {} : { maxBuffer: most }),
    stdio: ['ignore', 'pipe', 'ignore'],
    windowsHide: true,
  });
  if (error) return { output: null, fault: error };
  return { output: status === 0 ? stdout : null, fault: null };
}
