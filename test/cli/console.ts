import { Readable } from 'node:stream';
import type { Io } from '../../src/cli/io.ts';
import { run } from '../../src/cli/run.ts';

/** What a command did: its exit status and all it wrote. */
export interface Outcome {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

interface Surroundings {
  readonly cwd: string;
  readonly input?: string;
  readonly env?: Io['env'];
  /** Whether the streams are a terminal's. */
  readonly tty?: boolean;
}

/** Carries out a command in this process, with streams that remember. */
export async function gaugeleaf(argv: readonly string[], around: Surroundings): Promise<Outcome> {
  const written = { out: '', err: '' };
  const stream = (name: 'out' | 'err') => ({
    write: (chunk: string | Uint8Array) => {
      written[name] += typeof chunk === 'string' ? chunk : Buffer.from(chunk).toString('latin1');
    },
    isTTY: around.tty === true,
    columns: 80,
  });
  const status = await run(argv, {
    stdout: stream('out'),
    stderr: stream('err'),
    stdin: Readable.from(around.input === undefined ? [] : [around.input]),
    env: around.env ?? {},
    cwd: around.cwd,
    today: () => '2026-10-03',
  });
  return { status, ...written };
}
