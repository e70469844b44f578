import { type Kit, type KitEntry, kitOf, ordinaryKit } from '../../gauges/index.ts';
import { formatDecimal, GAUGE_FAMILIES, systemRecord } from '../../quantity/index.ts';
import type { Gauge } from '../../quantity/model.ts';
import { settingLabel } from '../../sheet/index.ts';
import type { PlacedSize, Setting, Sheet } from '../../sheet/model.ts';
import { type GaugeNeeds, gaugeNeeds, keyOf, type Served } from './gauge-needs.ts';
import { resolvedGauges, STEEL_RULE } from './resolved-gauge.ts';

/** The settings of one sheet that a gauge serves. */
export interface GaugeUse {
  /** Index into the list of sheets that was passed. */
  readonly sheet: number;
  /** Their labels in the sheet's order, parted by commas: `Float level, Choke unloader`. */
  readonly settings: string;
}

/** A gauge that the edition's work needs, and the settings that need it. */
export interface GaugeLine {
  readonly label: string;
  /** Its size in decimal inches and millimeters; null where it could not be read, or has none. */
  readonly inch: string | null;
  readonly mm: string | null;
  /** By sheet, ascending. */
  readonly usedBy: readonly GaugeUse[];
}

/** Gauges of one family. */
export interface GaugeGroup {
  readonly title: string;
  readonly gauges: readonly GaugeLine[];
}

/** All that the readers of an edition gather before they begin. */
export interface Gathering {
  readonly groups: readonly GaugeGroup[];
  /** How few the chosen gauges are; null where every setting names its own. */
  readonly minimum: string | null;
  /** The gauges of the groups that could be read, for rows that name what the list has. */
  readonly kit: Kit;
  /** Settings that nothing at hand measures, each with the nearest. */
  readonly unmet: readonly { readonly sheet: number; readonly words: string }[];
}

const otherTitle = 'Other gauges';

interface Found {
  readonly label: string;
  readonly gauge: Gauge | null;
  readonly served: Served[];
}

/**
 * Every gauge that the settings of these sheets are made with: those named as a gauge, sizes that
 * are a gauge's name themselves, and for the gaps that name none the fewest of the kit that serve
 * them all. Grouped by family, ascending by size; gauges whose text could not be read stand last,
 * as written.
 */
export function gaugesToGather(
  sheets: readonly { readonly sheet: Sheet }[],
  kit: Kit = ordinaryKit(),
): Gathering {
  const found = new Map<string, Found>();
  const add = (key: string, label: string, gauge: Gauge | null, served: Served): void => {
    const line = found.get(key) ?? { label, gauge, served: [] };
    found.set(key, line);
    line.served.push(served);
  };
  for (const [index, { sheet }] of sheets.entries()) {
    for (const setting of sheet.settings.values()) {
      for (const { size, always } of gaugeSizes(setting)) {
        const gauge = size.reading.ok ? (size.reading.statement.nominal?.gauge ?? null) : null;
        if (gauge === null && !always) continue;
        const key = gauge === null ? size.text.toLowerCase() : keyOf(gauge);
        add(key, gauge?.label ?? size.text, gauge, { sheet: index, setting });
      }
    }
  }
  const named = [...found.values()].flatMap(({ gauge }) => (gauge === null ? [] : [gauge]));
  const needs = gaugeNeeds(sheets, named, kit);
  const chosen = [...new Map(needs.met.map(({ gauge }) => [keyOf(gauge), gauge])).values()];
  const gathered = kitOf([...named, ...chosen].flatMap((gauge) => entryOf(gauge, kit)));
  for (const [index, { sheet }] of sheets.entries()) {
    for (const setting of sheet.settings.values()) {
      for (const resolved of resolvedGauges(setting, sheet, { kit, gathered })) {
        if (!resolved.chosen) continue;
        const served = { sheet: index, setting };
        if (resolved.take === STEEL_RULE) add(STEEL_RULE, STEEL_RULE, null, served);
        for (const gauge of resolved.gauges) add(keyOf(gauge), gauge.label, gauge, served);
      }
    }
  }
  const labelOf = ({ setting }: Served): string => settingLabel(setting);
  return {
    groups: grouped([...found.values()], labelOf),
    minimum: minimumWords(needs),
    kit: gathered,
    unmet: needs.unmet.map(({ served, words }) => ({
      sheet: served.sheet,
      words: `${labelOf(served)}: ${words}`,
    })),
  };
}

/** The gauge as a line of a kit of its own, as wide as the kit at hand has it. */
function entryOf(gauge: Gauge, kit: Kit): KitEntry[] {
  const own = kit.gauges.find((each) => keyOf(each.gauge) === keyOf(gauge));
  return [{ ok: true, gauges: [gauge], widthMm: own?.widthMm ?? null }];
}

function grouped(found: readonly Found[], labelOf: (served: Served) => string): GaugeGroup[] {
  const titles = [...GAUGE_FAMILIES.map(([, { title }]) => title), otherTitle];
  return titles
    .map((title) => {
      const lines = found.filter((line) => familyOf(line.gauge) === title);
      lines.sort((first, second) => bySize(first, second));
      return {
        title,
        gauges: lines.map(({ label, gauge, served }) => ({
          label,
          inch: gauge === null ? null : `${formatDecimal(gauge.mm.div(254, 10), 4)} in`,
          mm: gauge === null ? null : `${formatDecimal(gauge.mm, 3)} mm`,
          usedBy: usesOf(served, labelOf),
        })),
      };
    })
    .filter((group) => group.gauges.length > 0);
}

function usesOf(served: readonly Served[], labelOf: (served: Served) => string): GaugeUse[] {
  const sheets = [...new Set(served.map(({ sheet }) => sheet))].sort((a, b) => a - b);
  return sheets.map((sheet) => {
    const own = served.filter((each) => each.sheet === sheet).map(labelOf);
    return { sheet, settings: [...new Set(own)].join(', ') };
  });
}

function minimumWords({ count, chosen, atLeast }: GaugeNeeds): string | null {
  if (count === 0) return null;
  const settings = count === 1 ? 'One setting names' : `${count} settings name`;
  if (chosen === 0) return `${settings} no gauge, and those that the others name serve there too.`;
  const gauges = chosen === 1 ? 'one more gauge serves' : `${chosen} more gauges serve`;
  const start = `${settings} no gauge: beside those that the sheets name, ${gauges} for all of them`;
  if (chosen === 1) return `${start}.`;
  if (chosen === atLeast) return `${start}, and no choice of fewer does.`;
  return `${start}. At least ${atLeast} are needed; whether ${chosen - atLeast} can be saved is not proven.`;
}

function gaugeSizes(setting: Setting): { size: PlacedSize; always: boolean }[] {
  const named = [setting.gauge, setting.go, setting.noGo];
  const values = [setting.value, ...setting.places.values()];
  return [
    ...named.flatMap((size) => (size === null ? [] : [{ size, always: true }])),
    ...values.flatMap((size) => (size === null ? [] : [{ size, always: false }])),
  ];
}

function familyOf(gauge: Gauge | null): string {
  if (gauge === null) return otherTitle;
  const { family } = systemRecord(gauge.system);
  return GAUGE_FAMILIES.find(([name]) => name === family)?.[1].title ?? otherTitle;
}

function bySize(first: Found, second: Found): number {
  const size = first.gauge && second.gauge ? first.gauge.mm.compare(second.gauge.mm) : 0;
  if (size !== 0) return size;
  return first.label < second.label ? -1 : first.label > second.label ? 1 : 0;
}
