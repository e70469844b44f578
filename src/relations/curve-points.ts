import { rational, readStatement } from '../quantity/index.ts';
import type { GaugeBook, Rational } from '../quantity/model.ts';
import {
  addBands,
  type Band,
  type CurveReading,
  type CurveRow,
  curvesOf,
  isBelow,
  NOTHING,
  ownBand,
  readingAt,
  rowsOf,
  stationOf,
  timesBand,
} from '../sheet/index.ts';
import type { PlacedSize, Setting, Sheet } from '../sheet/model.ts';
import { oncePer } from '../text/index.ts';

/** A setting of one figure, or a sum, that a curve of the same sheet does not bear out. */
export interface CurveDispute {
  readonly setting: Setting;
  /** The figure of the setting. */
  readonly size: PlacedSize;
  /** The station as it is stated; null where the setting's own figure is the station. */
  readonly station: PlacedSize | null;
  /** What is wrong: the figure lies outside, or the table ends before. */
  readonly is: 'apart' | 'beyond' | 'late';
  /** What the curves say there, in the setting's own measure; null where one says nothing. */
  readonly band: Band | null;
  readonly curves: readonly { readonly curve: Setting; readonly reading: CurveReading }[];
}

/**
 * Which figures of a sheet its curves do not bear out: the points that a kind names, and sums. Worked once for a
 * sheet, since more than one check asks; nothing for a sheet without a table.
 */
export function curveDisputes(sheet: Sheet, gauges: GaugeBook): readonly CurveDispute[] {
  return disputesOf(sheet)(gauges);
}

const disputesOf = oncePer((sheet: Sheet) =>
  oncePer((gauges: GaugeBook) => disputes(sheet, gauges)),
);

function disputes(sheet: Sheet, gauges: GaugeBook): readonly CurveDispute[] {
  const curves = curvesOf(sheet);
  if (curves.length === 0) return [];
  const byId = new Map([...sheet.settings.values()].map((setting) => [setting.id, setting]));
  const ofPoints = curves.flatMap((curve) =>
    (curve.known?.curve?.points ?? []).flatMap((point) => {
      const setting = byId.get(point.setting);
      if (!setting) return [];
      const dispute = point.begins
        ? beginning(curve, setting)
        : pointOn(curve, setting, stationBeside(setting, point, byId, curve, gauges));
      return dispute ?? [];
    }),
  );
  return [
    ...ofPoints,
    ...[...byId.values()].flatMap((setting) => sumDispute(setting, byId, gauges) ?? []),
  ];
}

interface Station {
  readonly size: PlacedSize;
  readonly at: Rational;
}

function stationBeside(
  setting: Setting,
  point: { readonly key: string | null; readonly stationOf: string | null },
  byId: ReadonlyMap<string, Setting>,
  curve: Setting,
  gauges: GaugeBook,
): Station | null {
  const size =
    point.stationOf !== null
      ? (byId.get(point.stationOf)?.value ?? null)
      : saidSize(setting, point.key, curve, gauges);
  const at = stationOf(size, { ...setting, scale: curve.scale });
  return size && at ? { size, at } : null;
}

/** A key beside a value, read as a station of a curve. */
function saidSize(
  setting: Setting,
  key: string | null,
  curve: Setting,
  gauges: GaugeBook,
): PlacedSize | null {
  const said = key === null ? undefined : setting.said.get(key);
  if (!said) return null;
  const expect = curve.known?.curve?.against;
  return {
    span: said.span,
    text: said.value,
    reading: readStatement(said.value, { gauges, expect }),
  };
}

/** The figure of a setting that is told in a curve's measures: its value, or the first other way. */
function figureOn(curve: Setting, setting: Setting): { size: PlacedSize; band: Band } | null {
  for (const size of [setting.value, ...setting.also]) {
    const band = ownBand(size, { ...setting, scale: curve.scale });
    if (size && band) return { size, band };
  }
  return null;
}

