import { spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { openDesk, type RunCommand } from '../../desk-server/index.ts';
import { Refusal, userCache } from '../../project/index.ts';
import { type Io, say } from '../io.ts';
import type { ExitStatus } from '../run.ts';

export interface DeskOptions {
  readonly port?: string;
  /** False where `--no-open` was given. */
  readonly open?: boolean;
}

/**
 * `gaugeleaf desk`: the project in a browser, until it is interrupted. Prints the address on standard output
 * and opens it, unless told not to.
 */
export async function desk(
  folder: string | undefined,
  options: DeskOptions,
  io: Io,
): Promise<ExitStatus> {
  io.expectLongWork?.();
  const end = new Ending();
  const running = await openDesk({
    folder: resolve(io.cwd, folder ?? '.'),
    cwd: io.cwd,
    port: portOf(options.port),
    cache: userCache(io.env, process.platform),
    run: commandRunner(io, end),
  });
  const address = running.address();
  io.stdout.write(`${address}\n`);
  say(io, `The desk of ${running.root} is open. Ctrl-C closes it; what is typed is kept.`);
  if (options.open !== false) openInBrowser(address, io);
  await end.wished();
  await running.close();
  return 0;
}

function portOf(written: string | undefined): number {
  if (written === undefined) return 0;
  const port = Number(written);
  if (!/^\d+$/.test(written) || port < 1024 || port > 65_535) {
    throw new Refusal(`${written} is no port for a desk`, 'give a number from 1024 to 65535');
  }
  return port;
}

/** Commands of this same program, with what they say gathered. */
function commandRunner(io: Io, end: Ending): RunCommand {
  return (argv, cwd, onTalk) =>
    end.atOnceDuring(async () => {
      const { run } = await import('../run.ts');
      let out = '';
      let talk = '';
      const status = await run(argv, {
        ...io,
        cwd,
        stdin: Object.assign(new (await import('node:stream')).PassThrough(), { isTTY: false }),
        stdout: {
          write: (chunk) => {
            out += typeof chunk === 'string' ? chunk : Buffer.from(chunk).toString('utf8');
          },
        },
        stderr: {
          // A terminal is told how far the work has come.
          isTTY: true,
          columns: 200,
          write: (chunk) => {
            const text = String(chunk);
            // What is rewritten in its place is progress; the rest is said for good.
            // biome-ignore lint/suspicious/noControlCharactersInRegex: it is what a terminal is sent.
            const line = /^\r\u001b\[K(.*)$/s.exec(text)?.[1];
            if (line === undefined) talk += text;
            else if (line !== '') onTalk(line);
          },
        },
        env: { ...io.env, NO_COLOR: '1' },
      });
      return { status, out, talk };
    });
}

/** The usual way of each system to open an address; where there is none, it has been printed. */
function openInBrowser(address: string, io: Io): void {
  const [command, ...args] =
    process.platform === 'darwin'
      ? ['open', address]
      : process.platform === 'win32'
        ? ['rundll32', 'url.dll,FileProtocolHandler', address]
        : ['xdg-open', address];
  if (command === undefined) return;
  if (process.platform === 'linux' && !io.env.DISPLAY && !io.env.WAYLAND_DISPLAY) return;
  const child = spawn(command, args, { stdio: 'ignore', detached: true });
  child.on('error', () => say(io, 'No browser could be opened: open the address above in one.'));
  child.unref();
}

/**
 * Ctrl-C, or the end of the session. The desk closes in order, but for the time in which something is printed or
 * reckoned: then the system ends it at once, as what is typed is in the journal by then.
 */
class Ending {
  #working = 0;
  #end: () => void = () => {};

  /** Waits until it is wished for. */
  wished(): Promise<void> {
    return new Promise((done) => {
      this.#end = done;
      this.#listen();
    });
  }

  async atOnceDuring<T>(work: () => Promise<T>): Promise<T> {
    this.#working += 1;
    this.#listen();
    try {
      return await work();
    } finally {
      this.#working -= 1;
      this.#listen();
    }
  }

  #listen(): void {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
      process.off(signal, this.#end);
      if (this.#working === 0) process.on(signal, this.#end);
    }
  }
}
