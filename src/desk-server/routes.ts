import type { IncomingMessage, ServerResponse } from 'node:http';
import { join } from 'node:path';
import type { CommandOrder, FileChecked, Update } from '../desk-page/model.ts';
import { PressStopped } from '../press/index.ts';
import { isTaken, locate, ownFileFaults, Refusal, readBounded } from '../project/index.ts';
import { send, sendJson, sendRefusal } from './answer.ts';
import { assetNamed, pageHtml } from './assets.ts';
import { readBody } from './body.ts';
import type { Commands } from './commands.ts';
import type { Desk } from './desk.ts';
import { framePolicy } from './frames.ts';
import { everywhere, pagePolicy } from './guard.ts';
import { placesThroughout, renameThroughout } from './names-throughout.ts';
import { randomHex } from './seat.ts';
import { sheetContext } from './sheet-context.ts';

/** Below the seat: what a request of the desk's own page gets. */
export interface Surroundings {
  readonly desk: Desk;
  readonly commands: Commands;
  /** The folder of the built page. */
  readonly page: string;
  /** Makes a token for one more window. */
  readonly newAddress: () => string;
}

/** A print is read whole. */
const largestPrint = 256 * 1024 * 1024;

/** Answers a request that has been let in. `way` is the path below the seat, split and decoded. */
export async function route(
  request: IncomingMessage,
  response: ServerResponse,
  way: readonly string[],
  query: URLSearchParams,
  around: Surroundings,
): Promise<unknown> {
  try {
    if (request.method === 'GET' || request.method === 'HEAD')
      return get(response, way, query, around);
    if (request.method !== 'POST')
      return sendRefusal(response, 405, 'This is neither asked nor told.');
    const body = await readBody(request);
    if (!body.ok) {
      // What is still on its way is not waited for.
      response.setHeader('Connection', 'close');
      response.once('finish', () => request.destroy());
      return sendRefusal(response, body.status, body.why);
    }
    return sendJson(response, await post(way, fieldsOf(body.value), around));
  } catch (error) {
    if (error instanceof Refusal) return sendRefusal(response, 409, error.message, error.hint);
    if (error instanceof PressStopped) return sendRefusal(response, 409, error.message);
    if (error instanceof NotThere) return sendRefusal(response, 404, 'There is nothing here.');
    const message = error instanceof Error ? error.message : String(error);
    return sendRefusal(response, 500, `A fault in the program, not in your sheets: ${message}`);
  }
}

class NotThere extends Error {}

function get(
  response: ServerResponse,
  way: readonly string[],
  query: URLSearchParams,
  { desk, page }: Surroundings,
): ServerResponse {
  const [what = '', name = ''] = way;
  if (way.length > 2) throw new NotThere();
  switch (what) {
    case '': {
      const nonce = randomHex(16);
      const title = desk.project.edition().edition?.facts.title ?? 'Gaugeleaf desk';
      return send(response, 200, 'text/html; charset=utf-8', pageHtml(nonce, title), {
        'Content-Security-Policy': pagePolicy(nonce),
      });
    }
    case 'assets': {
      const asset = assetNamed(name, page);
      if (asset === null) throw new NotThere();
      return send(response, 200, asset.type, asset.bytes);
    }
    case 'events':
      return listen(response, desk);
    case 'edition':
      return sendJson(
        response,
        desk.board.state((id) => desk.unsaved(id)),
      );
    case 'find':
      return sendJson(response, desk.board.find((query.get('q') ?? '').slice(0, 200)));
    case 'sheet': {
      const sheet = desk.sheet(name);
      const from = query.get('from');
      if (from === null) return sendJson(response, sheet.opened());
      return sendJson(response, { version: sheet.version, updates: sheet.since(Number(from)) });
    }
    case 'context': {
      const path = desk.pathOf(name);
      const asked = { bases: query.getAll('base'), pictures: query.getAll('picture') };
      return sendJson(
        response,
        sheetContext(desk.project, { id: name, path }, asked, (id) => desk.openText(id)),
      );
    }
    case 'frame': {
      const html = desk.frames.page(name);
      if (html === null) throw new NotThere();
      return send(response, 200, 'text/html; charset=utf-8', html, {
        'Content-Security-Policy': framePolicy,
      });
    }
    case 'print':
      return sendPrint(response, name, desk);
    default:
      throw new NotThere();
  }
}

