import { tasksOf } from '../../sheet/index.ts';
import type { Citation, Sheet } from '../../sheet/model.ts';
import type { SourceLine } from '../matter/index.ts';

/** A source of a chapter, and what stands in it. */
export interface SourcePages extends SourceLine {
  /** `p. 31: 5, 6; p. 32: 7`, by the numbers of the settings; empty where none is cited. */
  readonly cited: string;
}

/** The sources of a sheet, each with the settings that it speaks of, page by page. */
export function sourcePages(sheet: Sheet, sources: readonly SourceLine[]): readonly SourcePages[] {
  const cited = new Map<string, Map<string, string[]>>();
  for (const { number, setting } of tasksOf(sheet).settings) {
    for (const { id, page } of setting.from as readonly Citation[]) {
      const pages = cited.get(id) ?? new Map<string, string[]>();
      cited.set(id, pages);
      pages.set(page ?? '', [...(pages.get(page ?? '') ?? []), number]);
    }
  }
  return sources.map((source) => ({
    ...source,
    cited: [...(cited.get(source.name) ?? [])]
      .map(([page, numbers]) => `${page === '' ? '' : `${page}: `}${numbers.join(', ')}`)
      .join('; '),
  }));
}
