import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { gaugeBook } from '../../src/gauges/index.ts';
import { examineText } from '../../src/project/examine-file.ts';
import { openProject } from '../../src/project/project.ts';
import { inUnit, rational } from '../../src/quantity/index.ts';
import { readingAt, stationNamed, stationOf, timesBand, timesOf } from '../../src/sheet/index.ts';
import type { Setting } from '../../src/sheet/model.ts';

interface Point {
  readonly sheet: string;
  readonly setting: string;
  readonly at: string;
  readonly lower?: string;
  readonly upper?: string;
  readonly unit?: string;
  readonly row?: boolean;
  readonly refused?: 'below' | 'above';
}

const folder = new URL('../trial/curves/', import.meta.url);
const { points } = parse(readFileSync(new URL('points.yaml', folder), 'utf8')) as {
  readonly points: readonly Point[];
};
const root = fileURLToPath(folder);
const project = openProject(root, root);
const sheets = new Map<string, ReadonlyMap<string, Setting>>();

function settingOf({ sheet, setting }: Point): Setting {
  const file = `sheets/${sheet}.md`;
  const settings =
    sheets.get(sheet) ??
    examineText(
      project,
      fileURLToPath(new URL(file, folder)),
      file,
      readFileSync(new URL(file, folder), 'utf8'),
    ).sheet.settings;
  sheets.set(sheet, settings);
  const found = settings.get(setting);
  if (!found) throw new Error(`${file} has no ${setting}`);
  return found;
}

/** Worked by hand in exact fractions, before there was any code: test/trial/curves/points.yaml. */
describe('fifty stations of four tables', () => {
  it.each(points)('$setting of $sheet at $at', (point) => {
    const setting = settingOf(point);
    const station = stationOf(stationNamed(point.at, setting, gaugeBook()), setting);
    if (!station) throw new Error(`${point.at} is not read`);
    const reading = readingAt(setting, station);
    if (point.refused !== undefined) {
      expect(reading.is).toBe(point.refused);
      return;
    }
    if (!('low' in reading)) throw new Error(reading.is);
    expect(reading.is).toBe(point.row === true ? 'row' : 'between');
    const { value } = (reading.is === 'row' ? reading.at : reading.before).row;
    if (!value?.reading.ok) throw new Error('no value');
    const { statement } = value.reading;
    const told = timesBand(reading, timesOf(value.text, setting));
    const unit = { '°': 'deg', '° crank': 'deg', in: 'in', cm3: 'cm3' }[point.unit ?? ''] ?? '';
    const exact = [told.low, told.high].map((one) => one && inUnit(one, statement.dimension, unit));
    const wanted = [point.lower, point.upper].map((text) => {
      const [over = '', under = '1'] = (text ?? '').split('/');
      return rational(over).div(rational(under));
    });
    expect(exact.map((one) => one?.toFraction())).toEqual(wanted.map((one) => one.toFraction()));
  });
});
