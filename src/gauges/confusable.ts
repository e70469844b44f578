import Fraction from 'fraction.js';
import { isNamedBySize } from '../quantity/index.ts';
import type { Gauge } from '../quantity/model.ts';
import { gaugeBook } from './book.ts';
import { inside } from './search.ts';
import { DRILLS, NUMBERED, NUMBERED_WIRES } from './systems.ts';

/** Another gauge that a reader may take in hand for this one. */
export interface Confusable {
  /** `near-twin`: nearly the same size; `same-name`: the same number in another system. */
  readonly kind: 'near-twin' | 'same-name';
  readonly gauge: Gauge;
}

/**
 * Half a thousandth of an inch, the finest that a plain inch micrometer shows: two gauges nearer
 * than this are not told apart by measuring. Common practice, no source.
 */
const TWIN_MM = new Fraction(127n, 10_000n);

/**
 * Gauges worth a note beside this one: near twins of its own trade (No. 28 drill and 9/64 drill;
 * drills with drills, numbered wires with numbered wires), nearest first, then the same number in
 * other systems. A gauge of exactly the same size is no danger and is left out; a gauge named by
 * its own size has none.
 */
export function confusable(gauge: Gauge): readonly Confusable[] {
  if (isNamedBySize(gauge.system)) return [];
  return [...twins(gauge), ...namesakes(gauge)];
}

function twins(gauge: Gauge): Confusable[] {
  const family = DRILLS.includes(gauge.system) ? DRILLS : NUMBERED_WIRES;
  const near = inside(gauge.mm.sub(TWIN_MM), gauge.mm.add(TWIN_MM), family);
  return near
    .filter((other) => other.system !== gauge.system && !other.mm.equals(gauge.mm))
    .map((other) => ({ other, apart: other.mm.sub(gauge.mm).abs() }))
    .filter(({ apart }) => apart.compare(TWIN_MM) < 0)
    .sort((a, b) => a.apart.compare(b.apart))
    .map(({ other }) => ({ kind: 'near-twin', gauge: other }));
}

function namesakes(gauge: Gauge): Confusable[] {
  if (!NUMBERED.includes(gauge.system)) return [];
  return NUMBERED.filter((system) => system !== gauge.system).flatMap((system) => {
    const other = gaugeBook().find(system, gauge.name);
    return other && !other.mm.equals(gauge.mm)
      ? [{ kind: 'same-name' as const, gauge: other }]
      : [];
  });
}
