import { formatDecimal, rational, spaced, unitWord, usualPlaces } from '../quantity/index.ts';
import type { Rational } from '../quantity/model.ts';
import type { PrintedFigure, Sample, Stretch } from './model.ts';
import { printedFigure, statedHalf } from './samples.ts';

/** What was measured of one setting, as plain data with the figures in words: for reports and the press alike. */
export interface MeasuredSummary {
  readonly source: string;
  readonly setting: string;
  readonly label: string;
  readonly n: number;
  /** A unit's id. */
  readonly unit: string;
  /** As written, in their order. */
  readonly readings: readonly { readonly text: string; readonly record: string | null }[];
  readonly least: string;
  readonly most: string;
  /** With one place more than the readings. */
  readonly mean: string;
  /** `2751/50000`, in the unit. */
  readonly meanExact: string;
  /** All below are null of fewer than three readings. In the unit. */
  readonly deviation: number | null;
  readonly deviationText: string | null;
  readonly uncertainty: number | null;
  readonly uncertaintyText: string | null;
  readonly mean95: (Stretch & { readonly text: string }) | null;
  readonly tolerance:
    | (Stretch & {
        readonly text: string;
        /** Whether the sheet's limits hold that whole stretch; null where it states none. */
        readonly held: boolean | null;
      })
    | null;
  /** Null of fewer than four. `outlier` is the reading as written, null for none. */
  readonly grubbs: {
    readonly g: number;
    readonly critical: number;
    readonly outlier: string | null;
  } | null;
  /** The sheet's figure; null where it states none that can be held against the readings. */
  readonly printed: {
    readonly text: string;
    /** Whether it can be the mean of such units; null where nobody can say. */
    readonly within: boolean | null;
  } | null;
}

export function summaryOf(sample: Sample): MeasuredSummary {
  const { source, name, setting, readings, unit, statistics } = sample;
  const { n, mean, spread } = statistics;
  const printed = printedFigure(sample);
  const grubbs = spread?.grubbs ?? null;
  return {
    source: source.name.value,
    setting: setting?.id ?? name,
    label: setting?.known?.label ?? name,
    n,
    unit,
    readings: readings.map(({ size, record }) => ({ text: size.text, record })),
    least: numberText(statistics.least, sample, 0),
    most: numberText(statistics.most, sample, 0),
    mean: meanText(sample),
    meanExact: mean.d === 1n ? `${mean.s * mean.n}` : `${mean.s * mean.n}/${mean.d}`,
    deviation: spread?.deviation ?? null,
    deviationText: spread && significant(spread.deviation, unit),
    uncertainty: spread?.uncertainty ?? null,
    uncertaintyText: spread && significant(spread.uncertainty, unit),
    mean95: spread && { ...spread.mean95, text: stretchText(spread.mean95, sample) },
    tolerance: spread && {
      ...spread.units90,
      text: stretchText(spread.units90, sample),
      held: printed && holds(printed, spread.units90),
    },
    grubbs: grubbs && {
      g: grubbs.g,
      critical: grubbs.critical,
      outlier: grubbs.outlier === null ? null : (readings[grubbs.outlier]?.size.text ?? null),
    },
    printed: printed && { text: printed.statement.text, within: isWithin(printed, sample) },
  };
}

/** Whether limits let through all of a stretch; null where there are none. */
export function holds(
  { low, high }: PrintedFigure,
  { low: least, high: most }: Stretch,
): boolean | null {
  if (low === null && high === null) return null;
  return (low === null || low.valueOf() <= least) && (high === null || high.valueOf() >= most);
}

/** Whether a printed figure can be the true mean of such units; null where three readings are not there to say it. */
export function isWithin({ value }: PrintedFigure, { statistics }: Sample): boolean | null {
  const { spread } = statistics;
  if (value === null || spread === null) return null;
  const number = value.valueOf();
  return number >= spread.mean95.low && number <= spread.mean95.high;
}

/** Whether a figure is no rounding of the mean: it differs by more than half of its own last place. */
export function isOffMean(printed: PrintedFigure, sample: Sample): boolean {
  if (printed.value === null) return false;
  const off = printed.value.sub(sample.statistics.mean).abs();
  return off.compare(statedHalf(printed, sample)) > 0;
}

/** Decimal places of the readings, or the usual ones of their unit where all are exact. */
function placesOf({ places, unit, statistics: { mean } }: Sample): number {
  return places ?? Math.max(2, usualPlaces(unit, mean));
}

/** A number of the sample's unit, with so many places more than the readings have. */
export function numberText(number: Rational, sample: Sample, more: number): string {
  const { unit } = sample;
  return formatDecimal(number, placesOf(sample) + more) + spaced(unitWord(unit, number));
}

/** The mean with one place more than the readings. */
export function meanText(sample: Sample): string {
  return numberText(sample.statistics.mean, sample, 1);
}

/** A stretch for people: outward, so that nothing is told narrower than it is. */
export function stretchText({ low, high }: Stretch, sample: Sample): string {
  const [least, most] = [exact(low), exact(high)];
  const places = placesOf(sample) + 1;
  const unit = spaced(unitWord(sample.unit, rational(2)));
  return `${formatDecimal(least, places, 'down')} to ${formatDecimal(most, places, 'up')}${unit}`;
}

/** A spread with two figures that count (JCGM 100:2008, 7.2.6), rounded up. */
function significant(value: number, unit: string): string {
  const number = exact(value);
  const places = value === 0 ? 0 : Math.max(0, 1 - Math.floor(Math.log10(value)));
  return formatDecimal(number, places, 'up') + spaced(unitWord(unit, rational(2)));
}

/** A double as the decimal that it is to twelve places: enough of it for people. */
function exact(value: number): Rational {
  return rational(value.toFixed(12));
}
