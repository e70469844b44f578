import { readdirSync } from 'node:fs';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { causeInWords, openProject, Refusal } from '../project/index.ts';
import { sendPage, sendRefusal } from './answer.ts';
import { builtPage } from './assets.ts';
import { Commands, type RunCommand } from './commands.ts';
import { Desk } from './desk.ts';
import { cookieOf, foreign, hostOf, type Seat, sameSecret, turnedAway } from './guard.ts';
import { deskFolder } from './hidden-folder.ts';
import { route, type Surroundings } from './routes.ts';
import { dropSeat, keepSeat, leftSeat, newSeat, randomHex, seatFile } from './seat.ts';

export type { RunCommand } from './commands.ts';

export interface DeskOptions {
  /** The project's folder, or one in it. */
  readonly folder: string;
  readonly cwd: string;
  /** The port; any that is free if 0. */
  readonly port: number;
  /** The user's own folder for what a desk that is ended by force leaves of its seat: see `userCache`. */
  readonly cache: string;
  /** Carries out the commands that the page asks for. */
  readonly run: RunCommand;
  /** The folder of the built page; the program's own if left out. */
  readonly page?: string;
}

/** A desk that is open. */
export interface RunningDesk {
  /** The address to open, good for one window; every call gives another. */
  readonly address: () => string;
  readonly root: string;
  /** Ends it in order: nothing typed is lost, and no seat is left. */
  readonly close: () => Promise<void>;
}

/** Tokens that have not been used yet; more than so many nobody waits for. */
const mostTokens = 20;

/**
 * Opens the desk of a project, on this machine's own address. Fails with `Refusal` where the folder or port
 * cannot be had.
 */
export async function openDesk(options: DeskOptions): Promise<RunningDesk> {
  const project = openProject(options.folder, options.cwd);
  // An empty folder is one that is to be begun: the page asks what it needs.
  const stranger = project.isProject ? undefined : foreignIn(project.root);
  if (stranger !== undefined) {
    throw new Refusal(
      `${project.root} is no project: it has neither edition.yaml nor a folder sheets, and holds ${stranger}`,
      'go to the folder of your sheets, or make an empty one and open the desk in it: it begins there',
    );
  }
  let folder: string;
  try {
    folder = deskFolder(project.root);
  } catch (error) {
    throw new Refusal(`the desk cannot keep its journal in ${project.root}: ${reasonOf(error)}`);
  }
  const seatAt = seatFile(options.cache, project.root);
  const server = createServer();
  const seat = await sit(server, options.port, leftSeat(seatAt));
  keepSeat(seatAt, seat);
  const desk = new Desk(project, folder, options.cwd);
  const tokens = new Set<string>();
  const address = (): string => {
    const token = randomHex(24);
    tokens.add(token);
    for (const old of tokens) if (tokens.size > mostTokens) tokens.delete(old);
    return `http://${hostOf(seat)}/${seat.place}/?token=${token}`;
  };
  const around: Surroundings = {
    desk,
    commands: new Commands(desk, options.run),
    page: options.page ?? builtPage(),
    newAddress: address,
  };
  server.on('request', (request, response) => {
    void answer(request, response, seat, tokens, around);
  });
  return {
    address,
    root: project.root,
    async close() {
      desk.close();
      dropSeat(seatAt);
      server.closeAllConnections();
      await new Promise<void>((done) => server.close(() => done()));
    },
  };
}

/** Something in a folder that keeps it from being begun; undefined where there is nothing. */
function foreignIn(folder: string): string | undefined {
  return readdirSync(folder).find((name) => name !== '.git' && name !== '.gaugeleaf');
}

async function answer(
  request: IncomingMessage,
  response: ServerResponse,
  seat: Seat,
  tokens: Set<string>,
  around: Surroundings,
): Promise<unknown> {
  const stranger = foreign(request, seat);
  if (stranger !== null) return sendRefusal(response, stranger.status, stranger.why);
  const asked = wayOf(request.url ?? '');
  if (asked === null) return sendRefusal(response, 400, 'This is no address.');
  const { way, query } = asked;
  const token = query.get('token');
  if (token !== null && request.method === 'GET' && way.length === 2 && way[1] === '') {
    return exchange(response, token, seat, tokens);
  }
  const away = turnedAway(request, seat);
  if (away !== null) return sendRefusal(response, away.status, away.why);
  if (way[0] !== seat.place) return sendRefusal(response, 404, 'There is nothing here.');
  return route(request, response, way.slice(1), query, around);
}

/**
 * A token for the cookie, once. The page that follows is asked for by this answer and not by the link that
 * led here: a cookie that no other page may have sent goes only where this desk's own page leads.
 */
function exchange(
  response: ServerResponse,
  token: string,
  seat: Seat,
  tokens: Set<string>,
): ServerResponse {
  const known = [...tokens].find((each) => sameSecret(token, each));
  if (known === undefined) {
    return sendPage(
      response,
      401,
      'This address was used already, or is none of this desk. Run gaugeleaf desk again: it gives a new one.',
    );
  }
  tokens.delete(known);
  response.setHeader('Set-Cookie', cookieOf(seat));
  return sendPage(
    response,
    200,
    '<a href="./">To the desk</a>',
    '<meta http-equiv="refresh" content="0; url=./">',
  );
}

/** The path of a request, split at its slashes and then decoded, and its query; null for what is none. */
function wayOf(url: string): { way: readonly string[]; query: URLSearchParams } | null {
  if (!url.startsWith('/') || url.length > 20_000) return null;
  const [path = '', query = ''] = url.split(/\?(.*)/s, 2);
  try {
    const way = path.slice(1).split('/').map(decodeURIComponent);
    return { way, query: new URLSearchParams(query) };
  } catch {
    return null;
  }
}

/** Takes the seat that a desk left by force, so that its pages find it again; else a new one. */
async function sit(server: Server, port: number, left: Seat | null): Promise<Seat> {
  if (left !== null && (port === 0 || port === left.port)) {
    if (
      await listensAt(server, left.port).then(
        () => true,
        () => false,
      )
    )
      return left;
  }
  try {
    await listensAt(server, port);
  } catch (error) {
    throw new Refusal(
      `port ${port} cannot be had: ${reasonOf(error)}`,
      'give another with --port, or none',
    );
  }
  return newSeat((server.address() as AddressInfo).port);
}

function listensAt(server: Server, port: number): Promise<void> {
  return new Promise((done, failed) => {
    server.once('error', failed);
    server.listen(port, '127.0.0.1', () => {
      server.removeListener('error', failed);
      done();
    });
  });
}

function reasonOf(error: unknown): string {
  const code = (error as { code?: unknown } | null)?.code;
  if (code === 'EADDRINUSE') return 'another program has it';
  if (typeof code === 'string') return causeInWords(error);
  return error instanceof Error ? error.message : String(error);
}
