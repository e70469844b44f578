import type { IncomingMessage } from 'node:http';

/** No request is longer than this many bytes: a sheet has 1 MiB at most, and JSON may double it. */
export const longestBody = 4 * 1024 * 1024;

/** A request's JSON, or why there is none. */
export type BodyRead =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly status: 400 | 413 | 415; readonly why: string };

/**
 * Reads the JSON of a request. What says or turns out to be longer than `longestBody` is given up as soon as
 * that is known; no more than that is ever held.
 */
export async function readBody(request: IncomingMessage): Promise<BodyRead> {
  if (!/^application\/json\b/i.test(request.headers['content-type'] ?? '')) {
    return { ok: false, status: 415, why: 'Only JSON is taken here.' };
  }
  const tooLong = {
    ok: false,
    status: 413,
    why: `More than ${longestBody} bytes are not taken at once.`,
  } as const;
  if (Number(request.headers['content-length'] ?? 0) > longestBody) return tooLong;
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    size += chunk.length;
    if (size > longestBody) return tooLong;
    chunks.push(chunk);
  }
  try {
    return { ok: true, value: JSON.parse(Buffer.concat(chunks).toString('utf8')) };
  } catch {
    return { ok: false, status: 400, why: 'This is no JSON.' };
  }
}
