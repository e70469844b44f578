import { GAUGE_FAMILIES, SYSTEMS, systemRecord, systemsWhere } from './gauge-systems.ts';
import type { GaugeSystem } from './model.ts';
import { Spellings } from './spelling.ts';

/** What words behind a number mean: one system, several that share their letters, or only a drill. */
export type Named = readonly GaugeSystem[] | 'drill';

const DRILL_WORDS = GAUGE_FAMILIES.flatMap(([family, { words }]) =>
  family === 'drill' ? words : [],
);

const NUMBERED = systemsWhere(({ named }) => named === 'number');

/** All that names a numbered system. */
function wordsOf(system: GaugeSystem): readonly string[] {
  const { letters, words } = systemRecord(system);
  return letters === null ? words : [letters, ...words];
}

/** What each word names; what two systems have means both. */
const BY_WORD = new Map<string, Named>(DRILL_WORDS.map((word) => [word, 'drill']));
for (const system of NUMBERED)
  for (const word of wordsOf(system)) {
    const known = BY_WORD.get(word) ?? [];
    if (known !== 'drill') BY_WORD.set(word, [...known, system]);
  }

/** Words behind a number that name its system, in the singular and the plural. */
export const SYSTEM_WORDS = new Spellings<Named>(
  [...BY_WORD].flatMap(([word, named]) => [[word, named] as const, [`${word}s`, named] as const]),
);

/** What a word means that is spelled exactly so, without points; null where it names no system. */
export function namedBy(word: string): Named | null {
  return BY_WORD.get(word) ?? null;
}

/** Words behind a size that make it a gauge named by its own size. */
export const SIZED_GAUGE_WORDS = systemsWhere(({ named }) => named === 'size').flatMap((system) =>
  systemRecord(system).words.map((word) => [word, system] as const),
);

function distinct(words: readonly (string | null)[]): readonly string[] {
  const found = words.filter((word) => word !== null);
  // The longest first, so that a pattern takes the whole of it.
  return [...new Set(found)].sort((one, other) => other.length - one.length);
}

function pattern(words: readonly string[]): string {
  return words.map((word) => word.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&')).join('|');
}

const LETTERS = distinct(SYSTEMS.map((system) => systemRecord(system).letters));

/** A pattern of the letters that stand for systems: `awg|swg|bwg`. */
export const LETTERS_PATTERN: string = pattern(LETTERS);

/** A pattern of what stands before a number and names its system, with letters pointed or not. */
export const BEFORE_PATTERN: string = pattern(
  distinct([
    ...SYSTEMS.flatMap((system) => systemRecord(system).before),
    ...LETTERS.flatMap((letters) => [letters, [...letters].map((each) => `${each}.`).join('')]),
  ]),
);

/** A pattern of all that names a numbered system, with a point behind any letter or none. */
export const NUMBERED_PATTERN: string = distinct(NUMBERED.flatMap(wordsOf))
  .map((word) =>
    [...word].map((each) => `${pattern([each])}${/[a-z]/.test(each) ? '\\.?' : ''}`).join(''),
  )
  .join('|');
