import type { SheetToPrint } from '../orders/model.ts';
import type { Chapter } from './chapter.ts';
import { type WorkedPlace, whereWorked } from './where-worked.ts';

/** A setting that, out in one way, shows a symptom, and where it is made on each unit. */
export interface FaultCause {
  readonly label: string;
  /** `too high`. */
  readonly way: string;
  /** In the order of the chapters; empty where they are too many for a line. */
  readonly places: readonly WorkedPlace[];
}

/** A symptom with the settings to look at. */
export interface Fault {
  readonly anchor: string;
  /** `Flooding`. */
  readonly title: string;
  readonly causes: readonly FaultCause[];
}

/** More units than this are left to the index, which has them all. */
const mostPlaces = 24;

/**
 * From what is noticed to what may be out: the symptoms of all settings that the sheets state, by
 * their kinds' data, in the order of the alphabet. Causes that more units have stand first.
 */
export function faultFinding(
  sheets: readonly SheetToPrint[],
  chapters: readonly Chapter[],
): readonly Fault[] {
  const faults = new Map<string, Map<string, FaultCause & { places: WorkedPlace[] }>>();
  for (const [index, entry] of sheets.entries()) {
    const chapter = chapters[index];
    if (!chapter) continue;
    for (const [name, place] of whereWorked(entry, chapter)) {
      const setting = entry.sheet.kind?.settings.get(name);
      for (const [way, symptoms] of setting?.symptoms ?? []) {
        for (const symptom of symptoms) {
          const causes = faults.get(symptom) ?? new Map();
          faults.set(symptom, causes);
          const label = setting?.label ?? name;
          const cause = causes.get(`${label} ${way}`) ?? { label, way, places: [] };
          causes.set(`${label} ${way}`, cause);
          cause.places.push(place);
        }
      }
    }
  }
  const sorted = [...faults].sort(([first], [second]) => (first < second ? -1 : 1));
  return sorted.map(([symptom, causes], index) => ({
    anchor: `symptom-${index + 1}`,
    title: symptom.charAt(0).toUpperCase() + symptom.slice(1),
    causes: [...causes.values()]
      .sort((first, second) => second.places.length - first.places.length)
      .map((cause) => ({
        ...cause,
        places: cause.places.length > mostPlaces ? [] : cause.places,
      })),
  }));
}
