import type { Answers, Asked, Digest } from './model.ts';

/**
 * A digest of exactly the words of a sheet that an answer is compared with: setting, source and page, and
 * each part as written. No place in the file, no comment and nothing else of the setting belongs to it.
 */
export function sheetDigest({ setting, source, page, parts }: Asked, digest: Digest): string {
  const words = parts
    .filter(({ role }) => role !== 'beside')
    .map(({ path, text }) => [path.join('/'), text]);
  return digest(JSON.stringify([setting.id, source, page, words]));
}

/** A digest of the words that were answered. */
export function answerDigest(answers: Answers | null, digest: Digest): string {
  const words = [...(answers?.given ?? [])].map(([path, { value }]) => [path, value]);
  return digest(JSON.stringify(words));
}
