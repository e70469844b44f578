/** What of the program `new-system.test.ts` builds with a system that the program has not. */
import { examine } from '../../src/checks/index.ts';
import type { Sheet } from '../../src/sheet/model.ts';
import { exampleContext, exampleFile, wholeSheet } from '../checks/examples.ts';

export {
  confusable,
  gaugeBook,
  gaugeUncertainty,
  namesOf,
  readKitEntry,
} from '../../src/gauges/index.ts';
export { gaugeTables } from '../../src/press/booklet/gauge-tables.ts';
export { gaugesToGather } from '../../src/press/matter/index.ts';
export { findMisprint, readStatement, scanStatements } from '../../src/quantity/index.ts';

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
