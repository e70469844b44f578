import { systemRecord } from './gauge-systems.ts';
import type { Amount, Limit, Rational, SizeProblem } from './model.ts';
import { type Numeral, settleComma } from './numeral.ts';
import { problem, unsettledComma } from './problems.ts';
import { greater, lesser, rational } from './rational.ts';
import type { Term } from './term.ts';
import { toBase, type UnitOfMeasure, unitById } from './units.ts';

/** What was built, or why it could not be. */
export type Built<T> = T | { readonly problem: SizeProblem };

/** Whether building ended in a problem. */
export function isProblem(value: object): value is { readonly problem: SizeProblem } {
  return 'problem' in value;
}

/** The amount a term states; `fallback` is the unit of a number that has none of its own. */
export function amountFrom(text: string, term: Term, fallback: UnitOfMeasure): Built<Amount> {
  const written = text.slice(term.start, term.end);
  if (term.gauge && (!term.numeral || term.numeral.ratio)) {
    const { gauge } = term;
    const unit = unitById(gauge.unit);
    const number = gauge.mm.div(unit.factor);
    const places = systemRecord(gauge.system).rounded ? gauge.places : null;
    return amount(written, number, unit, places, 'gauge', gauge);
  }
  const { numeral } = term;
  if (!numeral) return amount(written, rational(0), fallback, null, 'gauge', term.gauge);
  return numberAmount(written, numeral, term.unit ?? fallback, term);
}

function numberAmount(
  written: string,
  numeral: Numeral,
  unit: UnitOfMeasure,
  term: Term,
): Built<Amount> {
  const settled = settleComma(numeral, unit);
  if (!settled) return { problem: unsettledComma(numeral, unit) };
  if (unit.inverse && settled.value.n === 0n) {
    const message = `${written} gives no time at all for a volume`;
    return {
      problem: problem('unreadable', message, 'look in the source again', term.start, term.end),
    };
  }
  if (settled.style === 'fraction' && !isOrdinaryFraction(settled, unit)) {
    return { problem: doubtfulFraction(written, settled, unit) };
  }
  const counted = unit.counted && settled.style === 'integer';
  const exact = settled.ratio || counted || isDrillSize(term, settled, unit);
  const places = exact ? null : settled.places;
  return amount(
    written,
    settled.value,
    unit,
    places,
    term.gauge ? 'gauge' : settled.style,
    term.gauge,
  );
}

/** A drill of that very size: its name tells it exactly, however few places the name has. */
function isDrillSize(term: Term, numeral: Numeral, unit: UnitOfMeasure): boolean {
  const { gauge } = term;
  if (!gauge || systemRecord(gauge.system).family !== 'drill') return false;
  return gauge.mm.equals(numeral.value.mul(unit.factor));
}

/** Denominators that fractions of a unit have; `18/22 thou` is a pair of limits (common practice). */
const DENOMINATORS = {
  inch: [2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 16, 20, 24, 32, 64, 100, 128, 1000],
  counted: [2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 16],
  metric: [2, 4, 5, 8, 10, 20, 50, 100],
  other: [2, 3, 4, 8, 16],
} as const;

function isOrdinaryFraction(numeral: Numeral, unit: UnitOfMeasure): boolean {
  const inch = unit.id === 'in' || unit.id === 'ft';
  const family = inch ? 'inch' : unit.counted ? 'counted' : unit.metric ? 'metric' : 'other';
  const denominator = Number(numeral.ratio?.[1] ?? 1n);
  return (DENOMINATORS[family] as readonly number[]).includes(denominator);
}

/** `± 1/26 in`: what is wrong with a tolerance's fraction that no paper has; null where nothing is. */
export function toleranceFault(numeral: Numeral, unit: UnitOfMeasure): SizeProblem | null {
  if (numeral.style !== 'fraction' || isOrdinaryFraction(numeral, unit)) return null;
  const [over, under] = numeral.ratio ?? [0n, 1n];
  return doubtfulFraction(`${over}/${under} ${unit.id}`, numeral, unit);
}

function doubtfulFraction(written: string, numeral: Numeral, unit: UnitOfMeasure): SizeProblem {
  const [low, high] = numeral.ratio ?? [0n, 1n];
  const range = `${low}–${high} ${unit.id}`;
  return problem(
    'unreadable',
    unit.metric
      ? `${written} is no size: ${unit.id} are told in decimals, not in fractions`
      : `${written} is no fraction that a paper tells ${unit.id} in`,
    low < high
      ? `look for another unit; write ${range}, if it is a pair of limits`
      : 'look in the source again',
    numeral.start,
    numeral.end,
    low < high ? [range] : [],
  );
}

/** An amount from its parts; `places` null makes it exact. */
export function amount(
  text: string,
  number: Rational,
  unit: UnitOfMeasure,
  places: number | null,
  style: Amount['style'],
  gauge: Amount['gauge'],
): Amount {
  const base = toBase(number, unit);
  return {
    text,
    number,
    unit: unit.id,
    places,
    style,
    base,
    could: couldBe(number, unit, places, base),
    gauge,
  };
}

function couldBe(
  number: Rational,
  unit: UnitOfMeasure,
  places: number | null,
  base: Rational,
): Amount['could'] {
  if (places === null) return { low: base, high: base };
  const half = rational(1n, 2n * 10n ** BigInt(places));
  const under = number.sub(half);
  // A time of 0.4 s stated to no places could be no time at all; the flow then has no upper end.
  if (unit.inverse && under.s <= 0n) return { low: toBase(number.add(half), unit), high: base };
  const one = toBase(under, unit);
  const two = toBase(number.add(half), unit);
  return { low: lesser(one, two), high: greater(one, two) };
}

/** The same amount the other way: lean notches are below zero. */
export function negated(value: Amount): Amount {
  const { low, high } = value.could;
  return { ...value, base: value.base.neg(), could: { low: high.neg(), high: low.neg() } };
}

/** The same limit the other way; null stays null. */
export function negatedLimit(limit: Limit | null): Limit | null {
  if (!limit) return null;
  return { base: limit.base.neg(), amount: limit.amount ? negated(limit.amount) : null };
}
