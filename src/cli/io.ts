import type { Worker } from 'node:worker_threads';
import { visibleLines } from '../text/index.ts';

/** A thread that does a part of the work. */
export type Helper = Pick<Worker, 'on' | 'postMessage' | 'terminate'>;

/** The part of an output stream that the commands need. */
export interface Output {
  write(chunk: string | Uint8Array): unknown;
  readonly isTTY?: boolean | undefined;
  readonly columns?: number | undefined;
}

/** What a command touches of the world: handed in, so that tests can watch all of it. */
export interface Io {
  readonly stdout: Output;
  readonly stderr: Output;
  readonly stdin: NodeJS.ReadableStream & { readonly isTTY?: boolean | undefined };
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Absolute. */
  readonly cwd: string;
  /** The day as YYYY-MM-DD, where the clock of this computer stands: only drafts carry it. */
  readonly today: () => string;
  /**
   * Waits for the user to ask the program to end, until `stop` is called. At all other times such a wish ends
   * it at once, whatever it does.
   */
  readonly untilInterrupted?: () => { readonly interrupted: Promise<void>; stop(): void };
  /** Told before work that takes seconds, so that the process can be made ready for it. */
  readonly expectLongWork?: () => void;
  /** Starts a thread that does a task; absent where all is done in one. */
  readonly startHelper?: (task: unknown) => Promise<Helper>;
  /** Whether what was found is kept for the next time, in the user's own folder; not, if absent. */
  readonly remembers?: boolean;
}

/**
 * Whether to color what goes to a stream: never with NO_COLOR set to anything (no-color.org), else
 * always with FORCE_COLOR (but `0` and `false`), else on a terminal that is not `dumb`.
 */
export function usesColor(io: Io, stream: Output): boolean {
  if ((io.env.NO_COLOR ?? '') !== '') return false;
  const force = io.env.FORCE_COLOR;
  if (force !== undefined && force !== '') return force !== '0' && force !== 'false';
  return stream.isTTY === true && io.env.TERM !== 'dumb';
}

/** Columns to break lines at: those of a terminal; null where output is piped. */
export function widthOf(stream: Output): number | null {
  return stream.isTTY === true ? (stream.columns ?? 80) : null;
}

/** One line of talk, on standard error. It may quote a file: nothing in it is obeyed by a terminal. */
export function say(io: Io, line: string): void {
  io.stderr.write(`${visibleLines(line)}\n`);
}

/**
 * Data on standard output: to a program or a file as it is, to a terminal with nothing in it that the
 * terminal would obey.
 */
export function hand(io: Io, data: string): void {
  io.stdout.write(io.stdout.isTTY === true ? visibleLines(data) : data);
}
