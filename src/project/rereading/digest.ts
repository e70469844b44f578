import { createHash } from 'node:crypto';

/** Sixteen figures of SHA-256: enough to tell the words of a club's sheets apart. */
export function wordsDigest(text: string): string {
  return createHash('sha256').update(text).digest('hex').slice(0, 16);
}
