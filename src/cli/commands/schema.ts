import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { acrossChecks, allChecks } from '../../checks/index.ts';
import { kindReference } from '../../kinds/reference/index.ts';
import {
  openProject,
  packageRoot,
  projectSheets,
  Refusal,
  writeWhole,
} from '../../project/index.ts';
import { projectSchemas } from '../../report/schemas/index.ts';
import { settingLabel } from '../../sheet/index.ts';
import type { Io } from '../io.ts';
import { trusted } from '../outlet.ts';
import type { ExitStatus } from '../run.ts';

export interface SchemaOptions {
  readonly out?: string;
}

/** The files that have a schema. */
const names = [
  'edition',
  'kind',
  'mapping',
  'reading',
  'record',
  'sheet',
  'sources',
  'variant',
] as const;

/**
 * `gaugeleaf schema`: writes the schemas of the files that a club writes, with the names of its kinds, sheets
 * and sources in them, into `schemas/` of the project or the folder that is named.
 */
export async function schema(options: SchemaOptions, io: Io): Promise<ExitStatus> {
  const project = openProject(io.cwd, io.cwd);
  const sheets = project.isProject ? projectSheets(project).map(({ sheet }) => sheet) : [];
  const own = new Map<string, string>();
  const sources = new Map<string, string>();
  for (const [id, source] of project.sharedSources().sources) sources.set(id, source.title ?? '');
  for (const sheet of sheets) {
    for (const setting of sheet.settings.values())
      if (setting.known === null) own.set(setting.id, settingLabel(setting));
    for (const [id, { title }] of sheet.sources)
      if (!sources.has(id)) sources.set(id, title?.value ?? '');
  }
  const offered = (of: ReadonlyMap<string, string>) =>
    [...of].sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, words]) => ({ name, words }));
  const read = (name: string) =>
    JSON.parse(readFileSync(join(packageRoot(), 'schemas', `${name}.schema.json`), 'utf8'));
  const schemas = projectSchemas(
    {
      edition: read('edition'),
      kind: read('kind'),
      mapping: read('mapping'),
      reading: read('reading'),
      record: read('record'),
      sheet: read('sheet'),
      sources: read('sources'),
      variant: read('variant'),
    },
    {
      kinds: [...project.kinds.values()].map((kind) => kindReference(kind)),
      sheets: offered(
        new Map(
          sheets.flatMap(({ id, title }) => (id === null ? [] : [[id.value, title?.value ?? '']])),
        ),
      ),
      ownSettings: offered(own),
      sources: offered(sources),
      findings: [...allChecks, ...acrossChecks].map(({ id, summary }) => ({
        name: id,
        words: summary,
      })),
    },
  );
  const given = join(packageRoot(), 'schemas');
  const folder =
    options.out === undefined ? join(project.root, 'schemas') : resolve(io.cwd, options.out);
  if (folder === given) {
    throw new Refusal(
      'the schemas of the program itself lie there, and are not written over',
      'name another folder with --out',
    );
  }
  const within = trusted(options.out, project, io);
  for (const name of names) {
    const path = join(folder, `${name}.schema.json`);
    writeWhole(path, `${JSON.stringify(schemas[name], null, 2)}\n`, { within });
    io.stdout.write(`${project.show(path)}\n`);
  }
  return 0;
}
