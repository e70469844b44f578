import { gaugeBook } from '../gauges/index.ts';
import type { Limit, Statement } from '../quantity/model.ts';
import {
  bandText,
  heldLimits,
  readingAt,
  readingText,
  stationNamed,
  stationOf,
  timesBand,
  timesOf,
} from '../sheet/index.ts';
import type { PlacedSize, Setting } from '../sheet/model.ts';

/** What a sheet asks of a setting, and the limits that it states for it. */
export interface Wanted {
  /** As the sheet writes it; `—` where it states nothing. */
  readonly text: string;
  /** Null where the sheet's figure cannot be read. */
  readonly statement: Statement | null;
  /** Base values; both null where the sheet states no limits. */
  readonly low: Limit['base'] | null;
  readonly high: Limit['base'] | null;
  /** Base value of the figure itself; null where the sheet has only limits or words. */
  readonly nominal: Limit['base'] | null;
  /** Where limits that are not the value's own were taken from; null otherwise. */
  readonly limitsFrom: string | null;
  /** From where to where the figures were carried, and by which formula; null where they stand as stated. */
  readonly carried: string | null;
}

/** How the figures of a setting are carried to where a record was taken. */
export interface CarriedFigures {
  /** Null where nothing is left of it there. */
  carry(base: Limit['base']): Limit['base'] | null;
  readonly from: string;
  readonly to: string;
  readonly formula: string;
  readonly relation: string;
}

/** What is wanted where a record was taken: nominal and limits carried there, by the formula named. */
export function wantedThere(wanted: Wanted, by: CarriedFigures): Wanted {
  const carry = (base: Limit['base'] | null) => (base === null ? null : by.carry(base));
  return {
    ...wanted,
    nominal: carry(wanted.nominal),
    low: carry(wanted.low),
    high: carry(wanted.high),
    carried: `from ${by.from} to ${by.to} by ${by.formula} (${by.relation})`,
  };
}

/**
 * What a sheet wants of a setting, at a place of it or (null) of the whole. Limits are those of the
 * value; failing these what else holds for it (`heldLimits`), the house's tolerance last. None are ever
 * made up. Null for a place that the sheet does not tell apart, or a whole that it does.
 */
export function wantedOf(setting: Setting, place: string | null): Wanted | null {
  if (setting.rows.length > 0) return place === null ? null : wantedAt(setting, place);
  const own = place === null ? undefined : setting.places.get(place);
  if (setting.places.size > 0 && own === undefined && setting.value === null) return null;
  if (place !== null && setting.places.size > 0 && own === undefined) return null;
  const size = own ?? setting.value;
  const statement = statementOf(size);
  const nominal = statement?.nominal?.base ?? null;
  const wanted = { text: size?.text ?? '—', statement, nominal, limitsFrom: null, carried: null };
  if (statement === null) return { ...wanted, low: null, high: null };
  const held = heldLimits(setting, place);
  if (held === null) return { ...wanted, low: null, high: null };
  const { low, high, by, text } = held;
  const limitsFrom = by === 'house' ? `the house's tolerance, ${text}` : text;
  return { ...wanted, low, high, limitsFrom };
}

/**
 * What a table wants at a station, which need not be one of its rows: between two of them straight lines join
 * the limits. Null for what is no station, and outside of the table.
 */
function wantedAt(setting: Setting, place: string): Wanted | null {
  const size = stationNamed(place, setting, gaugeBook());
  const at = stationOf(size, setting);
  const reading = at && readingAt(setting, at);
  if (!reading || !('low' in reading)) return null;
  const { row } = reading.is === 'row' ? reading.at : reading.before;
  const statement = statementOf(row.value);
  if (!row.value || !statement) return null;
  const times = timesOf(row.value.text, row);
  const { low, high } = timesBand(reading, times);
  const isOne = low !== null && high !== null && low.equals(high);
  return {
    text: reading.is === 'row' ? row.value.text : bandText(reading, row.value, row),
    statement,
    nominal: isOne ? low : null,
    low: isOne ? null : low,
    high: isOne ? null : high,
    limitsFrom: reading.is === 'row' ? null : readingText(reading),
    carried: null,
  };
}

function statementOf(size: PlacedSize | null): Statement | null {
  return size?.reading.ok ? size.reading.statement : null;
}
