import { timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

/** What a desk lets in: its own address, and whoever holds its secret. */
export interface Seat {
  readonly port: number;
  /** The path that all of it stands below, without slashes: a cookie is bound to it. */
  readonly place: string;
  /** What the cookie holds. */
  readonly secret: string;
}

/** Where a seat is reached; nothing else may stand in `Host` or `Origin`. */
export function hostOf(seat: Pick<Seat, 'port'>): string {
  return `127.0.0.1:${seat.port}`;
}

export const cookieName = 'gaugeleaf-desk';

/** Why a request is turned away: the status, and a sentence. */
export interface TurnedAway {
  readonly status: 400 | 401 | 403 | 404 | 405 | 413 | 415 | 421;
  readonly why: string;
}

/**
 * Whether a request comes from this desk's own page: the address that it was sent to (a name that was made
 * to lead here stands in `Host`), the page that sent it, and the cookie. Null where it does.
 */
export function turnedAway(request: IncomingMessage, seat: Seat): TurnedAway | null {
  return foreign(request, seat) ?? (holdsCookie(request, seat) ? null : unknown);
}

const unknown: TurnedAway = {
  status: 401,
  why: 'This desk does not know you: open the address that gaugeleaf desk printed.',
};

/** Why a request is none of a page of this desk, whoever sends it; null where it may be. */
export function foreign({ headers, method }: IncomingMessage, seat: Seat): TurnedAway | null {
  const host = hostOf(seat);
  if (headers.host !== host) {
    return { status: 421, why: `This desk is at http://${host}/ and at no other name.` };
  }
  const origin = headers.origin;
  if (origin !== undefined && origin !== `http://${host}`) return other;
  // A page of another origin that asks without saying so: an image, a frame, a link.
  const site = headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return other;
  if (method !== 'GET' && method !== 'HEAD' && origin === undefined) return other;
  return null;
}

const other: TurnedAway = { status: 403, why: 'Another page asked for this; it is not given.' };

function holdsCookie({ headers }: IncomingMessage, { secret }: Seat): boolean {
  const pairs = (headers.cookie ?? '').split(';').map((pair) => pair.trim());
  return pairs.some(
    (pair) =>
      pair.startsWith(`${cookieName}=`) && sameSecret(pair.slice(cookieName.length + 1), secret),
  );
}

/** Whether two secrets are the same, in a time that tells nothing of where they differ. */
export function sameSecret(given: string, known: string): boolean {
  const [a, b] = [Buffer.from(given), Buffer.from(known)];
  return a.length === b.length && timingSafeEqual(a, b);
}

/** The cookie that the token is exchanged for: unseen by scripts, sent by this desk's own pages alone. */
export function cookieOf({ place, secret }: Seat): string {
  return `${cookieName}=${secret}; Path=/${place}/; HttpOnly; SameSite=Strict`;
}

/** Headers of every answer. */
export const everywhere: Readonly<Record<string, string>> = {
  'Cache-Control': 'no-store',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'SAMEORIGIN',
  'Content-Security-Policy': "default-src 'none'; frame-ancestors 'none'",
};

/** What the desk's own page may load: its own files, and no script or style that stands in a page. */
export function pagePolicy(nonce: string): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    // The editor makes its style sheet as it starts; the nonce lets that one in.
    `style-src 'self' 'nonce-${nonce}'`,
    "font-src 'self'",
    "img-src 'self' data:",
    "connect-src 'self'",
    "worker-src 'self'",
    "frame-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');
}
