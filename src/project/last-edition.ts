import { compareEditions, sheetSnapshot } from '../compare/index.ts';
import type { LastEdition } from '../press/index.ts';
import type { Sheet } from '../sheet/model.ts';
import type { Edition } from './edition.ts';
import { editionNamed } from './edition-source.ts';
import type { Project } from './project.ts';
import { Refusal } from './refusal.ts';
import { locate } from './safe-path.ts';
import { sizeReading } from './size-reading.ts';

/**
 * The edition that `previous:` of edition.yaml names, held against the sheets that go to the press;
 * null where it names none. Fails with `Refusal` where the file is missing, lies outside the project
 * or was not written by `gaugeleaf export --format json`.
 */
export function lastEdition(
  project: Project,
  { previous, facts }: Edition,
  sheets: readonly { readonly sheet: Sheet }[],
): LastEdition | null {
  if (previous === null) return null;
  const found = locate(project.root, project.root, previous);
  if (found.status !== 'found') {
    const why = found.status === 'outside' ? 'lies outside the project' : 'is not there';
    throw new Refusal(
      `\`previous: ${previous}\` of edition.yaml ${why}`,
      'name a file in the project that `gaugeleaf export --format json` wrote for the last edition, or take the line out',
    );
  }
  const { snapshot: before } = editionNamed(previous, project, project.root);
  const now = {
    title: facts.title,
    edition: facts.edition ?? null,
    date: facts.date ?? null,
    sheets: sheets.map(({ sheet }) => sheetSnapshot(sheet)),
  };
  return { before, changes: compareEditions(before, now, sizeReading(project)) };
}
