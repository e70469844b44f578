import { Readable } from 'node:stream';
import { run } from '../../src/cli/run.ts';

/** A command that goes on until it is ended, and what it has written so far. */
export interface Watching {
  /** Ends with what was written since it was last asked, once it says that it watches. */
  round(): Promise<string>;
  /** Asks it to end, and gives its status. */
  end(): Promise<number>;
}

/** Starts a command that watches, in this process. */
export function watching(argv: readonly string[], cwd: string, env = {}): Watching {
  let written = '';
  let look: () => void = () => {};
  let interrupt: () => void = () => {};
  const interrupted = new Promise<void>((resolve) => {
    interrupt = resolve;
  });
  const stream = {
    write(chunk: string | Uint8Array) {
      written += typeof chunk === 'string' ? chunk : Buffer.from(chunk).toString('latin1');
      look();
    },
    isTTY: false,
    columns: 80,
  };
  const status = run(argv, {
    stdout: stream,
    stderr: stream,
    stdin: Readable.from([]),
    env,
    cwd,
    today: () => '2026-10-03',
    untilInterrupted: () => ({ interrupted, stop() {} }),
  });
  return {
    round: () =>
      new Promise((resolve, reject) => {
        look = () => {
          const at = written.indexOf('watching; Ctrl-C ends it\n');
          if (at === -1) return;
          const text = written.slice(0, at);
          written = written.slice(at + 'watching; Ctrl-C ends it\n'.length);
          look = () => {};
          resolve(text);
        };
        look();
        void status.then(() => reject(new Error(`it ended, and said: ${written}`)));
      }),
    end() {
      interrupt();
      return status;
    },
  };
}
