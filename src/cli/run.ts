import { CommanderError } from 'commander';
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
    const program = buildProgram(io, (outcome) => {
      status = outcome;
    });
    if (argv.length === 0) {
      program.outputHelp({ error: true });
      return 2;
    }
    await program.parseAsync([...argv], { from: 'user' });
    return status;
  } catch (error) {
    // The argument parser has already said what was wrong; help and version come out here too.
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    tellMishap(error, io);
    return 2;
  }
}