async function post(
  way: readonly string[],
  fields: Fields,
  around: Surroundings,
): Promise<unknown> {
  const { desk, commands } = around;
  const [what = '', name = '', deed = ''] = way;
  switch (what) {
    case 'sheet': {
      const sheet = desk.sheet(name);
      if (deed === 'push')
        return sheet.push(fields.number('version'), updatesFrom(fields.list('updates')));
      if (deed === 'save') {
        const saved = sheet.save();
        desk.look();
        return saved;
      }
      if (deed === 'places')
        return placesThroughout(desk, name, fields.text('text'), fields.number('offset'));
      if (deed === 'rename') {
        const [text, to] = [fields.text('text'), fields.text('to')];
        return renameThroughout(desk, name, { text, to, offset: fields.number('offset') });
      }
      if (deed === 'check') return fileChecked(desk, name, fields.text('text'));
      if (deed === 'settle') {
        sheet.settle(fields.text('keep') === 'mine' ? 'mine' : 'file');
        return {};
      }
      throw new NotThere();
    }
    case 'frame': {
      const path = desk.pathOf(name);
      const what = fields.text('what') === 'chapter' ? 'chapter' : 'card';
      const text = fields.text('text');
      return { frame: await desk.frames.make(desk.project, { path, text, what }) };
    }
    case 'order':
      return commands.carryOut(fields.text('job'), fields.value('order') as CommandOrder);
    case 'address':
      return { address: around.newAddress() };
    default:
      throw new NotThere();
  }
}

/** What is wrong with a text of a file that is no sheet, as `check` says it. */
function fileChecked(desk: Desk, id: string, text: string): FileChecked {
  const own = desk.ownFile(id);
  if (own === null) throw new NotThere();
  const found = ownFileFaults(desk.project, own, text)?.findings ?? [];
  return {
    findings: found.map((finding, index) => ({
      ...finding,
      related: finding.related.map(({ span, label, file }) => ({
        file: file ?? finding.file,
        span,
        label,
      })),
      certain: false,
      index,
    })),
  };
}

/** Events, one JSON object each, until the window is closed. */
function listen(response: ServerResponse, desk: Desk): ServerResponse {
  response.writeHead(200, { ...everywhere, 'Content-Type': 'text/event-stream; charset=utf-8' });
  response.write(': here\n\n');
  const end = desk.listen((event) => response.write(`data: ${JSON.stringify(event)}\n\n`));
  // A window that is gone without a word is found out by writing to it.
  const pulse = setInterval(() => response.write(': here\n\n'), 15_000);
  pulse.unref();
  return response.on('close', () => {
    clearInterval(pulse);
    end();
  });
}

function sendPrint(response: ServerResponse, name: string, desk: Desk): ServerResponse {
  if (!/^[a-z0-9][a-z0-9.-]*\.pdf$/i.test(name)) throw new NotThere();
  const folder = join(desk.project.root, 'print');
  const located = isTaken(folder) ? locate(desk.project.root, folder, name) : null;
  if (located?.status !== 'found') throw new NotThere();
  const read = readBounded(located.path, largestPrint);
  if (!read.ok) throw new NotThere();
  return send(response, 200, 'application/pdf', read.bytes, {
    'Content-Disposition': `inline; filename="${name}"`,
  });
}

/** The fields of a request's JSON; one that is missing or of another sort is a `Refusal`. */
interface Fields {
  text(name: string): string;
  number(name: string): number;
  list(name: string): readonly unknown[];
  value(name: string): unknown;
}

function fieldsOf(json: unknown): Fields {
  const object = typeof json === 'object' && json !== null ? json : {};
  const value = (name: string): unknown =>
    Object.hasOwn(object, name) ? (object as Record<string, unknown>)[name] : undefined;
  const need = <T>(name: string, is: (found: unknown) => found is T): T => {
    const found = value(name);
    if (!is(found)) throw new Refusal(`the request has no ${name} that can be read`);
    return found;
  };
  return {
    value,
    text: (name) => need(name, (found): found is string => typeof found === 'string'),
    number: (name) => need(name, (found): found is number => Number.isSafeInteger(found)),
    list: (name) => need(name, (found): found is unknown[] => Array.isArray(found)),
  };
}

function updatesFrom(list: readonly unknown[]): Update[] {
  return list.map((each) => {
    const { clientID, changes } = (each ?? {}) as Partial<Update>;
    if (typeof clientID !== 'string' || clientID.length > 100) {
      throw new Refusal('a change does not say whose it is');
    }
    return { clientID, changes };
  });
}
