import { visible } from '../text/index.ts';
import { type Io, say } from './io.ts';

/**
 * Says in one line why a command could not be carried out, and in a second what can be done.
 * Refusals and the press's own stops speak for themselves; anything else is the program's fault
 * and is said to be so, without a stack unless GAUGELEAF_DEBUG is set.
 */
export function tellMishap(error: unknown, io: Io): void {
  const name = error instanceof Error ? error.name : '';
  const message = error instanceof Error ? error.message : String(error);
  if (name === 'Refusal' || name === 'PressStopped') {
    say(io, `gaugeleaf: ${visible(message)}`);
    const hint = (error as { hint?: unknown }).hint;
    if (typeof hint === 'string') say(io, `           ${visible(hint)}`);
  } else {
    say(io, `gaugeleaf: a fault in the program, not in your sheets: ${visible(message)}`);
    say(
      io,
      '           please report it with the command you gave; GAUGELEAF_DEBUG=1 adds the details',
    );
  }
  if ((io.env.GAUGELEAF_DEBUG ?? '') !== '' && error instanceof Error && error.stack) {
    say(io, error.stack);
  }
}
