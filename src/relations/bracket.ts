import type { Interval } from './model.ts';

/** More halvings than any stretch of doubles that a formula meets can take. */
const HALVINGS = 200;

/**
 * Where a rising function comes to a figure inside `target`, between `least` and `most`: for formulas
 * that can't be turned around. `forward` gives a stretch sure to hold the function at a number,
 * whatever the other figures are within their limits; the result holds every number at which the
 * function can meet the target, and is as narrow as `forward` allows. Where the function meets it
 * nowhere, the result is the end that comes nearest: the caller refuses such figures beforehand.
 */
export function bracket(
  target: Interval,
  least: number,
  most: number,
  forward: (at: number) => Interval,
): Interval {
  // Below `lo` the function is surely under the target, above `hi` surely over it.
  const lo = edge(least, most, (at) => forward(at).hi < target.lo, 'below');
  const hi = edge(least, most, (at) => !(forward(at).lo > target.hi), 'above');
  return { lo: Math.min(lo, hi), hi: Math.max(lo, hi) };
}

/** Where `holds` turns from true to false, given from the side asked for. */
function edge(
  least: number,
  most: number,
  holds: (at: number) => boolean,
  side: 'below' | 'above',
): number {
  if (!holds(least)) return least;
  if (holds(most)) return most;
  let below = least;
  let above = most;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = below + (above - below) / 2;
    if (middle <= below || middle >= above) break;
    if (holds(middle)) below = middle;
    else above = middle;
  }
  return side === 'below' ? below : above;
}
