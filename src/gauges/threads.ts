import Fraction from 'fraction.js';
import { SOURCES, THREADS } from '../generated/tables.ts';
import type { Rational } from '../quantity/model.ts';
import { NAME_LENGTH } from './systems.ts';

/** A screw thread of the tables. */
export interface Thread {
  /** `10-32 UNF`, `1/4-26 BSF`, `2 BA`, `M6`, `M6 x 0.75`. */
  readonly name: string;
  /** `UNC`, `UNF`, `UNEF`, `BSW`, `BSF`, `BSC`, `BA`, `ISO coarse` or `ISO fine`. */
  readonly series: string;
  /** Threads an inch; null where the standard states a pitch in mm. */
  readonly tpi: number | null;
  /** Travel in mm of one turn, exactly: 25.4 over the threads an inch. */
  readonly pitchMm: Rational;
  /** Basic major diameter in mm. */
  readonly majorMm: Rational;
  readonly source: string;
}

interface ThreadRow {
  readonly series: string;
  readonly size: string;
  readonly tpi: string;
  readonly pitchMm: string;
  readonly majorNm: string;
  readonly source: string;
}

let unpacked: readonly ThreadRow[] | null = null;

function threadRows(): readonly ThreadRow[] {
  unpacked ??= THREADS.split('\n').map((line) => {
    const [series = '', size = '', tpi = '', pitchMm = '', majorNm = '', source = ''] =
      line.split('\t');
    return { series, size, tpi, pitchMm, majorNm, source };
  });
  return unpacked;
}

/**
 * Words for a series in period papers. American National coarse and fine have the diameters and
 * pitches of UNC and UNF; the letters are from memory.
 */
const SERIES_WORDS: Readonly<Record<string, string>> = {
  UNC: 'UNC',
  NC: 'UNC',
  UNF: 'UNF',
  NF: 'UNF',
  UNEF: 'UNEF',
  NEF: 'UNEF',
  BSW: 'BSW',
  WHITWORTH: 'BSW',
  BSF: 'BSF',
  BSC: 'BSC',
  BSCY: 'BSC',
  CEI: 'BSC',
  CYCLE: 'BSC',
};

const BA = /^(?:(?:no\.?\s*|#)?(\d{1,2})\s*ba|ba\s*(?:no\.?\s*|#)?(\d{1,2}))$/i;
const METRIC =
  /^m\s*(\d{1,2}(?:[.,]\d)?)(?:\s*[x×*]\s*(\d?(?:[.,]\d{1,3})?)\s*(?:mm)?)?(?:\s*-\s*\d[a-z]\d?[a-z]?)?$/i;
const INCH =
  /^(?:no\.?\s*|#)?(\d{1,2}(?:\/\d{1,2})?)\s*(?:in|inch|"|″)?(?:\s*[-–x×]\s*(\d{1,2})\s*(?:tpi)?)?(?:[\s-]*([a-z]{2,9}))?(?:[\s-]+[1-3][ab]?)?$/i;

/**
 * The thread that a name stands for: `10-32 UNF`, `No. 10-32`, `1/4 BSF`, `M6`, `M6×0.75`, `2 BA`.
 * A name without a series means the unified one where its pitch is in the table, else the British.
 * Null where the name is no thread's, or where the table has no such pitch on that diameter.
 */
export function thread(name: string): Thread | null {
  if (name.trim().length > NAME_LENGTH) return null;
  // Period papers point every letter: `B.S.F.`, `2 B.A.`.
  const text = name.trim().replace(/(?<=[a-z])\.(?!\d)/gi, '');
  const association = BA.exec(text);
  if (association) {
    const number = association[1] ?? association[2] ?? '';
    return found((row) => row.series === 'BA' && row.size === number);
  }
  const metric = METRIC.exec(text);
  if (metric) return metricThread(metric[1] ?? '', metric[2]);
  const inch = INCH.exec(text);
  return inch ? inchThread(inch[1] ?? '', inch[2], inch[3]) : null;
}

function metricThread(size: string, pitch: string | undefined): Thread | null {
  const diameter = plain(size);
  if (pitch === undefined) return found((r) => r.series === 'ISO coarse' && r.size === diameter);
  if (!/\d/.test(pitch)) return null;
  const wanted = new Fraction(plain(pitch));
  return found(
    (row) =>
      row.series.startsWith('ISO') && row.size === diameter && wanted.equals(ratio(row.pitchMm)),
  );
}

function inchThread(
  size: string,
  tpi: string | undefined,
  word: string | undefined,
): Thread | null {
  const series = word === undefined ? null : SERIES_WORDS[word.toUpperCase()];
  // A diameter alone is no thread, and an unknown series is not guessed at.
  if (series === undefined || (series === null && tpi === undefined)) return null;
  const fits = (row: ThreadRow): boolean =>
    row.tpi !== '' &&
    row.size === size &&
    (tpi === undefined || row.tpi === tpi) &&
    (series === null || row.series === series);
  // A half-inch cycle thread has 20 or 26 threads an inch: which is not guessed at.
  if (tpi === undefined && threadRows().filter(fits).length > 1) return null;
  return found(fits);
}

/** `6,0` and `6.0` as `6`; `.75` as `0.75`. */
function plain(number: string): string {
  const [whole = '', decimals = ''] = number.split(/[.,]/);
  const kept = decimals.replace(/0+$/, '');
  return kept === '' ? whole || '0' : `${whole || '0'}.${kept}`;
}

/** The first row that fits: the table's order puts unified before British threads. */
function found(fits: (row: ThreadRow) => boolean): Thread | null {
  const row = threadRows().find(fits);
  if (!row) return null;
  return {
    name: threadName(row),
    series: row.series,
    tpi: row.tpi === '' ? null : Number(row.tpi),
    pitchMm: ratio(row.pitchMm),
    majorMm: new Fraction(BigInt(row.majorNm), 1_000_000n),
    source: SOURCES[Number(row.source)] ?? '',
  };
}

function threadName({ series, size, tpi, pitchMm }: ThreadRow): string {
  if (series === 'BA') return `${size} BA`;
  if (series === 'ISO coarse') return `M${size}`;
  if (series === 'ISO fine') return `M${size} x ${ratio(pitchMm).toString()}`;
  return `${size}-${tpi} ${series}`;
}

function ratio(text: string): Rational {
  const [above = '0', below = '1'] = text.split('/');
  return new Fraction(BigInt(above), BigInt(below));
}

/** Every thread of the tables, in their order. */
export function threads(): readonly Thread[] {
  return threadRows().flatMap((row) => found((each) => each === row) ?? []);
}
