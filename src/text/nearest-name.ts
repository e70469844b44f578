import { distance } from 'fastest-levenshtein';

/**
 * The name that was perhaps meant: the nearest of `names` by single-letter edits, a swapped pair of
 * neighbors counting as one; null where none is near. Up to 4 letters one edit is near, up to 8 two,
 * beyond that three. Of equally near names the one with the same first letter, then the one that
 * sorts first. E.g. `nearestName('flaot-level', ['float-level'])` is `float-level`.
 */
export function nearestName(word: string, names: Iterable<string>): string | null {
  const wanted = fold(word);
  if (wanted === '' || wanted.length > LONGEST) return null;
  const allowed = wanted.length <= 4 ? 1 : wanted.length <= 8 ? 2 : 3;
  let best: { name: string; edits: number; head: number } | null = null;
  for (const name of names) {
    const known = fold(name);
    if (Math.abs(known.length - wanted.length) > allowed) continue;
    const edits = editsBetween(wanted, known, allowed);
    // A name of two letters is not near a word that shares none of them.
    if (edits > allowed || edits >= Math.max(wanted.length, known.length)) continue;
    const found = { name, edits, head: known[0] === wanted[0] ? 0 : 1 };
    if (best === null || before(found, best)) best = found;
  }
  return best?.name ?? null;
}

/** Longer words are no misspelt names; it also bounds the work on a hostile sheet. */
const LONGEST = 100;

function before(
  a: { name: string; edits: number; head: number },
  b: { name: string; edits: number; head: number },
): boolean {
  if (a.edits !== b.edits) return a.edits < b.edits;
  if (a.head !== b.head) return a.head < b.head;
  return a.name < b.name;
}

function fold(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, '-');
}

/** Levenshtein distance, where one swapped pair of neighbors counts as one edit and not as two. */
function editsBetween(wanted: string, known: string, allowed: number): number {
  let least = distance(wanted, known);
  // A swap saves one edit: further off than that, none can help.
  if (least < 2 || least > allowed + 1) return least;
  for (let i = 0; i + 1 < wanted.length; i++) {
    const [first = '', second = ''] = [wanted[i], wanted[i + 1]];
    if (first === second) continue;
    const swapped = wanted.slice(0, i) + second + first + wanted.slice(i + 2);
    least = Math.min(least, distance(swapped, known) + 1);
  }
  return least;
}
