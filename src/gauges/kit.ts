import Fraction from 'fraction.js';
import { ORDINARY_KIT } from '../generated/tables.ts';
import { isFlat, SYSTEMS } from '../quantity/index.ts';
import type { Gauge, Rational } from '../quantity/model.ts';
import { type KitEntry, readKitEntry } from './kit-entry.ts';

/** A gauge that somebody has. */
export interface KitGauge {
  readonly gauge: Gauge;
  /** How wide a leaf is; null for what is round. */
  readonly widthMm: Rational | null;
}

/** The gauges at hand. */
export interface Kit {
  /** Ascending by size, each gauge once. */
  readonly gauges: readonly KitGauge[];
  /** Whether it is the ordinary one, for want of a club's own. */
  readonly ordinary: boolean;
}

/** Half an inch, as wide as the leaves of an ordinary set are. Common practice, no source. */
export const LEAF_WIDTH_MM: Rational = new Fraction(127n, 10n);

/** A kit from lines that could be read; of a gauge that two lines have, the later counts. */
export function kitOf(entries: readonly KitEntry[], ordinary = false): Kit {
  const found = new Map<string, KitGauge>();
  for (const entry of entries) {
    if (!entry.ok) continue;
    for (const gauge of entry.gauges) {
      found.set(`${gauge.system}/${gauge.name}`, {
        gauge,
        widthMm: isFlat(gauge.system) ? (entry.widthMm ?? LEAF_WIDTH_MM) : null,
      });
    }
  }
  const place = new Map(SYSTEMS.map((system, index) => [system, index]));
  const gauges = [...found.values()].sort(
    (a, b) =>
      a.gauge.mm.compare(b.gauge.mm) ||
      (place.get(a.gauge.system) ?? 0) - (place.get(b.gauge.system) ?? 0),
  );
  return { gauges, ordinary };
}

let ordinary: Kit | null = null;

/** What lies on an ordinary bench, from `src/gauges/data/ordinary-kit.tsv`; read when first asked for. */
export function ordinaryKit(): Kit {
  ordinary ??= kitOf(
    ORDINARY_KIT.split('\n').map((line) => {
      const [set = '', wide = ''] = line.split('\t');
      return readKitEntry(wide === '' ? set : `${set}, ${wide} wide`);
    }),
    true,
  );
  return ordinary;
}
