import {
  amountFrom,
  type Built,
  isProblem,
  negated,
  negatedLimit,
  toleranceFault,
} from './amount.ts';
import { bareNumber } from './gauge-problems.ts';
import { oneFamily, type Parts } from './grammar.ts';
import type {
  Amount,
  Dimension,
  Limit,
  PressureReference,
  Rational,
  SizeProblem,
  Statement,
} from './model.ts';
import { settleComma } from './numeral.ts';
import { problem } from './problems.ts';
import { greater, lesser } from './rational.ts';
import type { NotationContext, Term } from './term.ts';
import type { Tolerance } from './tolerance.ts';
import { toBase, type UnitOfMeasure, unitById } from './units.ts';

/**
 * Makes a Statement of what the grammar found: settles which unit belongs to which number, works
 * the limits out exactly, and refuses what has no unit, mixes dimensions or turns limits over.
 * `text` is as written; offsets of `parts` count in it.
 */
export function statementFrom(
  text: string,
  parts: Parts,
  context: NotationContext,
  expect: readonly Dimension[] | null,
): Built<Statement> {
  const units = [
    parts.first.unit,
    gaugeUnit(parts.first),
    parts.second?.unit,
    parts.plus?.unit,
    parts.minus?.unit,
    parts.band?.low.unit,
    parts.band?.high.unit,
  ];
  const known = units.filter((unit) => unit !== null && unit !== undefined);
  const shared = known[0];
  if (!shared || parts.first.bareName !== null) return unitless(text, parts, context);
  if (!oneFamily(known)) {
    const message = `${slice(text, parts)} mixes ${known[0]?.dimension} and ${known.find((unit) => unit.dimension !== shared.dimension)?.dimension}`;
    return {
      problem: problem(
        'mixed-dimensions',
        message,
        'state all its parts in units of one kind',
        parts.start,
        parts.end,
      ),
    };
  }
  const stated = amountFrom(
    text,
    parts.first,
    parts.second?.unit ?? parts.minus?.unit ?? parts.plus?.unit ?? shared,
  );
  if (isProblem(stated)) return stated;
  const first = isExactWhole(stated, parts) ? exactly(stated) : stated;
  const other = parts.second ? amountFrom(text, parts.second, shared) : null;
  if (other && isProblem(other)) return other;
  // `1-1/4 to 2 in`: the whole number behind the fraction as well.
  const isWhole = other?.style === 'integer' && INCHES.has(other.unit);
  const second = isWhole && parts.first.numeral?.ratio ? exactly(other) : other;

  for (const tolerance of [parts.plus, parts.minus]) {
    const fault = tolerance && toleranceFault(tolerance.numeral, tolerance.unit ?? shared);
    if (fault)
      return { problem: { ...fault, fix: 'look in the source again', candidates: [], offered: 0 } };
  }

  const reference = referenceOf(parts);
  if (reference === 'mixed') {
    const message = `${slice(text, parts)} mixes pressures counted from different zeros`;
    return {
      problem: problem(
        'mixed-references',
        message,
        'say gauge, absolute or vacuum for all of it',
        parts.start,
        parts.end,
      ),
    };
  }
  const dimension = dimensionOf(shared, reference, expect);
  const band = bandOf(text, parts, shared);
  if (band && isProblem(band)) return band;
  const limits = band ?? limitsOf(parts, first, second);
  if (band && !isInside(first, band)) return outsideBand(text, parts);
  if (limits.low && limits.high && limits.low.base.compare(limits.high.base) > 0)
    return inverted(text, parts);
  const form = parts.plus || band ? 'tolerance' : second ? 'range' : (parts.limit ?? 'exact');
  const lean = parts.sense === 'lean' && dimension === 'notches';
  return {
    text: text.slice(parts.start, parts.end),
    dimension,
    form,
    nominal: form === 'exact' || form === 'tolerance' ? (lean ? negated(first) : first) : null,
    low: lean ? negatedLimit(limits.high) : limits.low,
    high: lean ? negatedLimit(limits.low) : limits.high,
    about: parts.about,
    sense: parts.sense,
    datum: null,
    reference: shared.reference === null ? null : settledReference(reference, dimension, expect),
    condition: null,
    qualifier: null,
    ambiguous: [...parts.first.ambiguous, ...(parts.second?.ambiguous ?? [])],
  };
}

