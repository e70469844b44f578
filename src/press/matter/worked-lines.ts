import { gaugeBook, type Kit } from '../../gauges/index.ts';
import { ALTITUDE_RELATION, workedNumbers } from '../../relations/index.ts';
import type { Setting, Sheet } from '../../sheet/model.ts';
import { workedGauges } from './worked-gauge.ts';

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
export interface WorkedFacts {
  /** The altitude that the club's figures are read at, as written; null where it says none. */
  readonly altitude: string | null;
  /** The club's own gauges; the ordinary ones, if absent or null. */
  readonly kit?: Kit | null;
  /** The gauges that the booklet lists, which go before others where they can measure. */
  readonly gathered?: Kit | null;
}

/**
 * What is worked beside a setting: figures that nobody states, and what to measure it with where the
 * sheet names no gauge.
 */
export function workedLines(
  setting: Setting,
  sheet: Sheet,
  { altitude, kit = null, gathered = null }: WorkedFacts,
): WorkedLine[] {
  const facts = { gauges: gaugeBook(), wireGauge: null, altitude };
  const figures = workedNumbers(sheet, facts)
    // The figure for the club's altitude stands in the large type already.
    .figures.filter(({ of, relation }) => of === setting.id && relation.id !== ALTITUDE_RELATION)
    .map(({ label, at, text, told }) => ({ label, place: at, text: text.text, told }));
  const gauges = workedGauges(setting, sheet, kit, gathered).map(({ place, text }) => ({
    label: 'gauge',
    place,
    text,
    told: null,
  }));
  return [...figures, ...gauges];
}
