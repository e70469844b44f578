import type { SizeProblem } from './model.ts';
import { problem } from './problems.ts';

/** A cylinder as an order names it: its number, with a bank's letter before or behind it on some engines. */
const MEMBER = /^(?:[ablr]?[0-9]{1,2}|[0-9]{1,2}[ablr])$/;

/**
 * Numbers in their order, as a firing order: with hyphens, commas or blanks between them (`1-3-4-2`), or
 * written together where each is one figure (`1342`). The order is a circle, so it comes back with the
 * first number at its beginning, hyphens between. Plain numbers have to be all of 1 to the last, each once;
 * with a bank's letter, each once is enough. `lower` is normalized.
 */
export function readSequence(text: string, lower: string): string | SizeProblem {
  const members = membersOf(lower.replace(/\.$/, '').trim());
  const wrong = (message: string, fix: string): SizeProblem =>
    problem('unreadable', `${text.trim()} ${message}`, fix, 0, text.length);
  if (members === null)
    return wrong(
      'is no list of numbers',
      'write the numbers with hyphens between them, such as 1-3-4-2',
    );
  const again = 'look in the source, and write every number once';
  const twice = members.find((each, i) => members.indexOf(each) !== i);
  if (twice !== undefined) return wrong(`has ${twice} twice`, again);
  if (members.includes('0')) return wrong('counts from 0', again);
  const isPlain = members.every((each) => /^\d+$/.test(each));
  if (isPlain) {
    const missing = members.findIndex((_, i) => !members.includes(String(i + 1)));
    if (missing >= 0) return wrong(`has ${members.length} numbers and lacks ${missing + 1}`, again);
  }
  const start = Math.max(
    members.findIndex((each) => /^[al]?1[al]?$/.test(each)),
    0,
  );
  return [...members.slice(start), ...members.slice(0, start)].join('-');
}

function membersOf(lower: string): readonly string[] | null {
  if (/^[1-9]{3,9}$/.test(lower)) return [...lower];
  const members = lower.split(/ *[-,;/] *| +/);
  return members.length > 1 && members.every((each) => MEMBER.test(each)) ? members : null;
}
