import { gaugeBook } from '../../gauges/index.ts';
import { samplesOf, summaryOf } from '../../measured/index.ts';
import { ALTITUDE_RELATION, workedNumbers } from '../../relations/index.ts';
import type { Setting, Sheet } from '../../sheet/model.ts';
import { type GaugeChoice, resolvedGauges } from './resolved-gauge.ts';

/** A figure that was worked from others and that no source states: printed as such. */
export interface WorkedLine {
  /** What it is: `open area`, `gauge`. */
  readonly label: string;
  /** The barrel or place that it is for; null where one value serves all. */
  readonly place: string | null;
  /** `0.00131 in2 (0.00127–0.00131 in2)`. */
  readonly text: string;
  /** How it came about, in a sentence; null for a gauge, which is chosen and not reckoned. */
  readonly told: string | null;
}

/** What the edition says that figures are worked with. */
export interface WorkedFacts extends GaugeChoice {
  /** The altitude that the club's figures are read at, as written; null where it says none. */
  readonly altitude: string | null;
}

/**
 * What is worked beside a setting: figures that nobody states, and gauges to be made for it.
 */
export function workedLines(
  setting: Setting,
  sheet: Sheet,
  { altitude, ...choice }: WorkedFacts,
): WorkedLine[] {
  const facts = { gauges: gaugeBook(), wireGauge: null, altitude };
  const figures = workedNumbers(sheet, facts)
    // The figure for the club's altitude stands in the large type already.
    .figures.filter(({ of, relation }) => of === setting.id && relation.id !== ALTITUDE_RELATION)
    .map(({ label, at, text, told }) => ({ label, place: at, text: text.text, told }));
  // The gauge itself stands in its own column; here what is to be made, or the nearest where none fits.
  const gauges = resolvedGauges(setting, sheet, choice).flatMap(({ place, more }) =>
    more === null ? [] : [{ label: 'gauge', place, text: more, told: null }],
  );
  return [...figures, ...measuredLines(setting, sheet), ...gauges];
}

/** What measured units came to: how many, their mean, and how far they differ. */
function measuredLines({ id }: Setting, sheet: Sheet): WorkedLine[] {
  const own = samplesOf(sheet).filter((sample) => sample.setting?.id === id);
  return own.map(summaryOf).map(({ n, mean, least, most, deviationText, source }) => ({
    label: n === 1 ? 'of 1 unit' : `mean of ${n} units`,
    place: null,
    text:
      deviationText === null
        ? `${mean} (${least} to ${most})`
        : `${mean}, deviation ${deviationText}`,
    told: `${n} readings of ${source}, ${least} to ${most}`,
  }));
}
