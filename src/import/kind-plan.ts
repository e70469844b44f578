import type { Dimension } from '../quantity/model.ts';

/** What somebody who begins a kind says of it; what is not said is left to be written. */
export interface KindPlan {
  readonly settings: readonly PlannedSetting[];
  /** In working order. */
  readonly operations: readonly PlannedOperation[];
}

export interface PlannedSetting {
  readonly label: string;
  readonly dimension: string;
  /** The least and the most of ordinary units, as written. */
  readonly usual: readonly [string, string] | null;
}

export interface PlannedOperation {
  readonly label: string;
  readonly stage: string;
  /** Labels of the settings that it makes. */
  readonly makes: readonly string[];
  /** What has to be so: a part, and its condition. */
  readonly needs: readonly PlannedNeed[];
  /** Names of hazards of the common kind. */
  readonly hazards: readonly string[];
}

export interface PlannedNeed {
  readonly part: string;
  readonly condition: string;
}

/** Each condition that a part can be asked for, with its opposite and the verbs that bring both about. */
const PAIRS: readonly (readonly [
  home: string,
  away: string,
  bringsHome: string,
  takesAway: string,
])[] = [
  ['on', 'off', 'put-back', 'take-off'],
  ['in', 'out', 'put-back', 'take-off'],
  ['shut', 'open', 'shut', 'open'],
  ['tight', 'loose', 'tighten', 'slacken'],
  ['joined', 'parted', 'join', 'take-off'],
];

/** Conditions that a need may ask for; the first of each pair is where the part starts and belongs. */
export const askedConditions: readonly string[] = PAIRS.flatMap((pair) => pair.slice(0, 2));

/** Parts that a kind has by building on the common one, with the conditions of each. */
export const commonConditions: ReadonlyMap<string, readonly string[]> = new Map([
  ['engine', ['running', 'stopped', 'hot', 'cold']],
  ['gear', ['neutral', 'drive']],
  ['vehicle', ['secured', 'free']],
]);

/** Small letters, digits and hyphens. */
export function plainName(label: string): string {
  return label
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}

/** The part and condition of a common part that words mean: an engine that is hot has a temperature. */
export function commonNeed({ part, condition }: PlannedNeed): PlannedNeed | null {
  const name = plainName(part);
  if (!commonConditions.get(name)?.includes(condition)) return null;
  return { part: condition === 'hot' || condition === 'cold' ? 'temperature' : name, condition };
}

/** The pair of conditions that one of them belongs to. */
export function pairOf(condition: string): (typeof PAIRS)[number] | null {
  return PAIRS.find((pair) => pair[0] === condition || pair[1] === condition) ?? null;
}

/** What a setting may be stated in, as the schema of kinds has it. */
export const dimensions: readonly Dimension[] = [
  'length',
  'turns',
  'angle',
  'speed',
  'vacuum',
  'pressure',
  'volume',
  'delivery',
  'flow',
  'mass-flow',
  'torque',
  'notches',
  'time',
  'mass',
  'force',
  'density',
  'temperature',
  'area',
  'percent',
  'capacitance',
  'resistance',
  'voltage',
  'current',
  'spring-rate',
  'sequence',
  'condition',
];