/**
 * `1 ± 1/16 in`, `1 to 1-1/4 in`: a whole number beside a tolerance or a fraction is as exact as
 * these; alone it is right to no places.
 */
function isExactWhole(amount: Amount, { plus, minus, second, band }: Parts): boolean {
  if (amount.style !== 'integer' || !INCHES.has(amount.unit)) return false;
  if (plus || minus || band) return true;
  return second?.numeral?.ratio !== undefined && second.numeral.ratio !== null;
}

const INCHES: ReadonlySet<string> = new Set(['in', 'ft']);

function exactly(amount: Amount): Amount {
  return { ...amount, places: null, could: { low: amount.base, high: amount.base } };
}

interface Band {
  readonly low: Limit;
  readonly high: Limit;
}

function bandOf(text: string, { band }: Parts, shared: UnitOfMeasure): Built<Band> | null {
  if (!band) return null;
  const low = amountFrom(text, band.low, band.high.unit ?? shared);
  if (isProblem(low)) return low;
  const high = amountFrom(text, band.high, band.low.unit ?? shared);
  if (isProblem(high)) return high;
  return { low: { base: low.base, amount: low }, high: { base: high.base, amount: high } };
}

/** A nominal is told to so many places: somewhere in what it could be, it lies inside its limits. */
function isInside(nominal: Amount, { low, high }: Band): boolean {
  return nominal.could.high.compare(low.base) >= 0 && nominal.could.low.compare(high.base) <= 0;
}

function outsideBand(text: string, parts: Parts): { readonly problem: SizeProblem } {
  const message = `${slice(text, parts.first)} lies outside its own limits in ${slice(text, parts)}`;
  const fix = 'look in the source which of the three is wrong';
  return { problem: problem('unreadable', message, fix, parts.start, parts.end) };
}

function slice(text: string, parts: { readonly start: number; readonly end: number }): string {
  return text.slice(parts.start, parts.end);
}

function gaugeUnit(term: Term): UnitOfMeasure | null {
  return term.gauge ? unitById(term.gauge.unit) : null;
}

function unitless(
  text: string,
  parts: Parts,
  context: NotationContext,
): { readonly problem: SizeProblem } {
  const term = parts.first;
  const named = term.bareName !== null;
  // A pair is told as a pair: both have the one unit that is missing.
  const name =
    term.bareName ??
    slice(text, parts.second ? { start: term.start, end: parts.second.end } : term);
  const wire = /^\s*(?:gauge|gage|wire|feeler)/i.test(text.slice(term.end));
  return { problem: bareNumber(name, named, term.start, term.end, context.gauges, wire) };
}

function limitsOf(
  parts: Parts,
  first: Amount,
  second: Amount | null,
): { low: Limit | null; high: Limit | null } {
  if (second) {
    // Between two flows told as times the longer time is the smaller flow.
    const swapped = unitById(first.unit).inverse;
    const [low, high] = swapped ? [second, first] : [first, second];
    return { low: { base: low.base, amount: low }, high: { base: high.base, amount: high } };
  }
  if (parts.plus && parts.minus) {
    const up = shifted(first, parts.plus, 1n);
    const down = shifted(first, parts.minus, -1n);
    return {
      low: { base: lesser(up, down), amount: null },
      high: { base: greater(up, down), amount: null },
    };
  }
  const only = { base: first.base, amount: first };
  const inverse = unitById(first.unit).inverse;
  if (parts.limit === 'min') return inverse ? { low: null, high: only } : { low: only, high: null };
  if (parts.limit === 'max') return inverse ? { low: only, high: null } : { low: null, high: only };
  return { low: null, high: null };
}

