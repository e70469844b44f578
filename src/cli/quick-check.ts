import { check } from './commands/check.ts';
import { type Format, formats } from './formats.ts';
import type { Io } from './io.ts';
import { tellMishap } from './mishap.ts';

export { helpCheck } from './check-helper.ts';

/**
 * `check` without the argument parser, whose loading takes as long as a third of Node's own start:
 * the exit status, or null where the arguments are anything but plainly right; then the parser has
 * to look at them, and has done nothing yet. Means the same as `run` wherever it is not null.
 */
export function quickCheck(argv: readonly string[], io: Io): Promise<number> | null {
  if (argv[0] !== 'check') return null;
  const paths: string[] = [];
  let format: Format = 'text';
  let fix = false;
  let all = false;
  let quiet = false;
  let cache = true;
  for (let index = 1; index < argv.length; index++) {
    const word = argv[index] ?? '';
    if (word === '--fix') fix = true;
    else if (word === '--no-cache') cache = false;
    else if (word === '--all' || word === '-a') all = true;
    else if (word === '--quiet' || word === '-q') quiet = true;
    else if (word === '--format' || word === '-f' || word.startsWith('--format=')) {
      const named = word.startsWith('--format=') ? word.slice(9) : (argv[++index] ?? '');
      const known = formats.find((each) => each === named);
      if (known === undefined) return null;
      format = known;
    } else if (word.startsWith('-') || word === '') return null;
    else paths.push(word);
  }
  return check(paths, { format, fix, all, quiet, cache }, io).catch((error: unknown) => {
    tellMishap(error, io);
    return 2;
  });
}
