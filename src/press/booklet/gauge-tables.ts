import { type Kit, nearest } from '../../gauges/index.ts';
import { formatDecimal, GAUGE_FAMILIES, systemRecord, systemsWhere } from '../../quantity/index.ts';
import type { Gauge, GaugeSystem } from '../../quantity/model.ts';

/** A gauge of a table. */
export interface GaugeTableRow {
  readonly label: string;
  readonly inch: string;
  readonly mm: string;
  /** Whether the edition uses it; the others stand beside one that is. */
  readonly isUsed: boolean;
  /** Whether gauges are left out between the one before and this one. */
  readonly afterGap: boolean;
}

export interface GaugeTable {
  readonly title: string;
  readonly rows: readonly GaugeTableRow[];
}

/** The printed tables, by family and in it by system. */
const tables: ReadonlyMap<string, readonly GaugeSystem[]> = new Map(
  GAUGE_FAMILIES.flatMap(([name]) => {
    const titles = systemsWhere(({ family }) => family === name).map(tableOf);
    return titles.flatMap((title) =>
      title === null ? [] : [[title, systemsWhere(({ table }) => table === title)] as const],
    );
  }),
);

function tableOf(system: GaugeSystem): string | null {
  return systemRecord(system).table;
}

/** The part of the gauge tables that an edition uses: its gauges, each with its neighbors either side. */
export function gaugeTables({ gauges }: Kit): readonly GaugeTable[] {
  return [...tables].flatMap(([title, systems]) => {
    const used = gauges.map(({ gauge }) => gauge).filter((gauge) => systems.includes(gauge.system));
    return used.length === 0 ? [] : [{ title, rows: rowsOf(used, systems) }];
  });
}

function rowsOf(used: readonly Gauge[], systems: readonly GaugeSystem[]): readonly GaugeTableRow[] {
  const rows = new Map<string, { gauge: Gauge; isUsed: boolean; above: Gauge | null }>();
  const key = ({ system, name }: Gauge) => `${system}/${name}`;
  const put = (gauge: Gauge | null, isUsed: boolean): void => {
    if (gauge === null) return;
    const known = rows.get(key(gauge));
    const above = nearest(gauge.mm, systems).above;
    rows.set(key(gauge), { gauge, isUsed: isUsed || known?.isUsed === true, above });
  };
  for (const gauge of used) {
    const { below, exact, above } = nearest(gauge.mm, systems);
    put(below, false);
    for (const other of exact) put(other, false);
    put(above, false);
    put(gauge, true);
  }
  const sorted = [...rows.values()].sort(
    (first, second) =>
      first.gauge.mm.compare(second.gauge.mm) ||
      systems.indexOf(first.gauge.system) - systems.indexOf(second.gauge.system),
  );
  return sorted.map(({ gauge, isUsed }, index) => {
    const before = sorted[index - 1];
    const isNext =
      before === undefined ||
      before.gauge.mm.equals(gauge.mm) ||
      before.above?.mm.equals(gauge.mm) === true;
    return {
      label: gauge.label,
      inch: formatDecimal(gauge.mm.div(254, 10), 4),
      mm: formatDecimal(gauge.mm, 3),
      isUsed,
      afterGap: !isNext,
    };
  });
}
