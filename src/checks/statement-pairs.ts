import { agree, agreeLimits, type LimitsAgreement } from '../quantity/index.ts';
import type { Agreement, Statement } from '../quantity/model.ts';
import { inMeasureOf } from '../sheet/index.ts';
import type { Setting } from '../sheet/model.ts';
import { oncePer } from '../text/index.ts';
import { readOf, type StatedSize, sizesOfSetting } from './stated-sizes.ts';

/** A readable size of a setting that restates the value. */
export interface Restated {
  readonly stated: StatedSize;
  readonly statement: Statement;
}

type LimitsApart = Extract<LimitsAgreement, { verdict: 'apart' | 'widened' }>;

/** Two sizes that should be one, how they stand, and which of them is the doubtful one. */
export interface Pair {
  readonly trusted: Restated;
  readonly doubtful: Restated;
  /** The trusted one first. */
  readonly agreement: Agreement;
  /** Which limits are apart, where the figures themselves are not; null otherwise. */
  readonly limits: LimitsApart | null;
  /** The statements of the setting that hold together against the doubtful one: one in a plain pair. */
  readonly others: readonly Restated[];
}

/**
 * The sizes of a setting that must all be one size: the value, each `also`, and the gauge where
 * the value has no limits that would give it room.
 */
export function restatements(setting: Setting): readonly Restated[] {
  const value = readOf(setting.value);
  if (!setting.value || !value) return [];
  const roomy = value.low !== null || value.high !== null;
  const found: Restated[] = [];
  for (const stated of sizesOfSetting(setting)) {
    const { role, size } = stated;
    if (role !== 'value' && role !== 'also' && (role !== 'gauge' || roomy)) continue;
    const statement = readOf(size);
    if (!statement || (role === 'gauge' && statement.dimension !== value.dimension)) continue;
    if (isOfAnother(setting, stated.size.text)) continue;
    found.push({ stated, statement: inMeasureOf(statement, value.text, setting) });
  }
  return found;
}

/**
 * Whether a size says itself that it is of something else than the value: `28° crank` beside `14°
 * distributor` is no second statement of one figure, and a formula holds the two together.
 */
function isOfAnother(setting: Setting, text: string): boolean {
  const said = [...setting.said.values()].map((placed) => placed.value);
  const ofValue = [setting.value?.text ?? '', ...said].join(' ; ').toLowerCase();
  const has = (words: string, word: string): boolean =>
    ` ${words.replace(/[^\p{L}]+/gu, ' ')} `.includes(` ${word.toLowerCase()} `);
  return [...(setting.known?.saidBy.values() ?? [])].some((ways) => {
    const own = ways.filter((word) => has(text.toLowerCase(), word));
    return (
      own.length > 0 &&
      !own.some((word) => has(ofValue, word)) &&
      ways.some((word) => has(ofValue, word))
    );
  });
}

/**
 * No source writes a size in more ways. Of more, each is held against the value only and no misprint
 * is looked for: every pair of very many would take minutes.
 */
const MANY = 40;

const FINE: ReadonlySet<Agreement['verdict']> = new Set(['same', 'agrees', 'incomparable']);

/**
 * The pairs of a setting's restatements that do not simply agree, each once. Where all but one
 * hold together, that one is the doubtful of a single pair, whichever key it stands under;
 * otherwise the one written later is. Several checks ask for the same.
 */
export const doubtfulPairs = oncePer(findPairs);

