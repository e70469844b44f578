import { systemRecord, systemsWhere } from '../quantity/index.ts';
import type { GaugeSystem } from '../quantity/model.ts';

/**
 * The most characters that a gauge's or a thread's name can have. Longer texts are refused unread:
 * the patterns look at every stretch of blanks more than once.
 */
export const NAME_LENGTH = 40;

/** What lies on a restorer's bench, and so what a search looks through when not told otherwise. */
export const ON_THE_BENCH: readonly GaugeSystem[] = systemsWhere(({ bench }) => bench);

/** Systems whose gauges are twist drills. */
export const DRILLS: readonly GaugeSystem[] = systemsWhere(({ family }) => family === 'drill');

/** Systems whose gauges have a number, drills and wires. */
export const NUMBERED: readonly GaugeSystem[] = systemsWhere(({ named }) => named === 'number');

/** Systems whose gauges are wires with a number. */
export const NUMBERED_WIRES: readonly GaugeSystem[] = NUMBERED.filter(
  (system) => !DRILLS.includes(system),
);

/**
 * The name as the tables have it, or null where it cannot be one: `e` is `E`, `3.50` and `3,5 mm`
 * are `3.5 mm`, `0000` is `4/0`. A fraction is left as it is: no drill is named `14/64`.
 */
export function tableName(system: GaugeSystem, written: string): string | null {
  const text = written.trim();
  if (text.length > NAME_LENGTH) return null;
  switch (systemRecord(system).named) {
    case 'letter':
      return /^[a-z]$/i.test(text) ? text.toUpperCase() : null;
    case 'fraction':
      return fractionName(text);
    case 'metric':
      return metricName(text);
    case 'number':
      return wireName(bareNumber(text));
    case 'size':
      return null;
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
