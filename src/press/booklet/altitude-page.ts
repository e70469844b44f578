import { gaugeBook } from '../../gauges/index.ts';
import { principal, readStatement } from '../../quantity/index.ts';
import {
  ALTITUDE_RELATION,
  type Altitude,
  usualAltitudes,
  vacuumByAltitude,
} from '../../relations/altitude-table.ts';
import type { Setting } from '../../sheet/model.ts';
import type { SheetToPrint } from '../orders/model.ts';
import type { Chapter } from './chapter.ts';
import { type ChapterPlace, whereWorked } from './where-worked.ts';

/** A reading of one unit, carried to every altitude of the page. */
export interface AltitudeColumn extends ChapterPlace {
  readonly title: string;
  /** As the sheet states it, with the place where there are several. */
  readonly stated: string;
  /** Where it was read: `sea level` is taken where the sheet says nothing. */
  readonly readAt: string;
}

/** Some readings side by side, as many as the paper has room for. */
export interface AltitudeTable {
  readonly columns: readonly AltitudeColumn[];
  readonly rows: readonly {
    readonly altitude: string;
    readonly isClubs: boolean;
    /** One to each column; null where none can be given. */
    readonly readings: readonly (string | null)[];
  }[];
}

type Carried = AltitudeColumn & { readonly readings: readonly (string | null)[] };

/** What a vacuum gauge reads on each unit by altitude, worked; empty where no sheet states a reading. */
export function altitudePage(
  sheets: readonly SheetToPrint[],
  chapters: readonly Chapter[],
  clubs: string | null,
  across: number,
): readonly AltitudeTable[] {
  const club = altitudeFrom(clubs);
  const usual = usualAltitudes(clubs?.trim().endsWith('m') ? 'm' : 'ft');
  const altitudes = [...usual.filter(({ mm }) => !club?.mm.equals(mm)), ...(club ? [club] : [])];
  altitudes.sort((first, second) => first.mm.compare(second.mm));
  const columns = sheets.flatMap((entry, index) => {
    const chapter = chapters[index];
    return chapter ? columnsOf(entry, chapter, altitudes) : [];
  });
  const count = Math.ceil(columns.length / across);
  const width = Math.ceil(columns.length / Math.max(1, count));
  return Array.from({ length: count }, (_, table) => {
    const side = columns.slice(table * width, (table + 1) * width);
    return {
      columns: side.map(({ readings: _, ...column }) => column),
      rows: altitudes.map((altitude, row) => ({
        altitude: altitude.text,
        isClubs: altitude === club,
        readings: side.map(({ readings }) => readings[row] ?? null),
      })),
    };
  });
}

function columnsOf(
  entry: SheetToPrint,
  chapter: Chapter,
  altitudes: readonly Altitude[],
): Carried[] {
  const { sheet } = entry;
  const { kind } = sheet;
  const places = whereWorked(entry, chapter);
  const bindings = (kind?.relations.bindings ?? []).filter(
    (each) => each.relation === ALTITUDE_RELATION,
  );
  return bindings.flatMap(({ quantities }) => {
    const reading = quantities.get('reading');
    const said = quantities.get('altitude');
    if (reading?.is !== 'setting') return [];
    const key = said?.is === 'setting' ? said.key : null;
    const settings = [...sheet.settings.values()].filter(({ id }) => id === reading.setting);
    return settings.flatMap((setting) => {
      const from = key === null ? null : altitudeFrom(setting.said.get(key)?.value ?? null);
      const { number, anchor } = places.get(reading.setting) ?? chapter;
      return sizesOf(setting).flatMap(({ words, statement }) => {
        const readings = vacuumByAltitude(statement, from, altitudes).map((row) => row.reading);
        if (readings.every((each) => each === null)) return [];
        const readAt = from?.text ?? 'sea level';
        return [{ number, anchor, title: chapter.face.title, stated: words, readAt, readings }];
      });
    });
  });
}

function sizesOf(setting: Setting) {
  const whole = setting.value === null ? [] : [['', setting.value] as const];
  return [...whole, ...setting.places].flatMap(([place, { text, reading }]) =>
    reading.ok
      ? [{ words: place === '' ? text : `${place} ${text}`, statement: reading.statement }]
      : [],
  );
}

function altitudeFrom(written: string | null): Altitude | null {
  if (written === null) return null;
  const reading = readStatement(written, { gauges: gaugeBook(), expect: ['length'] });
  const amount = reading.ok ? principal(reading.statement) : null;
  return amount === null ? null : { text: written, mm: amount.base };
}
