import { agree, agreeLimits, compareAmounts, unitById } from '../quantity/index.ts';
import type { Amount, GaugeBook, Limit, Statement } from '../quantity/model.ts';
import { plainWords } from '../text/index.ts';

/** How two writings of one printed figure stand to one another. */
export interface SizeFound {
  readonly same: boolean;
  readonly difference: string | null;
  readonly misprint: string | null;
}

const same: SizeFound = { same: true, difference: null, misprint: null };

/**
 * Whether two statements can be one printed figure. Where both write decimals in one unit, or both write
 * exact numbers, they have the same digits before them and must come to exactly the same size and limits;
 * where the one converted, or wrote a decimal for a fraction, all that rounding or chopping may make of
 * it is the same.
 */
export function sameSize(first: Statement, second: Statement, gauges: GaugeBook): SizeFound {
  const unlike = unlikeForm(first, second);
  if (unlike !== null) return { same: false, difference: unlike, misprint: null };
  const found = agree(first, second, { gauges: null });
  const { verdict } = found;
  const differ = verdict === 'disagrees' || verdict === 'within-tolerance';
  if (differ || verdict === 'incomparable' || verdict === 'loose') {
    return told(first, second, gauges);
  }
  if (first.condition !== null) return same;
  const pairs = amountPairs(first, second);
  if (pairs.some(([one, two]) => !sameAmount(one, two))) return told(first, second, gauges);
  if (pairs.every(([one, two]) => isStrict(one, two))) {
    const [low, high] = [unlikeLimit(first.low, second.low), unlikeLimit(first.high, second.high)];
    if (low || high) return { same: false, difference: 'other limits', misprint: null };
    return same;
  }
  return agreeLimits(first, second).verdict === 'apart'
    ? { same: false, difference: 'other limits', misprint: null }
    : same;
}

/** What differs in form and not in size; null for nothing. */
function unlikeForm(first: Statement, second: Statement): string | null {
  if (first.about !== second.about) return 'only one of them says about';
  for (const [side, word] of [
    ['low', 'lower'],
    ['high', 'upper'],
  ] as const) {
    if ((first[side] === null) === (second[side] === null)) continue;
    return `${first[side] === null ? 'the second' : 'the sheet'} alone states ${word === 'upper' ? 'an' : 'a'} ${word} limit`;
  }
  // Crank or distributor, engine or shaft: the same number of another thing.
  if (first.dimension === 'angle' || first.dimension === 'speed') {
    const [one, two] = [first.qualifier, second.qualifier].map((each) => plainWords(each ?? ''));
    if (one && two && one !== two) return `${second.qualifier}, not ${first.qualifier}`;
  }
  return null;
}

function told(first: Statement, second: Statement, gauges: GaugeBook): SizeFound {
  const found = agree(first, second, { gauges });
  const isApart = found.verdict === 'disagrees' || found.verdict === 'within-tolerance';
  return {
    same: false,
    difference: isApart ? found.difference : null,
    misprint: isApart ? (found.misprint?.because ?? null) : null,
  };
}

/** The amounts that stand for the same thing in both: the nominals, or the limits where these are stated. */
function amountPairs(first: Statement, second: Statement): (readonly [Amount, Amount])[] {
  const pairs: (readonly [Amount, Amount])[] = [];
  const add = (one: Amount | null | undefined, two: Amount | null | undefined) => {
    if (one && two) pairs.push([one, two]);
  };
  add(first.nominal, second.nominal);
  add(first.low?.amount, second.low?.amount);
  add(first.high?.amount, second.high?.amount);
  return pairs;
}

function sameAmount(first: Amount, second: Amount): boolean {
  if (isStrict(first, second)) return first.base.equals(second.base);
  // Two gauges of nearly one size are two gauges.
  if (first.gauge !== null && second.gauge !== null) return first.base.equals(second.base);
  const verdict = compareAmounts(first, second);
  return verdict !== 'apart' && verdict !== 'loose';
}

/** Whether nothing was converted between the two: both decimals of one unit, or both exact. */
function isStrict(first: Amount, second: Amount): boolean {
  const [one, two] = [first.places === null, second.places === null];
  if (one !== two) return false;
  return one ? true : onlyPointMoves(first.unit, second.unit);
}

/** Whether decimals of one unit turn into those of the other by moving the point: `in` and `thou`. */
function onlyPointMoves(first: string, second: string): boolean {
  if (first === second) return true;
  const [one, two] = [unitById(first), unitById(second)];
  if (one.inverse !== two.inverse) return false;
  const ratio = one.factor.div(two.factor);
  return [ratio.n, ratio.d].every((part) => /^10*$/.test(String(part)));
}

function unlikeLimit(first: Limit | null, second: Limit | null): boolean {
  return first !== null && second !== null && !first.base.equals(second.base);
}