function shifted(nominal: Amount, tolerance: Tolerance, sign: bigint): Rational {
  const unit = unitById(nominal.unit);
  const own = tolerance.unit ?? unit;
  const settled = settleComma(tolerance.numeral, own) ?? tolerance.numeral;
  const inNominal =
    own.id === unit.id || own.inverse
      ? settled.value
      : settled.value.mul(own.factor).div(unit.factor);
  const number = nominal.number.add(inNominal.mul(sign));
  return unit.inverse && number.s <= 0n ? nominal.base : toBase(number, unit);
}

function inverted(text: string, parts: Parts): { readonly problem: SizeProblem } {
  const low = slice(text, parts.first);
  const high = parts.second ? slice(text, parts.second) : low;
  const message = `${slice(text, parts)} has its limits the wrong way round: the lower, ${low}, is above the upper, ${high}`;
  // `1 - 1/2 turns` is more likely a mixed number with blanks than limits.
  const mixed =
    parts.first.numeral?.style === 'integer' && parts.second?.numeral?.style === 'fraction';
  const joined = mixed ? slice(text, parts).replace(/\s*[-–]\s*/, '-') : null;
  const turned = turnedLimits(text, parts);
  return {
    problem: problem(
      'limits-inverted',
      message,
      joined
        ? `write ${joined}, if that is meant; otherwise put the smaller first`
        : turned
          ? `write ${turned}, after a look in the source`
          : 'put the smaller first, after a look in the source',
      parts.start,
      parts.end,
      [joined ?? turned].filter((each) => each !== null),
    ),
  };
}

/** A pair of limits the other way round, its unit and words where they were; null for a tolerance. */
function turnedLimits(text: string, { start, end, first, second }: Parts): string | null {
  if (!second || first.start < start || second.end > end || second.start < first.end) return null;
  if ((first.unit ?? null) === null && (first.gauge !== null || first.numeral === null))
    return null;
  const isWhole = [first, second].every((term) => term.end !== term.numeral?.end);
  const [one, two] = isWhole ? [first, second] : [first.numeral, second.numeral];
  if (!one || !two) return null;
  return (
    text.slice(start, one.start) +
    text.slice(two.start, two.end) +
    text.slice(one.end, two.start) +
    text.slice(one.start, one.end) +
    text.slice(two.end, end)
  );
}

/** The one reference that the parts of a size state, `unstated` if none does. */
function referenceOf(parts: Parts): PressureReference | 'mixed' {
  const said = [
    parts.first.reference,
    parts.second?.reference,
    parts.plus?.reference,
    parts.minus?.reference,
  ];
  const stated = new Set(said.filter((reference) => reference && reference !== 'unstated'));
  if (stated.size > 1) return 'mixed';
  return [...stated][0] ?? 'unstated';
}

function dimensionOf(
  unit: UnitOfMeasure,
  reference: PressureReference | 'mixed',
  expect: readonly Dimension[] | null,
): Dimension {
  if (unit.reference === null) return unit.dimension;
  if (reference === 'depression') return 'vacuum';
  if (reference === 'gauge' || reference === 'absolute') return 'pressure';
  if (expect?.includes('vacuum') && !expect.includes('pressure') && !unit.neverVacuum) {
    return 'vacuum';
  }
  if (expect?.includes('pressure') && !expect.includes('vacuum')) return 'pressure';
  return unit.dimension;
}

function settledReference(
  reference: PressureReference | 'mixed',
  dimension: Dimension,
  expect: readonly Dimension[] | null,
): PressureReference {
  if (reference !== 'unstated' && reference !== 'mixed') return reference;
  if (!expect) return 'unstated';
  return dimension === 'vacuum' ? 'depression' : 'gauge';
}
