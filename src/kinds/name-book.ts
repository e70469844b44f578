/**
 * A name in the one spelling that names are compared in: small letters, words parted by single
 * hyphens. `levelName('Choke Pull-Down ')` is `choke-pull-down`; a text without letters or digits
 * gives the empty string.
 */
export function levelName(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/['’]/g, '')
    .replace(/&/g, ' and ')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
}

/** Longer headings name nothing; it also bounds the work on a hostile sheet. */
const LONGEST = 160;

/** What a heading may say before the name and mean the same: `Setting the float level`. */
const LEAD =
  /^(?:set|setting|adjust|adjusting|check|checking|measure|measuring|gauge|gauging|verify|verifying|recheck|rechecking|repeat|final|the|a|an)-/;

/** What it may say after: `Float level adjustment`, `Idle speed again`. */
const TAIL =
  /-(?:adjustment|adjustments|adjusting|setting|settings|check|checks|checking|recheck|baseline|baselines|measurement|measurements|measuring|procedure|again|repeated|once-more)$/;

/** Circumstances after the name: `Idle speed with the engine hot`. `before` and `after` mean work. */
const CIRCUMSTANCE = /-(?:with|on|at|in|for|of|to)-.*$/;

/** `3. `, `3) `, `IV. `, `a) `, `Step 3: ` before a heading. */
const NUMBERING = /^\s*(?:(?:step|part)\s+)?\(?(?:\d+(?:\.\d+)*[a-z]?|[ivx]+|[a-z])[.):]\)?\s+/i;

/** The names and aliases of one section of a kind, and what a text among them means. */
export class NameBook {
  readonly #names = new Map<string, string>();
  readonly #aliases = new Map<string, string>();

  constructor(entries: Iterable<readonly [string, readonly string[]]>) {
    for (const [name, aliases] of entries) {
      this.#names.set(levelName(name), name);
      for (const alias of aliases) {
        const key = levelName(alias);
        if (!this.#aliases.has(key)) this.#aliases.set(key, name);
      }
    }
  }

  /**
   * The name that a text means, or null. An exact name beats an alias, and an alias beats a text
   * that means something only once numbering, brackets, `setting the` or `adjustment` are taken
   * off; the reading that takes off least counts, and two such that differ mean nothing.
   */
  find(text: string): string | null {
    if (text.length > LONGEST) return null;
    const whole = levelName(text);
    const exact = this.#names.get(whole) ?? this.#aliases.get(whole);
    if (exact !== undefined) return exact;
    let round = new Set(bare(text));
    round.add(whole);
    const seen = new Set<string>();
    while (round.size > 0) {
      const found = this.#only(round);
      if (found !== undefined) return found;
      const next = new Set<string>();
      for (const key of round) {
        if (seen.has(key)) continue;
        seen.add(key);
        for (const shorter of shortened(key)) next.add(shorter);
      }
      round = next;
    }
    return null;
  }

  /** The one name that the keys mean, null where they mean several, undefined where none. */
  #only(keys: Iterable<string>): string | null | undefined {
    const names = new Set<string>();
    const aliases = new Set<string>();
    for (const key of keys) {
      const name = this.#names.get(key);
      if (name !== undefined) names.add(name);
      const alias = this.#aliases.get(key);
      if (alias !== undefined) aliases.add(alias);
    }
    const found = names.size > 0 ? names : aliases;
    if (found.size > 1) return null;
    const [only] = found;
    return only;
  }
}

/** The text without numbering, without brackets, and each side of a comma, colon or dash. */
function* bare(text: string): Generator<string> {
  const unnumbered = text.replace(NUMBERING, '');
  const open = unnumbered.replace(/\([^()]*\)|\[[^[\]]*\]/g, ' ');
  for (const form of [unnumbered, open]) {
    const level = levelName(form);
    if (level !== '') yield level;
  }
  const parts = open.split(/[,;:]|\s[-–—]\s/);
  if (parts.length < 2) return;
  for (const part of [parts[0], parts.at(-1)]) {
    const level = levelName(part ?? '');
    if (level !== '') yield level;
  }
}

function* shortened(key: string): Generator<string> {
  for (const affix of [LEAD, TAIL, CIRCUMSTANCE]) {
    const shorter = key.replace(affix, '');
    if (shorter !== key && shorter !== '') yield shorter;
  }
  // `Float levels`; a word in `ss` is no plural.
  if (/[^s]s$/.test(key)) yield key.slice(0, -1);
}
