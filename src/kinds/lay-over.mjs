/**
 * A kind laid over the common ones that it builds on. In JavaScript, because the kinds of the program are laid
 * over theirs when `src/generated` is made, and those of clubs when they are read.
 */

/** Lists that grow: the kind's own words, then those that it builds on. Any other list is the kind's own. */
const JOINED = new Set([
  'aliases',
  'met-by',
  'not-parts',
  'tool-words',
  'increment-words',
  'in-passing',
  'seen-to',
]);

/** Sections whose entries are lists of words, and grow like them. */
const WORD_LISTS = new Set(['verbs', 'phrases', 'count-words']);

/**
 * Tables key by key, and what is laid over counts; lists of words joined, each word once and the upper one's
 * first, so that a place in them is that of its own file.
 */
export function laidOver(under, over, isWords = false) {
  const made = { ...under };
  for (const [key, value] of Object.entries(over)) {
    const before = Object.hasOwn(under, key) ? under[key] : undefined;
    if (isTable(before) && isTable(value)) made[key] = laidOver(before, value, WORD_LISTS.has(key));
    else if (Array.isArray(before) && Array.isArray(value) && (isWords || JOINED.has(key)))
      made[key] = [...new Set([...value, ...before])];
    else made[key] = value;
  }
  return made;
}

function isTable(value) {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
