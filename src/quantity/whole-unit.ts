import type { PressureReference } from './model.ts';
import { stick } from './term.ts';
import { allUnits, type UnitOfMeasure, unitAt, unitById } from './units.ts';

const REFERENCE =
  /[ ,]*\(?(gauge pressure|gauge|gage|absolute|abs\.?|vacuum|vac\.?|depression|below ambient|below atmospheric pressure|below atmospheric|below atmosphere)\)?(?!\p{L})/uy;
const STROKES =
  / ?(?:per|\/|in|for|every) ?(?:(\d{1,4}|a|one|two|five|ten|twenty|fifty) )?(?:full )?strokes?(?!\p{L})/uy;
const PER_TIME = / ?(?:per|\/|an|a) ?(seconds?|sec\.?|s|minutes?|mins?\.?|hours?|hr|h)(?!\p{L})/uy;
const PER_GALLON = / ?(?:per|\/) ?(us|imperial|imp\.?) gal(?:lons?|s|\.)?(?!\p{L})/uy;
const PER_VOLUME =
  / ?(?:per|\/|for) ?(?:([\d.]{1,6}) ?)?(cc|cm3|cm³|ml|milliliters?|l|liters?|litres?)(?!\p{L})/uy;
const STROKE_WORDS: Readonly<Record<string, string>> = {
  a: '1',
  one: '1',
  two: '2',
  five: '5',
  ten: '10',
  twenty: '20',
  fifty: '50',
};

/** A unit with all that belongs to it: `per 10 strokes`, `per 100 ml`, `abs`, `vacuum`. */
export interface WholeUnit {
  readonly unit: UnitOfMeasure;
  readonly reference: PressureReference | null;
  readonly end: number;
}

/** The whole unit at an offset; null where none stands there. */
export function wholeUnitAt(lower: string, at: number): WholeUnit | null {
  const found = unitAt(lower, at);
  if (!found) return null;
  const { unit, end } = compoundAt(lower, found.end, found.unit) ?? found;
  const said = unit.reference === null ? null : stick(REFERENCE, lower, end);
  if (!said) {
    // `19 in. vacuum`: the word that makes it mercury also says from where it is counted.
    const vacuum = unit.reference !== null && lower.slice(at, end).includes('vac');
    return { unit, reference: vacuum ? 'depression' : unit.reference, end };
  }
  return { unit, reference: referenceOf(said[1] ?? ''), end: REFERENCE.lastIndex };
}

function referenceOf(word: string): PressureReference {
  if (word.startsWith('abs')) return 'absolute';
  return word.startsWith('gauge') || word.startsWith('gage') ? 'gauge' : 'depression';
}

interface FoundUnit {
  readonly unit: UnitOfMeasure;
  readonly end: number;
}

/** `per hour` behind a volume or a weight. */
function overTime(lower: string, at: number, unit: UnitOfMeasure): FoundUnit | null {
  const time = stick(PER_TIME, lower, at);
  if (!time) return null;
  const word = time[1] ?? '';
  const id = word.startsWith('m') ? 'minute' : word.startsWith('h') ? 'h' : 's';
  return { unit: unitById(`${unit.id}/${id}`), end: PER_TIME.lastIndex };
}

/** `per US gal` behind a weight: how American and British papers tell a fuel's density. */
function overGallon(lower: string, at: number, unit: UnitOfMeasure): FoundUnit | null {
  const gallon = stick(PER_GALLON, lower, at);
  if (!gallon) return null;
  const whose = gallon[1]?.startsWith('i') ? 'imp gal' : 'US gal';
  return { unit: unitById(`${unit.id}/${whose}`), end: PER_GALLON.lastIndex };
}

function compoundAt(lower: string, at: number, unit: UnitOfMeasure): FoundUnit | null {
  if (unit.dimension === 'mass') return overTime(lower, at, unit) ?? overGallon(lower, at, unit);
  if (unit.dimension === 'volume') {
    const strokes = stick(STROKES, lower, at);
    if (strokes) {
      const count = strokes[1] ? (STROKE_WORDS[strokes[1]] ?? strokes[1]) : '1';
      return /[1-9]/.test(count)
        ? { unit: unitById(`${unit.id}/${Number(count)} strokes`), end: STROKES.lastIndex }
        : null;
    }
    return overTime(lower, at, unit);
  }
  if (unit.dimension === 'time') {
    const volume = stick(PER_VOLUME, lower, at);
    const measure = volume
      ? allUnits().find((u) => u.spellings.includes(volume[2] ?? ''))
      : undefined;
    const count = volume?.[1] ?? '1';
    if (measure && /^(?:\d+\.?\d*|\.\d+)$/.test(count) && /[1-9]/.test(count)) {
      return { unit: unitById(`${unit.id}/${count} ${measure.id}`), end: PER_VOLUME.lastIndex };
    }
  }
  return null;
}