function pointOn(curve: Setting, setting: Setting, station: Station | null): CurveDispute | null {
  const figure = figureOn(curve, setting);
  if (!station || !figure) return null;
  const reading = readingAt(curve, station.at);
  if (!('low' in reading)) return null;
  if (!isBelow(figure.band, reading) && !isBelow(reading, figure.band)) return null;
  const { size } = figure;
  const band = { low: reading.low, high: reading.high };
  return { setting, size, station: station.size, is: 'apart', band, curves: [{ curve, reading }] };
}

/** Whether a curve already leaves more than nothing everywhere where it is said to begin. */
function beginning(curve: Setting, setting: Setting): CurveDispute | null {
  const { value: size } = setting;
  const begins = ownBand(size, { ...setting, scale: curve.scale });
  if (!size || !begins?.low) return null;
  const reading = readingAt(curve, begins.low);
  const isLate = 'low' in reading && reading.low !== null && reading.low.compare(0) > 0;
  if (!isLate) return null;
  const band = { low: reading.low, high: reading.high };
  return { setting, size, station: null, is: 'late', band, curves: [{ curve, reading }] };
}

/** A row that is wholly more than the setting which bounds its curve. */
export interface RowAbove {
  readonly curve: Setting;
  readonly row: CurveRow;
  readonly setting: Setting;
  readonly size: PlacedSize;
  readonly because: string;
}

/** Rows of curves that lie wholly above the setting that none of theirs can be more than. */
export function rowsAbove(sheet: Sheet): readonly RowAbove[] {
  return curvesOf(sheet).flatMap((curve) => {
    const below = curve.known?.curve?.below;
    if (!below) return [];
    const setting = sheet.figures.find(({ id, station }) => id === below.setting && !station);
    const bound = ownBand(setting?.value ?? null, curve);
    if (!setting?.value || !bound) return [];
    const { value: size } = setting;
    return rowsOf(curve)
      .filter((row) => isBelow(bound, row))
      .map((row) => ({ curve, row, setting, size, because: below.because }));
  });
}

function sumDispute(
  setting: Setting,
  byId: ReadonlyMap<string, Setting>,
  gauges: GaugeBook,
): CurveDispute | null {
  const sum = setting.known?.sum;
  const stated = sum ? ownBand(setting.value, setting) : null;
  if (!sum || !stated || !setting.value) return null;
  let whole = NOTHING;
  const curves: { curve: Setting; reading: CurveReading }[] = [];
  let station: PlacedSize | null = null;
  let isBeyond = false;
  for (const part of sum.parts) {
    const found = part.settings.flatMap((name) => byId.get(name) ?? [])[0];
    if (part.key === null) {
      const band = found ? figureBand(found) : null;
      if (!band) return null;
      whole = addBands(whole, timesBand(band, part.times));
      continue;
    }
    if (!setting.said.has(part.key)) continue;
    // Whose table the sheet does not have, of that nothing is known.
    if (!found || found.rows.length === 0) return null;
    const said = saidSize(setting, part.key, found, gauges);
    const at = stationOf(said, setting);
    if (!said || !at) return null;
    station ??= said;
    const reading = readingAt(found, at.mul(part.stationTimes));
    curves.push({ curve: found, reading });
    if ('low' in reading) whole = addBands(whole, timesBand(reading, part.times));
    else isBeyond = true;
  }
  const size = setting.value;
  if (curves.length === 0) return null;
  if (isBeyond) return { setting, size, station, is: 'beyond', band: null, curves };
  if (!isBelow(stated, whole) && !isBelow(whole, stated)) return null;
  return { setting, size, station, is: 'apart', band: whole, curves };
}

/** The figure of a part in its own measure: an advance that is counted the other way takes away. */
function figureBand(setting: Setting): Band | null {
  const reading = setting.value?.reading;
  const band = ownBand(setting.value, setting);
  if (!reading?.ok || !band) return null;
  const isAfter = reading.statement.sense === 'after';
  const minus = (value: Rational | null): Rational | null =>
    value ? value.mul(rational(-1)) : null;
  return isAfter ? { low: minus(band.high), high: minus(band.low) } : band;
}
