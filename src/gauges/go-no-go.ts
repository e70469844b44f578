import type { Gauge, GaugeSystem, Rational } from '../quantity/model.ts';
import { inside, nearest } from './search.ts';

/** A pair that proves a gap within its limits, or the reason why no pair does. */
export type GoNoGo =
  | { readonly go: Gauge; readonly noGo: Gauge; readonly reason: null }
  | { readonly go: null; readonly noGo: null; readonly reason: string };

/**
 * The pair that proves a gap inside its limits: the go gauge passes, so the gap is at least its
 * size; the no-go gauge does not, so the gap is less than its size. Both must then lie within the
 * limits, and the pair that refuses the fewest good gaps is the smallest and the largest that do.
 * Both null, with a reason for the reader, where the limits hold no two sizes that exist.
 */
export function goNoGo(
  lowMm: Rational,
  highMm: Rational,
  systems?: readonly GaugeSystem[],
): GoNoGo {
  if (lowMm.compare(highMm) > 0) return none('the lower limit is above the upper one');
  const within = inside(lowMm, highMm, systems);
  return within.length === 0 ? none(nothingWithin(lowMm, systems)) : pairOf(within);
}

/** The pair out of gauges, ascending by size, that all lie within the limits. */
export function pairOf(within: readonly Gauge[]): GoNoGo {
  const go = within[0];
  if (!go) return none('no gauge lies within the limits');
  const largest = within[within.length - 1] ?? go;
  if (largest.mm.equals(go.mm)) {
    return none(
      `only ${go.label} lies within the limits, and a go and a no-go gauge need two sizes`,
    );
  }
  const noGo = within.find((gauge) => gauge.mm.equals(largest.mm)) ?? largest;
  return { go, noGo, reason: null };
}

function nothingWithin(mm: Rational, systems: readonly GaugeSystem[] | undefined): string {
  const { below, above } = nearest(mm, systems);
  const sides = [below && `${below.label} is below them`, above && `${above.label} above`];
  const said = sides.filter((side) => side !== null).join(', ');
  return `no gauge lies within the limits${said === '' ? '' : `: ${said}`}`;
}

function none(reason: string): GoNoGo {
  return { go: null, noGo: null, reason };
}
