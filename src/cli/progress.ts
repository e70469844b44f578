import type { Io } from './io.ts';

/** Says how far a command has come. */
export interface Progress {
  /** Shows what is being done, in place of what was shown before. */
  show(message: string): void;
  /** Takes the line away again. */
  clear(): void;
}

/** Below this nobody waits (milliseconds). */
const patience = 1000;
/** No oftener than this is a line rewritten (milliseconds). */
const pace = 100;

/** Progress on a terminal, from the second second on; elsewhere nothing. */
export function startProgress(io: Io): Progress {
  if (io.stderr.isTTY !== true) return { show: () => {}, clear: () => {} };
  const start = performance.now();
  let last = 0;
  let shown = false;
  return {
    show(message) {
      const now = performance.now();
      if (now - start < patience || now - last < pace) return;
      last = now;
      shown = true;
      io.stderr.write(`\r\u001b[K${message.slice(0, (io.stderr.columns ?? 80) - 1)}`);
    },
    clear() {
      if (shown) io.stderr.write('\r\u001b[K');
      shown = false;
    },
  };
}
