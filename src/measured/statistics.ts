import { measuredFactors } from '../generated/measured-factors.ts';
import { rational, ZERO } from '../quantity/index.ts';
import type { Rational } from '../quantity/model.ts';
import type { Statistics } from './model.ts';

/** Of fewer readings Grubbs' test is nearly blind: of three the other two would have to be all but the same. */
const LEAST_FOR_OUTLIER = 4;

/**
 * What some readings come to, all given in one unit: mean and sum of squares as exact fractions, the rest in
 * floating point from them. The order of the readings changes nothing but which of equals is the outlier.
 * Fails with a RangeError without any reading.
 */
export function statisticsOf(numbers: readonly Rational[]): Statistics {
  const [first] = numbers;
  if (first === undefined) throw new RangeError('there is no mean of no readings');
  const n = numbers.length;
  const mean = numbers.reduce((sum, each) => sum.add(each), ZERO).div(n);
  const least = numbers.reduce((low, each) => (each.compare(low) < 0 ? each : low), first);
  const most = numbers.reduce((high, each) => (each.compare(high) > 0 ? each : high), first);
  const factors = factorsOf(n);
  if (n < 3 || factors === null) return { n, least, most, mean, spread: null };
  const squares = numbers.reduce(
    (sum, each) => sum.add(each.sub(mean).pow(rational(2)) ?? ZERO),
    ZERO,
  );
  const variance = squares.div(n - 1);
  const deviation = Math.sqrt(variance.valueOf());
  const uncertainty = deviation / Math.sqrt(n);
  const about = (reach: number) => ({ low: mean.valueOf() - reach, high: mean.valueOf() + reach });
  return {
    n,
    least,
    most,
    mean,
    spread: {
      variance,
      deviation,
      uncertainty,
      mean95: about(factors.t * uncertainty),
      units90: about(factors.k * deviation),
      grubbs: grubbsTest(numbers, mean, deviation, factors.g),
    },
  };
}

function grubbsTest(
  numbers: readonly Rational[],
  mean: Rational,
  deviation: number,
  critical: number | null,
): NonNullable<Statistics['spread']>['grubbs'] {
  if (critical === null || numbers.length < LEAST_FOR_OUTLIER) return null;
  // Readings that are all alike leave nothing to be far from.
  if (deviation === 0) return { g: 0, critical, outlier: null };
  const distances = numbers.map((each) => each.sub(mean).abs());
  const farthest = distances.reduce((most, each) => (each.compare(most) > 0 ? each : most), ZERO);
  const g = farthest.valueOf() / deviation;
  const outlier = distances.findIndex((each) => each.equals(farthest));
  return { g, critical, outlier: g > critical ? outlier : null };
}

/** The factors for so many readings; of more than the table has those of its end, which are on the safe side. */
export function factorsOf(
  n: number,
): { readonly t: number; readonly g: number | null; readonly k: number } | null {
  const row = measuredFactors[Math.min(n - 2, measuredFactors.length - 1)];
  if (row === undefined) return null;
  const [t, g, k] = row;
  return { t, g, k };
}
