import {
  FAMILIES,
  type GaugeFamily,
  type GaugeSystem,
  type SizedSystem,
  SYSTEM_RECORDS,
} from '../generated/gauge-systems.ts';

/** What a sheet or an edition says that letters of two systems mean: a word of `wire-gauge:`. */
export type WireGauge = 'imperial' | 'us-steel';

/** What a list of gauges says of a family. */
export interface FamilyRecord {
  readonly title: string;
  /** What says the family behind a number or a size, and no system of it. */
  readonly words: readonly string[];
}

/**
 * All that is to be known of a system of gauges but its sizes: notation, prose, slips, problems, advice and
 * the printed lists read it. It stands at the head of the system's table in `src/gauges/data/`.
 */
export interface SystemRecord {
  readonly family: GaugeFamily;
  /** What a name is: a number that is no size, a letter, a fraction of an inch, a size in mm, any size. */
  readonly named: 'number' | 'letter' | 'fraction' | 'metric' | 'size';
  /** How a sheet writes a gauge, with `{name}` in it. */
  readonly label: string;
  /** The same of a name that is a whole number; null where it is no other. */
  readonly labelWhole: string | null;
  /** What stands before a name that there is not: `there is no SWG 77`. */
  readonly noun: string;
  /** Which names there are, as a sentence without its full stop. */
  readonly runs: string;
  /** Title of the table that a booklet prints it in; systems of one title share a table. */
  readonly table: string | null;
  /** Letters that stand before or behind a number, in running text as well. Two systems may have the same. */
  readonly letters: string | null;
  /** What names it behind a number, or of one named by size, behind a size; besides `letters`. */
  readonly words: readonly string[];
  /** Those of its words that a paper may write before the number. */
  readonly before: readonly string[];
  /** By which word of `wire-gauge:` it is meant where two have the same letters. */
  readonly meantBy: WireGauge | null;
  /** Whether its sizes follow a formula and are rounded to the places that are tabled; else they are exact. */
  readonly rounded: boolean;
  /** Whether it lies on a restorer's bench, and a search looks through it when not told otherwise. */
  readonly bench: boolean;
  /**
   * `unnamed`: a wire's number without its system may be one of it. `slip`: a number of another system may
   * have been meant as one of it.
   */
  readonly confused: readonly ('unnamed' | 'slip')[];
}

/** Every system, in the order in which gauges of one size are listed. */
export const SYSTEMS = Object.keys(SYSTEM_RECORDS) as readonly GaugeSystem[];

/** Every family with its title, in the order in which gauges are listed. */
export const GAUGE_FAMILIES = Object.entries(FAMILIES) as readonly (readonly [
  GaugeFamily,
  FamilyRecord,
])[];

/** What is to be known of a system. */
export function systemRecord(system: GaugeSystem): SystemRecord {
  return SYSTEM_RECORDS[system];
}

/** The systems of which something is so, in their order. */
export function systemsWhere(is: (record: SystemRecord) => boolean): readonly GaugeSystem[] {
  return SYSTEMS.filter((system) => is(SYSTEM_RECORDS[system]));
}

/** Whether a gauge of the system is named by its own size, so that any size is one. */
export function isNamedBySize(system: GaugeSystem): system is SizedSystem {
  return SYSTEM_RECORDS[system].named === 'size';
}

/** Whether a gauge's name says its size: `3.5 mm drill` does, `No. 29 drill` and `13/64 drill` do not. */
export function saysItsSize(system: GaugeSystem): boolean {
  return isNamedBySize(system) || SYSTEM_RECORDS[system].named === 'metric';
}

/** Whether a gauge of the system is named by a number that is no size. */
export function isNumbered(system: GaugeSystem): boolean {
  return SYSTEM_RECORDS[system].named === 'number';
}

/** Whether a gauge of the system is a blade, which lies across a bore, and no round. */
export function isFlat(system: GaugeSystem): boolean {
  return SYSTEM_RECORDS[system].family === 'leaf';
}

/** How a sheet writes the gauge: `gaugeLabel('number-drill', '29')` is `No. 29 drill`. */
export function gaugeLabel(system: GaugeSystem, name: string): string {
  const { label, labelWhole } = SYSTEM_RECORDS[system];
  const form = labelWhole !== null && /^\d+$/.test(name) ? labelWhole : label;
  return form.replace('{name}', () => name);
}

/** The word of `wire-gauge:` that a text is; null where it is none. */
export function wireGaugeNamed(text: string | null | undefined): WireGauge | null {
  return (
    SYSTEMS.map((system) => SYSTEM_RECORDS[system].meantBy).find(
      (word) => word !== null && word === text,
    ) ?? null
  );
}
