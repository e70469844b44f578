import { fileURLToPath } from 'node:url';
import { compareEditions, sheetSnapshot } from '../../src/compare/index.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import type { LastEdition, SheetToPrint } from '../../src/press/index.ts';
import type { Edition } from '../../src/project/edition.ts';
import { editionNamed, projectSheets } from '../../src/project/edition-source.ts';
import { openProject } from '../../src/project/project.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const project = openProject(root, root);

/** The demo's edition. */
export function demoEdition(): Edition {
  const { edition } = project.edition();
  if (edition === null) throw new Error('the demo has no edition');
  return edition;
}

/** The demo's sheets in the order of its edition, without their findings. */
export function demoSheets(): readonly SheetToPrint[] {
  return projectSheets(project).map(({ sheet }) => ({ sheet, findings: [] }));
}

/** The edition before the demo's, held against sheets. */
export function demoLast(sheets: readonly SheetToPrint[]): LastEdition {
  const { snapshot: before } = editionNamed('editions/first.json', project, root);
  const now = sheets.map(({ sheet }) => sheetSnapshot(sheet));
  const changes = compareEditions(
    before,
    { title: null, edition: 'second', date: null, sheets: now },
    {
      gauges: gaugeBook(),
      dimensionsOf: (name) =>
        [...builtInKinds().values()].flatMap((kind) => kind.settings.get(name) ?? [])[0]
          ?.dimensions,
    },
  );
  return { before, changes };
}
