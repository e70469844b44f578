import Fraction from 'fraction.js';
import { GAUGES, SOURCES } from '../generated/tables.ts';
import { gaugeLabel } from '../quantity/index.ts';
import type { Gauge, GaugeSystem } from '../quantity/model.ts';

/** A row of a table before anybody has asked for its gauge. */
export interface Row {
  readonly system: GaugeSystem;
  readonly name: string;
  /** Whole nanometers: every size in the tables is exact in them. */
  readonly nanometers: number;
  /** The unrounded inches of a system that has a formula, to seven places; null elsewhere. */
  readonly formulaInches: string | null;
  /** The gauge with its exact size; made when first asked for. */
  gauge(): Gauge;
}

const rowsOf = new Map<GaugeSystem, readonly Row[]>();

/**
 * The rows of a system, ascending by size; of wire and leaf feelers those of the ordinary sets,
 * and none of a system that has no table.
 */
export function rows(system: GaugeSystem): readonly Row[] {
  let known = rowsOf.get(system);
  if (!known) {
    const text = GAUGES[system] ?? '';
    known = text === '' ? [] : text.split('\n').map((line) => makeRow(system, line));
    rowsOf.set(system, known);
  }
  return known;
}

function makeRow(system: GaugeSystem, line: string): Row {
  const [name = '', size = '', places = '', unit, source = '', full] = line.split('\t');
  const nanometers = Number(size);
  let made: Gauge | null = null;
  return {
    system,
    name,
    nanometers,
    formulaInches: full ?? null,
    gauge() {
      made ??= {
        system,
        name,
        label: gaugeLabel(system, name),
        mm: new Fraction(nanometers, 1_000_000),
        places: places === '' ? null : Number(places),
        unit: unit === 'in' ? 'in' : 'mm',
        source: SOURCES[Number(source)] ?? '',
      };
      return made;
    },
  };
}

/** Whether a gauge is one that is sold: in the table of its system, or of a system that has none. */
export function isOrdinary({ system, mm }: Gauge): boolean {
  const all = rows(system);
  const nanometers = mm.mul(1_000_000).valueOf();
  return all.length === 0 || all.some((row) => Math.abs(row.nanometers - nanometers) < 0.5);
}
