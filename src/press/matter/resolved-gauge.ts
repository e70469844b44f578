import {
  type GaugeAdvice,
  gaugeAdvice,
  type Kit,
  type KitGauge,
  lengthWords,
  noneWords,
  ordinaryKit,
  stackWords,
  toMakeWords,
} from '../../gauges/index.ts';
import type { Gauge } from '../../quantity/model.ts';
import { gapsOf } from '../../sheet/index.ts';
import type { PlacedSize, Setting, Sheet } from '../../sheet/model.ts';

/** What one takes to measure a setting; every field is text to print. */
export interface ResolvedGauge {
  /** The barrel or place that it is for; null where one serves all. */
  readonly place: string | null;
  /** The gauge, or leaves laid together; null where there is only a pair, or none. */
  readonly take: string | null;
  /** The pair that proves the limits; null where none is named and none is gathered. */
  readonly go: string | null;
  readonly noGo: string | null;
  /** Whether the size is itself the gauge's name, so that nothing need stand beside it. */
  readonly isSize: boolean;
  /** Whether it is chosen out of the gauges that are gathered, since the sheet names none. */
  readonly chosen: boolean;
  /** In a bore: how a round gauge is held; null elsewhere. */
  readonly held: string | null;
  /** What else there is to say: a pair to be made, the nearest where none fits; null for nothing. */
  readonly more: string | null;
  /**
   * In a bore of known width, what a straight gauge that lies across it would read too little:
   * `laid across the bore, 1/2 in of gauge reads 0.0449 in too little`; null elsewhere.
   */
  readonly caution: string | null;
  /** The gauges themselves, those that can be read. */
  readonly gauges: readonly Gauge[];
}

/** What gauges are chosen out of. */
export interface GaugeChoice {
  /** The club's own gauges; the ordinary ones, if absent or null. */
  readonly kit?: Kit | null;
  /** The gauges that the edition gathers, which go before others where they can measure. */
  readonly gathered?: Kit | null;
}

/**
 * The gauge of a setting, one for each of its places that is measured apart: what the sheet names, a size
 * that is itself a gauge's name, and else out of the gauges that are gathered. Empty for what no gauge is
 * put to. Card, booklet, pages and the list of gauges all take it from here.
 */
export function resolvedGauges(
  setting: Setting,
  sheet: Sheet,
  choice: GaugeChoice,
): readonly ResolvedGauge[] {
  if (setting.gauge ?? setting.go ?? setting.noGo) {
    const { gauge, go, noGo } = setting;
    const named = [gauge, go, noGo].flatMap((size) => gaugeNamed(size) ?? []);
    const [take, first, second] = [gauge, go, noGo].map((size) => size?.text ?? null);
    return [
      { ...none, take: take ?? null, go: first ?? null, noGo: second ?? null, gauges: named },
    ];
  }
  const own = [[null, setting.value] as const, ...setting.places].flatMap(([place, size]) => {
    const gauge = gaugeNamed(size);
    return gauge === null
      ? []
      : [{ ...none, place, take: size?.text ?? null, isSize: true, gauges: [gauge] }];
  });
  const gaps = gapsOf(setting, sheet).filter(({ isGauged }) => !isGauged);
  return [
    ...own,
    ...gaps.flatMap(({ statement, place, barrel }) => {
      const listed = choice.gathered ? gaugeAdvice(statement, choice.gathered, place) : null;
      const isListed = listed !== null && (listed.fits.length > 0 || listed.stack?.fits === true);
      const atHand = gaugeAdvice(statement, choice.kit ?? ordinaryKit(), place);
      // A list is of the fewest gauges: nothing has to be made where the whole kit has a pair.
      const advice = isListed ? { ...listed, toMake: atHand?.toMake ?? null } : atHand;
      return advice === null ? [] : [{ ...chosen(advice), place: barrel }];
    }),
  ];
}

/** The steel rule, which is no gauge of a kit. */
export const STEEL_RULE = 'steel rule';

const none: ResolvedGauge = {
  place: null,
  take: null,
  go: null,
  noGo: null,
  isSize: false,
  chosen: false,
  held: null,
  more: null,
  caution: null,
  gauges: [],
};

function chosen(advice: GaugeAdvice): ResolvedGauge {
  const [best] = advice.fits;
  const { acrossMm, clearance, stack, place } = advice;
  const caution =
    acrossMm === null
      ? null
      : `laid across the bore, 1/2 in of gauge reads ${lengthWords(acrossMm, clearance.unit)} too little`;
  const found = { ...none, chosen: true, caution };
  if (best === undefined && stack?.fits) {
    const gauges = stack.leaves.map(({ gauge }) => gauge);
    return { ...found, take: stackWords(stack), gauges };
  }
  if (best === undefined && advice.isForRule) return { ...found, caution: null, take: STEEL_RULE };
  if (best === undefined) return { ...found, more: noneWords(advice) };
  const held = heldWords(best, place.boreMm !== null);
  return { ...found, ...ofKit(best, advice), held, more: toMakeWords(advice) };
}

/** The best gauge, with the pair; of limits on one side the gauge itself is go or no-go. */
function ofKit(
  { gauge }: KitGauge,
  { clearance, pair }: GaugeAdvice,
): Pick<ResolvedGauge, 'take' | 'go' | 'noGo' | 'gauges'> {
  const { lowMm, highMm } = clearance;
  if (highMm === null) return { take: null, go: gauge.label, noGo: null, gauges: [gauge] };
  if (lowMm === null) return { take: null, go: null, noGo: gauge.label, gauges: [gauge] };
  const [go, noGo] = [pair?.go.gauge, pair?.noGo.gauge];
  const gauges = [gauge, ...[go, noGo].filter((each) => each !== undefined)];
  return { take: gauge.label, go: go?.label ?? null, noGo: noGo?.label ?? null, gauges };
}

function heldWords({ widthMm }: KitGauge, inKnownBore: boolean): string | null {
  return inKnownBore && widthMm === null ? 'held along the bore' : null;
}

function gaugeNamed(size: PlacedSize | null): Gauge | null {
  return size?.reading.ok ? (size.reading.statement.nominal?.gauge ?? null) : null;
}

/** `0.035 in wire, held along the bore; go 0.034 in wire, no-go 0.036 in wire`; null for none, and for a size that is one. */
export function gaugeLine(gauges: readonly ResolvedGauge[]): string | null {
  const lines = gauges.flatMap(({ place, take, go, noGo, held, isSize }) => {
    if (isSize) return [];
    const pair = [
      ...(go === null ? [] : [`go ${go}`]),
      ...(noGo === null ? [] : [`no-go ${noGo}`]),
    ].join(', ');
    const first = [take ?? pair, held].filter((part) => part !== null && part !== '').join(', ');
    const words = [first, take === null ? '' : pair].filter((part) => part !== '').join('; ');
    return words === '' ? [] : [place === null ? words : `${place.replaceAll('-', ' ')} ${words}`];
  });
  return lines.length === 0 ? null : lines.join('; ');
}
