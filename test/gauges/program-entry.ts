/** What of the program `new-system.test.ts` builds with a system that the program has not. */
import { examine } from '../../src/checks/list.ts';
import type { Sheet } from '../../src/sheet/model.ts';
import { exampleContext, exampleFile, wholeSheet } from '../checks/examples.ts';

export { gaugeBook } from '../../src/gauges/book.ts';
export { confusable } from '../../src/gauges/confusable.ts';
export { readKitEntry } from '../../src/gauges/kit-entry.ts';
export { namesOf } from '../../src/gauges/search.ts';
export { gaugeUncertainty } from '../../src/gauges/trusted.ts';
export { gaugeTables } from '../../src/press/booklet/gauge-tables.ts';
export { gaugesToGather } from '../../src/press/matter/index.ts';
export { findMisprint } from '../../src/quantity/misprint.ts';
export { scanStatements } from '../../src/quantity/prose.ts';
export { readStatement } from '../../src/quantity/read.ts';

function examined(gauge: string) {
  const settings = `unloader: { value: 0.2180 ± 0.0080 in, gauge: ${gauge}, from: m48 p. 33 }`;
  return examine(wholeSheet({ settings }), exampleFile, exampleContext());
}

/** The clean sheet with a gauge under a setting of 0.2180 in. */
export function sheetWith(gauge: string): Sheet {
  return examined(gauge).sheet;
}

/** What the checks find on that sheet. */
export function foundWith(gauge: string): readonly { readonly check: string }[] {
  return examined(gauge).findings;
}