function findPairs(setting: Setting): readonly Pair[] {
  const sizes = restatements(setting);
  if (sizes.length < 2) return [];
  const between = new Map<string, Agreement>();
  const look = (i: number, j: number): Agreement => {
    const key = `${i} ${j}`;
    const known = between.get(key);
    if (known) return known;
    const made = compared(sizes[i] as Restated, sizes[j] as Restated);
    between.set(key, made);
    return made;
  };
  const isFine = (i: number, j: number): boolean => FINE.has(look(i, j).verdict);

  let allFine = true;
  for (let j = 1; j < sizes.length && allFine; j++) allFine = isFine(0, j);
  // What agrees with the value need not agree with one another: each is a rounding of it.
  if (allFine) return [];
  if (sizes.length > MANY) return gentlePairs(sizes, [...sizes.keys()], look);

  const isApart = (i: number, j: number): boolean => {
    const { verdict } = look(Math.min(i, j), Math.max(i, j));
    return verdict === 'disagrees' || verdict === 'within-tolerance';
  };
  const isFar = (i: number, j: number): boolean =>
    look(Math.min(i, j), Math.max(i, j)).verdict === 'disagrees';
  // Limits that were rounded inward are off the middle a little, and hold together all the same.
  const odd =
    oddOneOut(sizes.length, isApart, isApart) ??
    oddOneOut(sizes.length, isApart, isFar) ??
    oddOneOut(sizes.length, isFar, isFar);
  if (odd !== null) {
    const others = sizes.map((_, i) => i).filter((i) => i !== odd);
    const trusted = others.find((i) => i === 0) ?? finest(sizes, others);
    return [pairOf(sizes, trusted, odd, others), ...gentlePairs(sizes, others, look)];
  }
  const pairs: Pair[] = [];
  const told = new Set<number>();
  for (let i = 0; i < sizes.length; i++) {
    for (let j = i + 1; j < sizes.length; j++) {
      if (isFine(i, j)) continue;
      // Two restatements are held against one another only where neither is settled by the value.
      if (i > 0 && (isFine(0, i) || isFine(0, j) || told.has(j))) continue;
      told.add(j);
      pairs.push(pairOf(sizes, i, j));
    }
  }
  return pairs;
}

function compared(first: Restated, second: Restated): Agreement {
  const verdict = agree(first.statement, second.statement, { gauges: null });
  const limits = FINE.has(verdict.verdict) ? limitsApart(first, second) : null;
  if (!limits || verdict.verdict === 'incomparable') return verdict;
  return {
    verdict: 'disagrees',
    first: limits.first,
    second: limits.second,
    by: 'limits',
    difference: null,
    misprint: null,
  };
}

function limitsApart(first: Restated, second: Restated): LimitsApart | null {
  const limits = agreeLimits(first.statement, second.statement);
  return limits.verdict === 'apart' ? limits : null;
}

/** The limits, where nothing but they disagrees: the middles agree, or only one side states one. */
function limitsAtFault(first: Restated, second: Restated, found: Agreement): LimitsApart | null {
  if (found.verdict !== 'disagrees') return null;
  const [one, two] = [first.statement, second.statement];
  const onlyOne = (one.nominal === null) !== (two.nominal === null);
  return found.by === 'limits' || onlyOne ? limitsApart(first, second) : null;
}

function pairOf(
  sizes: readonly Restated[],
  trusted: number,
  doubtful: number,
  others: readonly number[] = [trusted],
): Pair {
  const [one, two] = [sizes[trusted] as Restated, sizes[doubtful] as Restated];
  const agreement = compared(one, two);
  const limits = limitsAtFault(one, two, agreement);
  const against = others.map((i) => sizes[i] as Restated);
  return { trusted: one, doubtful: two, agreement, limits, others: against };
}

/**
 * The index that is apart from every other while none of the others is from another; null if none or
 * more than one is.
 */
function oddOneOut(
  count: number,
  isApart: (i: number, j: number) => boolean,
  isOtherApart: (i: number, j: number) => boolean,
): number | null {
  if (count < 3) return null;
  const all = [...Array(count).keys()];
  const odd = all.filter((i) => {
    const others = all.filter((j) => j !== i);
    return (
      others.every((j) => isApart(i, j)) &&
      others.every((j, at) => others.slice(at + 1).every((k) => !isOtherApart(j, k)))
    );
  });
  return odd.length === 1 ? (odd[0] as number) : null;
}

/** Of some sizes the one told most exactly: a gauge or a fraction before a decimal. */
function finest(sizes: readonly Restated[], among: readonly number[]): number {
  const exact = among.find((i) => sizes[i]?.statement.nominal?.places === null);
  return exact ?? among[0] ?? 0;
}

/** Those among some sizes that do not simply agree with the first of them, each against it. */
function gentlePairs(
  sizes: readonly Restated[],
  among: readonly number[],
  look: (i: number, j: number) => Agreement,
): Pair[] {
  const first = among[0] ?? 0;
  const pairs: Pair[] = [];
  for (const j of among) {
    if (j === first || FINE.has(look(first, j).verdict)) continue;
    pairs.push(pairOf(sizes, first, j));
  }
  return pairs;
}
