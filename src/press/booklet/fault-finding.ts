import type { Chapter } from './chapter.ts';
import type { ChapterPlace } from './where-worked.ts';

/** A symptom and the units whose chapters have it. */
export interface Fault {
  /** `Flooding`. */
  readonly title: string;
  /** In the order of the chapters. */
  readonly units: readonly (ChapterPlace & {
    /** `Orlo T71`. */
    readonly name: string;
  })[];
}

/** The symptoms of all chapters in the order of the alphabet, each with the units that show it. */
export function faultFinding(chapters: readonly Chapter[]): readonly Fault[] {
  const faults = new Map<string, Fault['units'][number][]>();
  for (const { number, checks, checksAnchor, face } of chapters) {
    const name = [face.maker, face.model].filter((each) => each !== null).join(' ');
    for (const { symptom } of checks) {
      const units = faults.get(symptom) ?? [];
      faults.set(symptom, units);
      units.push({ number, anchor: checksAnchor, name: name === '' ? face.title : name });
    }
  }
  return [...faults]
    .sort(([first], [second]) => (first.toLowerCase() < second.toLowerCase() ? -1 : 1))
    .map(([title, units]) => ({ title, units }));
}
