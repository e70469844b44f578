import type { ServerResponse } from 'node:http';
import type { Refusing } from '../desk-page/model.ts';
import { everywhere } from './guard.ts';

/** Sends JSON. */
export function sendJson(response: ServerResponse, value: unknown, status = 200): ServerResponse {
  return send(response, status, 'application/json; charset=utf-8', JSON.stringify(value));
}

/** Sends a refusal in words. */
export function sendRefusal(
  response: ServerResponse,
  status: number,
  message: string,
  hint: string | null = null,
): ServerResponse {
  return sendJson(response, { message, hint } satisfies Refusing, status);
}

/** Sends a whole answer. */
export function send(
  response: ServerResponse,
  status: number,
  type: string,
  content: string | Uint8Array,
  more: Readonly<Record<string, string>> = {},
): ServerResponse {
  response.writeHead(status, { ...everywhere, 'Content-Type': type, ...more });
  return response.end(content);
}

/** A bare page for a person who is not at the desk yet. */
export function sendPage(
  response: ServerResponse,
  status: number,
  words: string,
  head = '',
): ServerResponse {
  const html =
    `<!doctype html><html lang="en"><head><meta charset="utf-8">${head}` +
    `<title>Gaugeleaf desk</title></head><body><p>${words}</p></body></html>`;
  return send(response, status, 'text/html; charset=utf-8', html);
}
