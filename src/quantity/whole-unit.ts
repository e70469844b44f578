import type { PressureReference } from './model.ts';
import { numberWordsAt } from './number-words.ts';
import { stick } from './term.ts';
import { type UnitOfMeasure, unitAt, unitById } from './units.ts';

const REFERENCE =
  /[ ,]*\(?(gauge pressure|gauge|gage|absolute|abs\.?|vacuum|vac\.?|depression|below ambient|below atmospheric pressure|below atmospheric|below atmosphere)\)?(?!\p{L})/uy;
const STROKES =
  / ?(?:per|\/|in|for|every) ?(?:(\d{1,4}|[a-z]+(?:-[a-z]+)?) )?(?:(?:full|complete|pump) )?(?:strokes?|str\.|coups?|hübe?|hube?n?)(?!\p{L})/uy;
const PER_TIME =
  / ?(?:per|\/|an|a|pro|par) ?(seconds?|secs?\.?|s|minutes?|mins?\.?|mn|hours?|hrs?\.?|h)(?!\p{L})/uy;
const PER_GALLON = / ?(?:per|\/) ?(u\.? ?s\.?|imperial|imp\.?) gal(?:lons?|s|\.)?(?!\p{L})/uy;
const PER_LENGTH = / ?(?:per|\/) ?/y;
const PER_VOLUME = / ?(?:per|\/|for|pro|par) ?(?:([\d.]{1,6}|one|an?) ?)?/y;

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
  const id = timeId(time[1] ?? '');
  return {
    unit: unitById(`${unit.id}/${id === 'min' ? 'minute' : id}`),
    end: PER_TIME.lastIndex,
  };
}

/** `per US gal` behind a weight: how American and British papers tell a fuel's density. */
function overGallon(lower: string, at: number, unit: UnitOfMeasure): FoundUnit | null {
  const gallon = stick(PER_GALLON, lower, at);
  if (!gallon) return null;
  const whose = gallon[1]?.startsWith('i') === true ? 'imp gal' : 'US gal';
  return { unit: unitById(`${unit.id}/${whose}`), end: PER_GALLON.lastIndex };
}

/** `per inch`, `/mm` behind a load: how stiff a spring is. */
function overLength(lower: string, at: number, unit: UnitOfMeasure): FoundUnit | null {
  if (!stick(PER_LENGTH, lower, at)) return null;
  const length = unitAt(lower, PER_LENGTH.lastIndex);
  if (length?.unit.dimension !== 'length') return null;
  return { unit: unitById(`${unit.id}/${length.unit.id}`), end: length.end };
}

function compoundAt(lower: string, at: number, unit: UnitOfMeasure): FoundUnit | null {
  if (unit.dimension === 'mass') {
    return overTime(lower, at, unit) ?? overGallon(lower, at, unit) ?? overLength(lower, at, unit);
  }
  if (unit.dimension === 'force') return overLength(lower, at, unit);
  if (unit.dimension === 'volume') {
    const strokes = stick(STROKES, lower, at);
    if (strokes) {
      const count = strokes[1] ? countOf(strokes[1]) : '1';
      return /[1-9]/.test(count)
        ? { unit: unitById(`${unit.id}/${Number(count)} strokes`), end: STROKES.lastIndex }
        : null;
    }
    return overTime(lower, at, unit);
  }
  if (unit.dimension === 'time') {
    const volume = stick(PER_VOLUME, lower, at);
    const measure = volume ? unitAt(lower, PER_VOLUME.lastIndex) : null;
    const count = countOf(volume?.[1] ?? '1');
    if (
      measure?.unit.dimension === 'volume' &&
      /^(?:\d+\.?\d*|\.\d+)$/.test(count) &&
      /[1-9]/.test(count)
    ) {
      return { unit: unitById(`${unit.id}/${count} ${measure.unit.id}`), end: measure.end };
    }
  }
  return null;
}

/** The figure of a count in figures or in words; 0 for other words. */
function countOf(written: string): string {
  if (/^[\d.]+$/.test(written)) return written;
  if (/^an?$/.test(written)) return '1';
  const words = numberWordsAt(written, 0);
  return String(words?.end === written.length && words.denominator === 1 ? words.whole : 0);
}

const SPLIT_VOLUME = /(fl\.? ?oz\.?|fluid ounces?|pints?|pts?\.?|gallons?|gals?\.?)(?!\p{L})/uy;

/**
 * A pint, gallon or fluid ounce that does not say whose, at an offset: alone, over a time, or below
 * one (`seconds per pint`). `told` has `~` where the country belongs. Null where none stands there.
 */
export function splitVolumeAt(
  lower: string,
  at: number,
): { told: string; word: string; end: number } | null {
  const time = unitAt(lower, at);
  if (time?.unit.dimension === 'time') {
    const per = stick(PER_VOLUME, lower, time.end);
    const below = per ? stick(SPLIT_VOLUME, lower, PER_VOLUME.lastIndex) : null;
    if (!below) return null;
    const count = countOf(per?.[1] ?? '1');
    const short = shortVolume(below[1] ?? '');
    const many = count === '1' ? '' : `${count} `;
    return {
      told: `${time.unit.id === 'minute' ? 'minutes' : time.unit.id} per ${many}~ ${short}`,
      word: short,
      end: SPLIT_VOLUME.lastIndex,
    };
  }
  const found = stick(SPLIT_VOLUME, lower, at);
  if (!found) return null;
  const end = SPLIT_VOLUME.lastIndex;
  const short = shortVolume(found[1] ?? '');
  const over = stick(PER_TIME, lower, end);
  const strokes = over ? null : stick(STROKES, lower, end);
  if (over)
    return { told: `~ ${short}/${timeId(over[1] ?? '')}`, word: short, end: PER_TIME.lastIndex };
  if (strokes) {
    const tail = lower.slice(end, STROKES.lastIndex);
    return { told: `~ ${short}${tail}`, word: short, end: STROKES.lastIndex };
  }
  return { told: `~ ${short}`, word: short, end };
}

function shortVolume(word: string): string {
  return word.startsWith('f') ? 'fl oz' : word.startsWith('p') ? 'pt' : 'gal';
}

function timeId(word: string): string {
  return word.startsWith('m') ? 'min' : word.startsWith('h') ? 'h' : 's';
}
