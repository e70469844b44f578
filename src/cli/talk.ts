import { createInterface } from 'node:readline/promises';
import { Refusal } from '../project/index.ts';
import type { Io } from './io.ts';

/** Asks a question until an answer will do; `read` refuses with `Refusal`. */
export type Ask = <T>(question: string, read: (text: string) => T) => Promise<T>;

/** Something that is asked for on a terminal. Fails with `Refusal` where the input ends before the last answer. */
export async function talking<T>(io: Io, about: (ask: Ask) => Promise<T>): Promise<T> {
  const talk = createInterface({
    input: io.stdin,
    output: io.stderr as NodeJS.WritableStream,
    terminal: io.stderr.isTTY === true,
  });
  // The end of the input, or an interrupt, would otherwise leave the question open for ever.
  const gone = new AbortController();
  talk.once('close', () => gone.abort());
  try {
    return await about(async (question, read) => {
      for (;;) {
        try {
          return read(await talk.question(question, { signal: gone.signal }));
        } catch (error) {
          if (gone.signal.aborted) throw new Refusal('no answer was given; nothing was written');
          if (!(error instanceof Refusal)) throw error;
          io.stderr.write(`${error.message}${error.hint === null ? '' : `; ${error.hint}`}\n`);
        }
      }
    });
  } finally {
    talk.close();
  }
}
