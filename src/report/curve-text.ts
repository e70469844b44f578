import { equivalents } from '../quantity/index.ts';
import type { GaugeBook } from '../quantity/model.ts';
import {
  bandText,
  type CurveReading,
  readingAt,
  readingText,
  rowsOf,
  settingLabel,
  stationNamed,
  stationOf,
} from '../sheet/index.ts';
import type { PlacedSize, Setting } from '../sheet/model.ts';
import { visible } from '../text/index.ts';

/** What a table says at a station that somebody asks for; `problem` where it is no station. */
export type CurveAnswer =
  | { readonly problem: string }
  | { readonly at: string; readonly reading: CurveReading; readonly told: string };

/** Asks a table: the answer is in the measure and the unit that its rows are told in. */
export function askCurve(setting: Setting, at: string, gauges: GaugeBook): CurveAnswer {
  const size = stationNamed(at, setting, gauges);
  const station = stationOf(size, setting);
  const label = setting.known?.curve?.label ?? 'station';
  if (!size || !station) {
    return { problem: `${at} is not read as a ${label} of ${setting.name.value}` };
  }
  const reading = readingAt(setting, station);
  return { at, reading, told: answerText(reading) };
}

function answerText(reading: CurveReading): string {
  if (!('low' in reading)) return `${readingText(reading)}: beyond it the paper says nothing`;
  const { row } = reading.is === 'row' ? reading.at : reading.before;
  if (reading.is === 'row') return row.value?.text ?? '';
  const [before, after] = [reading.before.row, reading.after.row];
  const rows = `${before.station?.text ?? ''} and ${after.station?.text ?? ''}`;
  return `${bandText(reading, row.value, row)}, by straight lines between its rows at ${rows}`;
}

/** A table as text: every row as written, with what it comes to in other units. */
export function curveText(setting: Setting): string {
  const rows = setting.rows.map(({ station, value, also, note }) => [
    station?.text ?? '',
    value?.text ?? '',
    [equalsText(value), ...also.map(({ text }) => text)].filter((text) => text !== '').join(', '),
    note?.value ?? '',
  ]);
  const widths = [0, 1].map((i) => Math.max(...rows.map((row) => (row[i] ?? '').length)));
  const lines = rows.map(([at = '', value = '', ...more]) => {
    const rest = more.filter((text) => text !== '').join('; ');
    return `  ${at.padStart(widths[0] ?? 0)}  ${value.padEnd(widths[1] ?? 0)}  ${rest}`.trimEnd();
  });
  const head = `${settingLabel(setting)} (${setting.name.value})`;
  return `${[head, ...lines].map(visible).join('\n')}\n`;
}

function equalsText(size: PlacedSize | null): string {
  if (!size?.reading.ok) return '';
  const { inch, mm, other } = equivalents(size.reading.statement);
  return [inch, mm, ...other].filter((text) => text !== null).join(', ');
}

/** The same as plain data; exact limits in the base unit of the dimension, as fractions. */
export function curveData(setting: Setting, answer: CurveAnswer | null) {
  return {
    setting: setting.id,
    rows: rowsOf(setting).map(({ row, station, low, high }) => ({
      at: row.station?.text ?? '',
      value: row.value?.text ?? '',
      station: station.toFraction(),
      low: low?.toFraction() ?? null,
      high: high?.toFraction() ?? null,
    })),
    ...(answer && 'reading' in answer
      ? {
          asked: {
            at: answer.at,
            is: answer.reading.is,
            told: answer.told,
            low: 'low' in answer.reading ? (answer.reading.low?.toFraction() ?? null) : null,
            high: 'low' in answer.reading ? (answer.reading.high?.toFraction() ?? null) : null,
          },
        }
      : {}),
  };
}
