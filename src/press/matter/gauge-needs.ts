import {
  fewestGauges,
  fittingGauges,
  gaugeAdvice,
  type Kit,
  type KitGauge,
  LEAF_WIDTH_MM,
} from '../../gauges/index.ts';
import { isFlat } from '../../quantity/index.ts';
import type { Gauge, Rational } from '../../quantity/model.ts';
import { gapsOf, type SettingGap } from '../../sheet/index.ts';
import type { Setting, Sheet } from '../../sheet/model.ts';

/** A setting of one of the sheets. */
export interface Served {
  /** Index into the list of sheets that was passed. */
  readonly sheet: number;
  readonly setting: Setting;
}

/** How the settings that name no gauge are measured. */
export interface GaugeNeeds {
  /** Each with the gauge that serves it, or the leaves that do so together. */
  readonly met: readonly { readonly gauge: Gauge; readonly served: Served }[];
  /** Those that a steel rule can tell, and no gauge of the kit. */
  readonly byRule: readonly Served[];
  /** Those that nothing at hand serves, with the nearest. */
  readonly unmet: readonly { readonly served: Served; readonly words: string }[];
  /** How many one gauge each can measure. */
  readonly count: number;
  /** How many gauges were chosen for them, beside those that are named anyway. */
  readonly chosen: number;
  /** As many are needed at least: proven. */
  readonly atLeast: number;
}

/**
 * Chooses the fewest gauges for all gaps of the sheets that name none. A gauge that a sheet names
 * for another setting, or that a stack of leaves needs, is there anyway and serves where it fits.
 */
export function gaugeNeeds(
  sheets: readonly { readonly sheet: Sheet }[],
  named: readonly Gauge[],
  kit: Kit,
): GaugeNeeds {
  const had = withNamed(kit, named);
  const index = new Map(had.gauges.map((each, at) => [keyOf(each.gauge), at]));
  const already = new Set(named.map((gauge) => index.get(keyOf(gauge)) ?? -1));
  const met: { gauge: Gauge; served: Served }[] = [];
  const byRule: Served[] = [];
  const unmet: { served: Served; words: string }[] = [];
  const open: { served: Served; list: readonly number[] }[] = [];
  for (const { served, gap } of ungauged(sheets)) {
    const advice = gaugeAdvice(gap.statement, kit, gap.place);
    if (advice === null) continue;
    const list = usable(fittingGauges(advice.clearance, had, gap.place), advice.clearance.stated);
    const { lowMm, highMm } = advice.clearance;
    if (list.length > 0) {
      // A larger gauge than the one at the limit would prove a least gap too, and refuse good ones.
      const oneSided = lowMm === null || highMm === null;
      const near = oneSided ? list.filter(({ gauge }) => isOf(gauge, list[0]?.gauge.mm)) : list;
      open.push({ served, list: near.map((each) => index.get(keyOf(each.gauge)) ?? -1) });
    } else if (advice.stack?.fits) {
      for (const { gauge } of advice.stack.leaves) {
        already.add(index.get(keyOf(gauge)) ?? -1);
        met.push({ gauge, served });
      }
    } else if (advice.isForRule) byRule.push(served);
    else unmet.push({ served, words: advice.text });
  }
  const lists = open.map(({ list }) => list);
  const { chosen, atLeast } = fewestGauges(lists, already);
  const taken = new Set([...already, ...chosen]);
  for (const { served, list } of open) {
    const gauge = had.gauges[list.find((at) => taken.has(at)) ?? -1]?.gauge;
    if (gauge) met.push({ gauge, served });
  }
  return { met, byRule, unmet, count: open.length, chosen: chosen.length, atLeast };
}

/** A gauge is told apart from all others by this. */
export function keyOf({ system, name }: Gauge): string {
  return `${system}/${name}`;
}

function* ungauged(
  sheets: readonly { readonly sheet: Sheet }[],
): Generator<{ served: Served; gap: SettingGap }> {
  for (const [at, { sheet }] of sheets.entries()) {
    for (const setting of sheet.settings.values()) {
      for (const gap of gapsOf(setting, sheet))
        if (!gap.isGauged) yield { served: { sheet: at, setting }, gap };
    }
  }
}

/** For a nominal without limits, the gauge of that very size before others that round to it. */
function usable(fits: readonly KitGauge[], stated: boolean): readonly KitGauge[] {
  return stated ? fits : fits.filter(({ gauge }) => isOf(gauge, fits[0]?.gauge.mm));
}

function isOf(gauge: Gauge, mm: Rational | undefined): boolean {
  return mm !== undefined && gauge.mm.equals(mm);
}

function withNamed(kit: Kit, named: readonly Gauge[]): Kit {
  const known = new Set(kit.gauges.map(({ gauge }) => keyOf(gauge)));
  const extra = named
    .filter((gauge) => !known.has(keyOf(gauge)))
    .map((gauge) => ({ gauge, widthMm: isFlat(gauge.system) ? LEAF_WIDTH_MM : null }));
  return { ...kit, gauges: [...kit.gauges, ...extra] };
}
