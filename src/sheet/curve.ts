import { principal, rational, readStatement } from '../quantity/index.ts';
import type { GaugeBook, Rational, Statement } from '../quantity/model.ts';
import { inOwnMeasure, timesOf } from './measure.ts';
import type { PlacedSize, Setting } from './model.ts';

/** The limits of a figure, exact, in the base unit of its dimension; null where it has none on that side. */
export interface Band {
  readonly low: Rational | null;
  readonly high: Rational | null;
}

/** A row of a curve with both its figures read, in the measure of the setting itself. */
export interface CurveRow extends Band {
  readonly row: Setting;
  readonly station: Rational;
}

/** What a table says at a station. */
export type CurveReading =
  | (Band & { readonly is: 'row'; readonly at: CurveRow })
  | (Band & { readonly is: 'between'; readonly before: CurveRow; readonly after: CurveRow })
  | { readonly is: 'below' | 'above'; readonly end: CurveRow }
  | { readonly is: 'nothing' };

/** The limits of a statement; a figure without limits has both at itself. Null for words. */
export function bandOf(statement: Statement): Band | null {
  const { low, high } = statement;
  if (low || high) return { low: low?.base ?? null, high: high?.base ?? null };
  const one = principal(statement);
  return one && { low: one.base, high: one.base };
}

/** The band of a size in the setting's own measure; null where it is not read as a figure. */
export function ownBand(size: PlacedSize | null, setting: Setting): Band | null {
  return size?.reading.ok ? bandOf(inOwnMeasure(size.reading.statement, setting)) : null;
}

/** The exact station of a size, in the setting's own measure; null for a range and for words. */
export function stationOf(size: PlacedSize | null, setting: Setting): Rational | null {
  if (!size?.reading.ok) return null;
  const one = principal(size.reading.statement);
  return one ? one.base.div(timesOf(size.text, setting)) : null;
}

/** The rows of a curve that can be read, as they stand on the sheet. */
export function rowsOf({ rows }: Setting): readonly CurveRow[] {
  return rows.flatMap((row) => {
    const station = stationOf(row.station, row);
    const band = ownBand(row.value, row);
    return station && band ? [{ row, station, ...band }] : [];
  });
}

/** The same in the order of their stations; rows at one station stay as they stand. */
export function inOrder(rows: readonly CurveRow[]): readonly CurveRow[] {
  return [...rows].sort((one, other) => one.station.compare(other.station));
}

/**
 * What a curve says at a station in its own measure, exact: at a row what stands there, between two the
 * straight lines from limit to limit, and outside of the table nothing, whatever way it seems to go.
 */
export function readingAt(setting: Setting, station: Rational): CurveReading {
  const rows = inOrder(rowsOf(setting));
  const [first] = rows;
  const last = rows.at(-1);
  if (!first || !last) return { is: 'nothing' };
  const at = rows.find((row) => row.station.equals(station));
  if (at) return { is: 'row', at, low: at.low, high: at.high };
  if (station.compare(first.station) < 0) return { is: 'below', end: first };
  if (station.compare(last.station) > 0) return { is: 'above', end: last };
  const after = rows.findIndex((row) => row.station.compare(station) > 0);
  const [before, next] = [rows[after - 1] as CurveRow, rows[after] as CurveRow];
  const share = station.sub(before.station).div(next.station.sub(before.station));
  const between = (a: Rational | null, b: Rational | null): Rational | null =>
    a && b && a.add(b.sub(a).mul(share));
  return {
    is: 'between',
    before,
    after: next,
    low: between(before.low, next.low),
    high: between(before.high, next.high),
  };
}

/** Whether one band lies wholly below another; touching is not below. */
export function isBelow(one: Band, other: Band): boolean {
  return one.high !== null && other.low !== null && one.high.compare(other.low) < 0;
}

/** The middle of a band; the one limit that it has; null where it has none. */
export function middleOf({ low, high }: Band): Rational | null {
  return low && high ? low.add(high).div(2) : (low ?? high);
}

/** A band times a number above nothing. */
export function timesBand({ low, high }: Band, times: Rational): Band {
  return { low: low ? low.mul(times) : null, high: high ? high.mul(times) : null };
}

/** Two bands added. */
export function addBands(one: Band, other: Band): Band {
  return {
    low: one.low && other.low && one.low.add(other.low),
    high: one.high && other.high && one.high.add(other.high),
  };
}

/** A band of nothing at all. */
export const NOTHING: Band = { low: rational(0), high: rational(0) };

/**
 * The station that a text names on a curve, as somebody asks for it: `650 rpm`, `1300 rpm crank`. Null where it
 * is not read as one.
 */
export function stationNamed(text: string, setting: Setting, gauges: GaugeBook): PlacedSize | null {
  const expect = setting.known?.curve?.against;
  const reading = readStatement(text, { gauges, expect });
  const size = { span: setting.span, text, reading };
  const isOne = reading.ok && expect?.includes(reading.statement.dimension) === true;
  return isOne && stationOf(size, setting) ? size : null;
}
