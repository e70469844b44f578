import type { GaugeSystem } from '../quantity/model.ts';

/**
 * The most characters that a gauge's or a thread's name can have. Longer texts are refused unread:
 * the patterns look at every stretch of blanks more than once.
 */
export const NAME_LENGTH = 40;

/** Every system, in the order in which gauges of one size are listed. */
export const SYSTEMS: readonly GaugeSystem[] = [
  'number-drill',
  'letter-drill',
  'fraction-drill',
  'metric-drill',
  'wire',
  'leaf',
  'pin',
  'swg',
  'awg',
  'us-steel-wire',
  'music-wire',
  'bwg',
];

/** What lies on a restorer's bench, and so what a search looks through when not told otherwise. */
export const ON_THE_BENCH: readonly GaugeSystem[] = [
  'number-drill',
  'letter-drill',
  'fraction-drill',
  'metric-drill',
  'wire',
  'leaf',
];

/** Systems whose gauges are twist drills. */
export const DRILLS: readonly GaugeSystem[] = [
  'number-drill',
  'letter-drill',
  'fraction-drill',
  'metric-drill',
];

/** Systems whose gauges are wires with a number. */
export const NUMBERED_WIRES: readonly GaugeSystem[] = [
  'swg',
  'awg',
  'us-steel-wire',
  'music-wire',
  'bwg',
];

/** Whether a gauge of the system is named by its own size, so that any size is one. */
export function isNamedBySize(system: GaugeSystem): system is 'wire' | 'leaf' | 'pin' {
  return system === 'wire' || system === 'leaf' || system === 'pin';
}

const LABELS: Readonly<Record<GaugeSystem, (name: string) => string>> = {
  'number-drill': (name) => `No. ${name} drill`,
  'letter-drill': (name) => `drill ${name}`,
  // A whole inch needs its unit: `1 drill` would be the first of the number drills.
  'fraction-drill': (name) => (name.includes('/') ? `${name} drill` : `${name} in drill`),
  'metric-drill': (name) => `${name} drill`,
  awg: (name) => `${name} AWG`,
  swg: (name) => `${name} SWG imperial`,
  'us-steel-wire': (name) => `No. ${name} US steel wire`,
  'music-wire': (name) => `No. ${name} music wire`,
  bwg: (name) => `${name} BWG`,
  wire: (name) => `${name} wire`,
  leaf: (name) => `${name} leaf`,
  pin: (name) => `${name} pin`,
};

/** How a sheet writes the gauge: `gaugeLabel('number-drill', '29')` is `No. 29 drill`. */
export function gaugeLabel(system: GaugeSystem, name: string): string {
  return LABELS[system](name);
}

/**
 * The name as the tables have it, or null where it cannot be one: `e` is `E`, `3.50` and `3,5 mm`
 * are `3.5 mm`, `0000` is `4/0`. A fraction is left as it is: no drill is named `14/64`.
 */
export function tableName(system: GaugeSystem, written: string): string | null {
  const text = written.trim();
  if (text.length > NAME_LENGTH) return null;
  switch (system) {
    case 'letter-drill':
      return /^[a-z]$/i.test(text) ? text.toUpperCase() : null;
    case 'fraction-drill':
      return fractionName(text);
    case 'metric-drill':
      return metricName(text);
    case 'number-drill':
      return bareNumber(text);
    default:
      return isNamedBySize(system) ? null : wireName(bareNumber(text));
  }
}

function bareNumber(text: string): string {
  return text.replace(/^(?:no\.?|nos\.?|#)\s*/i, '');
}

function wireName(text: string): string {
  if (/^0{2,7}$/.test(text)) return `${text.length}/0`;
  return text === '1/0' ? '0' : text.replace(/\s*\/\s*/, '/');
}

function fractionName(text: string): string | null {
  const parts = /^(\d{1,2}(?![/\d]))?[-\s]*(\d{1,2}\/\d{1,2})?\s*(?:in\.?|inch|"|″)?$/i.exec(text);
  if (!parts) return null;
  return [parts[1], parts[2]].filter(Boolean).join('-') || null;
}

function metricName(text: string): string | null {
  const parts = /^(\d{0,2})(?:[.,](\d{1,6}))?\s*(?:mm\.?)?$/i.exec(text);
  if (!parts || !(parts[1] || parts[2])) return null;
  const decimals = (parts[2] ?? '').replace(/0+$/, '');
  const whole = (parts[1] ?? '').replace(/^0+(?=\d)/, '') || '0';
  return decimals === '' ? `${whole} mm` : `${whole}.${decimals} mm`;
}
