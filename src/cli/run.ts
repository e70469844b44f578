import { resolve } from 'node:path';
import { CommanderError } from 'commander';
import { isFolder, Refusal } from '../project/index.ts';
import type { Io } from './io.ts';
import { tellMishap } from './mishap.ts';
import { buildProgram } from './program.ts';

/** Everything was in order; findings stop the press; the command could not be carried out. */
export type ExitStatus = 0 | 1 | 2;

/**
 * Carries out one command line, program name left out, and returns its exit status. Writes only to
 * the streams of `io` and to files that the command names. Never throws.
 */
export async function run(argv: readonly string[], io: Io): Promise<number> {
  let status: ExitStatus = 0;
  try {
    const { rest, around } = inFolder(argv, io);
    const program = buildProgram(around, (outcome) => {
      status = outcome;
    });
    if (rest.length === 0) {
      program.outputHelp({ error: true });
      return 2;
    }
    await program.parseAsync([...rest], { from: 'user' });
    return status;
  } catch (error) {
    // The argument parser has already said what was wrong; help and version come out here too.
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    tellMishap(error, io);
    return 2;
  }
}

/** Takes `-C folder` off the head of a command line, as often as it stands there, and goes there. */
function inFolder(argv: readonly string[], io: Io): { rest: readonly string[]; around: Io } {
  let rest = argv;
  let cwd = io.cwd;
  while (rest[0] === '-C' || rest[0] === '--directory') {
    const [, folder = ''] = rest;
    const there = resolve(cwd, folder);
    if (folder === '' || !isFolder(there)) {
      throw new Refusal(
        `there is no folder ${folder || 'behind -C'}`,
        'for example: gaugeleaf -C club check',
      );
    }
    cwd = there;
    rest = rest.slice(2);
  }
  // Its standard input is opened by whoever reads it, and not by a copy.
  return { rest, around: cwd === io.cwd ? io : Object.create(io, { cwd: { value: cwd } }) };
}
