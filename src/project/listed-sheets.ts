import { join } from 'node:path';
import { draftSheet, type GivenFacts, type ListedUnit } from '../import/index.ts';
import type { Kind } from '../kinds/model.ts';
import { type KnownSheet, KnownUnits } from './known-units.ts';
import type { Project } from './project.ts';
import { isTaken } from './safe-path.ts';

/** The sheet of a listed unit: its text to write, or what is there in its place. */
export type ListedSheet =
  | { readonly path: string; readonly text: string }
  | {
      readonly path: string;
      readonly unit: ListedUnit;
      /** The unit's own sheet; null for a file of this name that is of something else. */
      readonly there: KnownSheet | null;
    };

/** The sheets that units of a list get in a folder, in the list's order. Nothing is written here. */
export function* listedSheets(
  project: Project,
  named: ReadonlyMap<string, ListedUnit>,
  folder: string,
  { kind, source, date }: { kind: Kind; source: GivenFacts['source']; date: string },
): Generator<ListedSheet> {
  const known = new KnownUnits(project, kind);
  for (const [id, unit] of named) {
    const path = join(folder, `${id}.md`);
    const there = known.sheetOf(unit, path);
    if (there !== null || isTaken(path)) {
      yield { path, unit, there };
      continue;
    }
    const { maker, model, features } = unit;
    const given = { unit, source };
    yield { path, text: draftSheet({ kind, maker, model, features, id, date, given }) };
  }
}
