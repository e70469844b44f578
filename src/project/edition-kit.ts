import { type Kit, kitOf, readKitEntry } from '../gauges/index.ts';
import { wireGaugeNamed } from '../quantity/index.ts';
import type { Span } from '../text/index.ts';
import type { Fault } from './file-faults.ts';

/** Sets and gauges that a kit may list; it bounds what a stranger's edition can cost. */
const MOST_ENTRIES = 200;

/**
 * The club's own gauges from the list under `kit:`, and what of it cannot be read, each with its
 * place. The kit is null where nothing is listed: the ordinary one counts then. What the schema says
 * of the list's form is not said again.
 */
export function editionKit(
  value: unknown,
  wireGauge: string | null,
  spanOf: (index: number) => Span,
): { readonly kit: Kit | null; readonly faults: readonly Fault[] } {
  if (!Array.isArray(value) || value.length === 0) return { kit: null, faults: [] };
  const swg = wireGaugeNamed(wireGauge);
  const faults: Fault[] = [];
  const entries = value.slice(0, MOST_ENTRIES).flatMap((item: unknown, index) => {
    if (typeof item !== 'string' && typeof item !== 'number') return [];
    const entry = readKitEntry(String(item), swg);
    if (!entry.ok) {
      const { message, fix } = entry;
      faults.push({ check: 'edition-invalid', span: spanOf(index), message, fix });
    }
    return [entry];
  });
  return { kit: kitOf(entries), faults };
}
