import { mkdtempSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { openDesk, type RunCommand } from '../../src/desk-server/index.ts';

/** An answer of a desk. */
export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

export interface Asking {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Buffer;
}

/** A desk with somebody at it who holds its cookie. */
export interface AtDesk {
  readonly running: Awaited<ReturnType<typeof openDesk>>;
  readonly port: number;
  /** `/PLACE/`. */
  readonly base: string;
  readonly cookie: string;
  /** Asks as anybody may: no cookie, no origin unless given; `path` from the root of the server. */
  readonly bare: (path: string, asking?: Asking) => Promise<Answer>;
  /** Asks as the desk's own page does; `path` below its place. */
  readonly get: (path: string) => Promise<Answer>;
  readonly post: (path: string, json: unknown) => Promise<Answer>;
}

const noCommands: RunCommand = async () => ({ status: 2, out: '', talk: '' });

/** Opens a desk on a folder and exchanges its token; both are taken down after the test. */
export async function atDesk(
  folder: string,
  more: { run?: RunCommand; cache?: string; page?: string } = {},
): Promise<AtDesk> {
  const cache = more.cache ?? mkdtempSync(join(tmpdir(), 'gaugeleaf-desk-'));
  const running = await openDesk({
    folder,
    cwd: folder,
    port: 0,
    cache,
    run: more.run ?? noCommands,
    ...(more.page === undefined ? {} : { page: more.page }),
  });
  onTestFinished(() => running.close());
  const address = new URL(running.address());
  const port = Number(address.port);
  const bare = (path: string, asking: Asking = {}) => ask(port, path, asking);
  const first = await bare(`${address.pathname}${address.search}`);
  const cookie = String(first.headers['set-cookie']).split(';')[0] ?? '';
  const base = address.pathname;
  const own = { cookie, origin: `http://127.0.0.1:${port}` };
  return {
    running,
    port,
    base,
    cookie,
    bare,
    get: (path) => bare(`${base}${path}`, { headers: { cookie } }),
    post: (path, json) =>
      bare(`${base}${path}`, {
        method: 'POST',
        headers: { ...own, 'content-type': 'application/json' },
        body: JSON.stringify(json),
      }),
  };
}

/** One request, its path sent as it is: nothing takes `..` out of it. */
export function ask(port: number, path: string, asking: Asking = {}): Promise<Answer> {
  return new Promise((done, failed) => {
    const sent = request(
      {
        host: '127.0.0.1',
        port,
        path,
        method: asking.method ?? 'GET',
        headers: asking.headers ?? {},
        agent: false,
      },
      (response) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('end', () =>
          done({
            status: response.statusCode ?? 0,
            headers: response.headers,
            text: Buffer.concat(chunks).toString('utf8'),
          }),
        );
        response.on('error', failed);
      },
    );
    sent.on('error', failed);
    sent.end(asking.body);
  });
}
