import { inUnit, NOT_STATED, type ReadOptions, unitById } from '../quantity/index.ts';
import type { Rational } from '../quantity/model.ts';
import { judge } from './judge.ts';
import type { AcceptanceRule, Judgment, Limits } from './model.ts';
import { probabilityInside } from './normal.ts';
import type { TakenReading } from './reading.ts';
import type { RecordEntry } from './record.ts';
import type { Wanted } from './stated-limits.ts';
import { type Trust, type TrustFault, trustIn } from './trust.ts';

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
  /** `no limits` where the sheet says that its sources state nothing. */
  readonly verdict: 'conforms' | 'does not conform' | 'unproven' | 'no limits';
}

export type Assessed = AssessedSize | AssessedCondition;

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
    judgment: bounded ? judge(range, trust.ends, limits, rule) : null,
    probability:
      bounded && size && range.low !== null && trust.ofGauge !== null
        ? probabilityInside(range.low, { gauge: trust.ofGauge, half: trust.half }, limits)
        : null,
    fromNominal: size && range.low !== null ? lessNominal(range.low, wanted, unit) : null,
  };
}

/** The sheet's words are met or not; other words are no proof of either, but other numbers are. */
function assessCondition(text: string, condition: string, wanted: Wanted): AssessedCondition {
  const asked = wanted.statement?.condition ?? null;
  if (asked === NOT_STATED) return { form: 'condition', text, verdict: 'no limits' };
  const verdict =
    asked === condition
      ? 'conforms'
      : condition === `not ${asked}` || wanted.statement?.dimension === 'sequence'
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

function lessNominal(
  number: Rational,
  { statement, nominal }: Wanted,
  unit: string,
): Rational | null {
  if (statement === null || nominal === null) return null;
  return number.sub(inUnit(nominal, statement.dimension, unit));
}
