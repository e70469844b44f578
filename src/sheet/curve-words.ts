import {
  exactPlaces,
  formatDecimal,
  inUnit,
  spaced,
  unitWord,
  usualPlaces,
} from '../quantity/index.ts';
import type { Amount, Rational } from '../quantity/model.ts';
import type { Band, CurveReading } from './curve.ts';
import { timesOf } from './measure.ts';
import type { PlacedSize, Setting } from './model.ts';

/** Places that are shown of a figure between two rows, at most. */
const MOST = 4;

/** The first amount of a size; null where it is not read as a figure. */
function amountIn(size: PlacedSize | null): Amount | null {
  if (!size?.reading.ok) return null;
  const { nominal, low, high } = size.reading.statement;
  return nominal ?? low?.amount ?? high?.amount ?? null;
}

/**
 * A band in the unit and the measure in which a size of the setting is told: `6.25° to 8.25°`, and with the
 * word of the other measure behind it where that is so told. Limits are rounded inward.
 */
export function bandText(band: Band, size: PlacedSize | null, setting: Setting): string {
  const amount = amountIn(size);
  if (!size?.reading.ok || !amount) return '';
  const times = timesOf(size.text, setting);
  const { dimension } = size.reading.statement;
  const number = (value: Rational): Rational => inUnit(value.mul(times), dimension, amount.unit);
  const [low, high] = [band.low && number(band.low), band.high && number(band.high)];
  const word = times.equals(1) ? '' : ` ${wordOf(size.text, setting)}`;
  const both = [low, high].flatMap((value) => value ?? []);
  const places = Math.min(MOST, Math.max(0, ...both.map((value) => shown(value, amount))));
  const told = (value: Rational, mode: 'up' | 'down' | 'nearest'): string => {
    return formatDecimal(value, places, mode) + spaced(unitWord(amount.unit, value));
  };
  if (low && high && low.equals(high)) return `${told(low, 'nearest')}${word}`;
  if (low && high) return `${told(low, 'up')} to ${told(high, 'down')}${word}`;
  if (low) return `${told(low, 'up')} or more${word}`;
  return high ? `${told(high, 'down')} or less${word}` : '';
}

function shown(value: Rational, { unit, places }: Amount): number {
  return Math.max(exactPlaces(value) ?? MOST, Math.min(places ?? 0, usualPlaces(unit, value)));
}

/** The word by which a text is told in the other measure. */
function wordOf(text: string, { scale, said }: Setting): string {
  const all = `${text} ${said.get('of')?.value ?? ''}`.toLowerCase();
  return scale?.words.find((word) => all.includes(word.toLowerCase())) ?? '';
}

/** What a curve says at a station, for people: `the row at 2000 rpm says 12 to 14°`. */
export function readingText(reading: CurveReading): string {
  if (reading.is === 'nothing') return 'the table has no row that can be read';
  if (reading.is === 'row') {
    const { row } = reading.at;
    return `the row at ${stationText(row)} says ${row.value?.text ?? ''}`;
  }
  if (reading.is === 'between') {
    const [before, after] = [reading.before.row, reading.after.row];
    const told = bandText(reading, before.value, before);
    return `between its rows at ${stationText(before)} and ${stationText(after)} the table comes to ${told}`;
  }
  const way = reading.is === 'below' ? 'begins' : 'ends';
  return `the table ${way} at ${stationText(reading.end.row)}`;
}

/** A row's station as written. */
export function stationText({ station }: Setting): string {
  return station?.text ?? '';
}
