import { formatDecimal } from '../quantity/index.ts';
import type { Gauge, GaugeSystem, Statement } from '../quantity/model.ts';
import type { PlacedSize, Setting, Sheet } from '../sheet/model.ts';

/** A gauge that the edition's work needs, and the units that need it. */
export interface GaugeLine {
  readonly label: string;
  /** Its size in decimal inches and millimeters; null where it could not be read. */
  readonly inch: string | null;
  readonly mm: string | null;
  /** Indexes into the list of sheets that was passed, ascending. */
  readonly usedBy: readonly number[];
}

/** Gauges of one family. */
export interface GaugeGroup {
  readonly title: string;
  readonly gauges: readonly GaugeLine[];
}

const families: readonly { title: string; systems: readonly GaugeSystem[] }[] = [
  {
    title: 'Twist drills',
    systems: ['number-drill', 'letter-drill', 'fraction-drill', 'metric-drill'],
  },
  {
    title: 'Wire feelers',
    systems: ['wire', 'awg', 'swg', 'us-steel-wire', 'music-wire', 'bwg'],
  },
  { title: 'Leaf feelers', systems: ['leaf'] },
  { title: 'Pins', systems: ['pin'] },
];
const otherTitle = 'Other gauges';

/**
 * Every gauge that the settings of these sheets are made with: those named as a gauge, and sizes
 * that are a gauge's name themselves. Grouped by family, ascending by size; gauges whose text could
 * not be read stand last, as written.
 */
export function gaugesToGather(sheets: readonly Sheet[]): GaugeGroup[] {
  const found = new Map<string, { label: string; gauge: Gauge | null; usedBy: Set<number> }>();
  for (const [index, sheet] of sheets.entries()) {
    for (const setting of sheet.settings.values()) {
      for (const { size, always } of gaugeSizes(setting)) {
        const gauge = size.reading.ok ? gaugeOf(size.reading.statement) : null;
        if (gauge === null && !always) continue;
        const key = gauge === null ? size.text.toLowerCase() : `${gauge.system}/${gauge.name}`;
        const line = found.get(key) ?? {
          label: gauge?.label ?? size.text,
          gauge,
          usedBy: new Set<number>(),
        };
        line.usedBy.add(index);
        found.set(key, line);
      }
    }
  }
  const groups = [...families.map((family) => family.title), otherTitle].map((title) => {
    const lines = [...found.values()].filter((line) => familyOf(line.gauge) === title);
    lines.sort((first, second) => bySize(first, second));
    return {
      title,
      gauges: lines.map(({ label, gauge, usedBy }) => ({
        label,
        inch: gauge === null ? null : `${formatDecimal(gauge.mm.div(254, 10), 4)} in`,
        mm: gauge === null ? null : `${formatDecimal(gauge.mm, 3)} mm`,
        usedBy: [...usedBy].sort(ascending),
      })),
    };
  });
  return groups.filter((group) => group.gauges.length > 0);
}

function gaugeSizes(setting: Setting): { size: PlacedSize; always: boolean }[] {
  const named = [setting.gauge, setting.go, setting.noGo];
  const values = [setting.value, ...setting.places.values()];
  return [
    ...named.flatMap((size) => (size === null ? [] : [{ size, always: true }])),
    ...values.flatMap((size) => (size === null ? [] : [{ size, always: false }])),
  ];
}

function gaugeOf(statement: Statement): Gauge | null {
  return statement.nominal?.gauge ?? null;
}

function familyOf(gauge: Gauge | null): string {
  if (gauge === null) return otherTitle;
  return families.find((family) => family.systems.includes(gauge.system))?.title ?? otherTitle;
}

interface Line {
  readonly label: string;
  readonly gauge: Gauge | null;
}

function bySize(first: Line, second: Line): number {
  const size = first.gauge && second.gauge ? first.gauge.mm.compare(second.gauge.mm) : 0;
  if (size !== 0) return size;
  return first.label < second.label ? -1 : first.label > second.label ? 1 : 0;
}

function ascending(first: number, second: number): number {
  return first - second;
}
