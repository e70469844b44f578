import { type Kit, nearest } from '../../gauges/index.ts';
import { formatDecimal } from '../../quantity/index.ts';
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

const families: readonly { title: string; systems: readonly GaugeSystem[] }[] = [
  {
    title: 'Twist drills in inch sizes',
    systems: ['number-drill', 'letter-drill', 'fraction-drill'],
  },
  { title: 'Metric twist drills', systems: ['metric-drill'] },
  { title: 'Wire feelers', systems: ['wire'] },
  { title: 'Imperial standard wire gauge', systems: ['swg'] },
  { title: 'American wire gauge', systems: ['awg'] },
  { title: 'US steel wire gauge', systems: ['us-steel-wire'] },
  { title: 'Music wire', systems: ['music-wire'] },
  { title: 'Birmingham wire gauge', systems: ['bwg'] },
  { title: 'Leaf feelers', systems: ['leaf'] },
];

/** The part of the gauge tables that an edition uses: its gauges, each with its neighbors either side. */
export function gaugeTables({ gauges }: Kit): readonly GaugeTable[] {
  return families.flatMap(({ title, systems }) => {
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
