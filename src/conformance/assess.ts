import { inUnit, type ReadOptions } from '../quantity/index.ts';
import type { Rational } from '../quantity/model.ts';
import { greater, ZERO } from '../quantity/rational.ts';
import { unitById } from '../quantity/units.ts';
import { instrumentNamed } from './instruments.ts';
import { judge } from './judge.ts';
import type { AcceptanceRule, Judgment, Limits } from './model.ts';
import { probabilityInside } from './normal.ts';
import type { TakenReading } from './reading.ts';
import type { RecordEntry } from './record.ts';
import type { Wanted } from './stated-limits.ts';
import { halfLastPlace, uncertaintyOf } from './uncertainty.ts';

/** How far a reading is to be trusted, and on whose word. */
export interface Trust {
  /** In the unit of the reading; null where it is not known. */
  readonly value: Rational | null;
  /** `caliper`, `13/64 drill`: what it was measured with, in words; null where nobody says. */
  readonly gauge: string | null;
  /**
   * Whose word it is: the record's own, the table's for an ordinary instrument, that of the last
   * figure written; of an unknown one why it is not known.
   */
  readonly basis: 'record' | 'table' | 'last-figure' | 'not-said' | 'not-in-table' | 'unfit';
  /** The source of the table's row; null for any other basis. */
  readonly source: string | null;
}

/** A size held against a sheet's limits; figures in the unit of the reading. */
export interface AssessedSize {
  readonly form: 'size';
  readonly reading: Extract<TakenReading, { form: 'size' }>;
  readonly unit: string;
  readonly limits: Limits;
  readonly trust: Trust;
  /** Null where the sheet states no limits. */
  readonly judgment: Judgment | null;
  /** Of a measured size with limits and a known uncertainty, from 0 to 1; null for any other. */
  readonly probability: number | null;
  /** The reading less the sheet's figure; null where the sheet has only limits. */
  readonly fromNominal: Rational | null;
}

/** A condition held against the sheet's words. */
export interface AssessedCondition {
  readonly form: 'condition';
  readonly text: string;
  readonly verdict: 'conforms' | 'does not conform' | 'unproven';
}

export type Assessed = AssessedSize | AssessedCondition;

/** An uncertainty that the record states and that cannot be used: what is wrong with it. */
export interface TrustFault {
  readonly message: string;
  readonly fix: string | null;
}

/** Judges one reading that has been made sense of, by the rule that was asked for. */
export function assess(
  taken: TakenReading,
  entry: RecordEntry,
  wanted: Wanted,
  rule: AcceptanceRule,
  options: ReadOptions,
): Assessed | { readonly fault: TrustFault } {
  if (taken.form === 'condition') return assessCondition(taken.text, taken.condition, wanted);
  const trust = trustIn(taken, entry, options);
  if ('fault' in trust) return trust;
  const { unit } = taken.amount;
  const limits = limitsIn(wanted, unit);
  const { range } = taken;
  const bounded = limits.low !== null || limits.high !== null;
  const size = !range.open && range.low !== null && range.high?.equals(range.low) === true;
  return {
    form: 'size',
    reading: taken,
    unit,
    limits,
    trust,
    judgment: bounded ? judge(range, trust.value, limits, rule) : null,
    probability:
      bounded && size && range.low !== null && trust.value !== null
        ? probabilityInside(range.low, trust.value, limits)
        : null,
    fromNominal: size && range.low !== null ? lessNominal(range.low, wanted, unit) : null,
  };
}

/** The sheet's words are met or not; other words are no proof of either. */
function assessCondition(text: string, condition: string, wanted: Wanted): AssessedCondition {
  const asked = wanted.statement?.condition ?? null;
  const verdict =
    asked === condition
      ? 'conforms'
      : condition === `not ${asked}`
        ? 'does not conform'
        : 'unproven';
  return { form: 'condition', text, verdict };
}

/** A sheet's limits in a unit; of a time per volume the two change places. */
export function limitsIn({ low, high, statement }: Wanted, unitId: string): Limits {
  const unit = unitById(unitId);
  const into = (base: Rational | null) =>
    base === null || (unit.inverse && base.n === 0n)
      ? null
      : inUnit(base, statement?.dimension ?? unit.dimension, unit.id);
  return unit.inverse ? { low: into(high), high: into(low) } : { low: into(low), high: into(high) };
}

function lessNominal(number: Rational, { statement }: Wanted, unit: string): Rational | null {
  const nominal = statement?.nominal ?? null;
  if (statement === null || nominal === null) return null;
  return number.sub(inUnit(nominal.base, statement.dimension, unit));
}

function trustIn(
  taken: Extract<TakenReading, { form: 'size' }>,
  entry: RecordEntry,
  options: ReadOptions,
): Trust | { readonly fault: TrustFault } {
  const gauge = entry.gauge?.value ?? (taken.gauges.length > 0 ? taken.gauges.join(', ') : null);
  const stated = taken.ownUncertainty ?? entry.uncertainty?.value ?? null;
  if (stated !== null) {
    const read = uncertaintyOf(stated, taken.amount, options);
    if (!read.ok) return { fault: { message: read.message, fix: read.fix } };
    return coarsest(read.value, taken, { gauge, basis: 'record', source: null });
  }
  const unknown = (basis: Trust['basis']): Trust => ({ value: null, gauge, basis, source: null });
  if (gauge === null) return unknown('not-said');
  // Go and no-go may be of two kinds: the less certain counts for both.
  const texts = entry.gauge === null ? taken.gauges : [entry.gauge.value];
  let most: Rational = ZERO;
  let source: string | null = null;
  for (const text of texts) {
    const instrument = instrumentNamed(text);
    if (instrument === null) return unknown('not-in-table');
    const read = uncertaintyOf(instrument.uncertainty, taken.amount, options);
    if (!read.ok) return unknown('unfit');
    most = greater(most, read.value);
    source = instrument.source;
  }
  return coarsest(most, taken, { gauge, basis: 'table', source });
}

/**
 * A figure written to fewer places than the gauge is good for tells no more than its last place:
 * half of that counts then. The size of a named gauge is no such figure.
 */
function coarsest(
  value: Rational,
  { amount, range }: Extract<TakenReading, { form: 'size' }>,
  rest: Omit<Trust, 'value'>,
): Trust {
  const half = amount.gauge !== null || range.open ? null : halfLastPlace(amount);
  if (half === null || half.compare(value) <= 0) return { ...rest, value };
  return { ...rest, value: half, basis: 'last-figure', source: null };
}
