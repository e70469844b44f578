import type { Altitude } from '../../relations/index.ts';
import { altitudeReadings, tableAltitudes } from '../matter/index.ts';
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
  const { club, altitudes } = tableAltitudes(clubs);
  const columns = sheets.flatMap((entry, index) => {
    const chapter = chapters[index];
    return chapter ? columnsOf(entry, chapter, altitudes, clubs) : [];
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
  clubs: string | null,
): Carried[] {
  const places = whereWorked(entry, chapter);
  return altitudeReadings(entry.sheet, altitudes, clubs).map(({ setting, ...told }) => {
    const { number, anchor } = places.get(setting.id) ?? chapter;
    return { ...told, number, anchor, title: chapter.face.title };
  });
}
