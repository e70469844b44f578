import { ZERO } from '../quantity/index.ts';
import type { Rational } from '../quantity/model.ts';
import type {
  AcceptanceRule,
  EndUncertainty,
  Judgment,
  Limits,
  NearestLimit,
  ReadingRange,
} from './model.ts';

/**
 * Holds a reading against limits. `uncertainty` is the expanded uncertainty of the reading (k = 2), or of
 * each of its ends, in the unit of both and not negative; null where it is not known: then nothing is proved by the
 * guarded rule, neither inside nor out. The limits must have at least one end.
 *
 * A reading of exactly an acceptance limit is accepted. Proof that it is out asks that the limit lie
 * beyond all that the uncertainty leaves possible (JCGM 106:2012, guarded acceptance and rejection).
 */
export function judge(
  reading: ReadingRange,
  uncertainty: Rational | EndUncertainty | null,
  limits: Limits,
  rule: AcceptanceRule,
): Judgment {
  const known = rule === 'simple' ? ZERO : uncertainty;
  const guard = known === null || 'low' in known ? known : { low: known, high: known };
  const accepted = guard === null ? { low: null, high: null } : drawnIn(limits, guard);
  const hopeless =
    accepted.low !== null && accepted.high !== null && accepted.low.compare(accepted.high) > 0;
  if (guard === null) return { verdict: 'unproven', accepted, hopeless };
  if (isInside(reading, accepted)) return { verdict: 'conforms', accepted, hopeless };
  const verdict = isOut(reading, guard, limits) ? 'does not conform' : 'unproven';
  return { verdict, accepted, hopeless };
}

function drawnIn(limits: Limits, guard: EndUncertainty): Limits {
  return {
    low: limits.low === null ? null : limits.low.add(guard.low),
    high: limits.high === null ? null : limits.high.sub(guard.high),
  };
}

function isInside(reading: ReadingRange, accepted: Limits): boolean {
  const above = accepted.low === null || (reading.low?.compare(accepted.low) ?? -1) >= 0;
  const below = accepted.high === null || (reading.high?.compare(accepted.high) ?? 1) <= 0;
  return above && below;
}

/** An end that is itself left out of the reading proves as much when it touches the limit. */
function isOut(reading: ReadingRange, guard: EndUncertainty, limits: Limits): boolean {
  const least = reading.open ? 0 : 1;
  const { low, high } = reading;
  const over =
    limits.high !== null && low !== null && low.sub(guard.low).compare(limits.high) >= least;
  const under =
    limits.low !== null && high !== null && limits.low.compare(high.add(guard.high)) >= least;
  return over || under;
}

/**
 * The limit that a size is furthest beyond or, inside, nearest to; of two equally near ones the
 * lower. Null where there are no limits.
 */
export function nearestLimit(size: Rational, { low, high }: Limits): NearestLimit | null {
  const under = low === null ? null : ({ side: 'low', limit: low, beyond: low.sub(size) } as const);
  const over =
    high === null ? null : ({ side: 'high', limit: high, beyond: size.sub(high) } as const);
  if (under === null || over === null) return under ?? over;
  return over.beyond.compare(under.beyond) > 0 ? over : under;
}
