import { isNamedBySize } from '../quantity/index.ts';
import type { Gauge, GaugeBook, GaugeSystem } from '../quantity/model.ts';
import { sizedGauge } from './sized-gauge.ts';
import { tableName } from './systems.ts';
import { type Row, rows } from './tables.ts';

const byName = new Map<GaugeSystem, ReadonlyMap<string, Row>>();
const whole = new Map<GaugeSystem, readonly Gauge[]>();

function row(system: GaugeSystem, written: string): Row | null {
  const name = tableName(system, written);
  if (name === null) return null;
  let names = byName.get(system);
  if (!names) {
    names = new Map(rows(system).map((each) => [each.name, each]));
    byName.set(system, names);
  }
  return names.get(name) ?? null;
}

const BOOK: GaugeBook = {
  find(system, name) {
    if (isNamedBySize(system)) return sizedGauge(system, name);
    return row(system, name)?.gauge() ?? null;
  },
  all(system) {
    let gauges = whole.get(system);
    if (!gauges) {
      gauges = isNamedBySize(system) ? [] : rows(system).map((each) => each.gauge());
      whole.set(system, gauges);
    }
    return gauges;
  },
};

/**
 * All gauges the project knows, from the tables in `src/gauges/data`. A system is unpacked when
 * first asked for. `gaugeBook().find('number-drill', '29')` is 0.1360 in.
 */
export function gaugeBook(): GaugeBook {
  return BOOK;
}

/**
 * The unrounded size in inches of an AWG number, to seven places as ASTM B258 computes it:
 * `formulaInches('awg', '18')` is `0.0403027`. Null for a system without a formula.
 */
export function formulaInches(system: GaugeSystem, name: string): string | null {
  return row(system, name)?.formulaInches ?? null;
}
