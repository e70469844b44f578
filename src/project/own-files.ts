import { join } from 'node:path';
import { readEdition } from './edition.ts';
import { editionOf } from './edition-file.ts';
import type { FileFaults } from './file-faults.ts';
import { fileId } from './file-id.ts';
import { kindTextFaults } from './kinds-folder.ts';
import { listFiles } from './list-sheets.ts';
import type { Project } from './project.ts';
import { isFolder } from './root.ts';
import { isTaken } from './safe-path.ts';
import { sharedSourcesFile, sourcesTextFaults } from './shared-sources.ts';

/** A YAML file of a project that holds for its sheets and is none. */
export interface OwnFile {
  /** Its place in the project, parted by `/`: `edition.yaml`, `kinds/fuel-pump.yaml`. */
  readonly id: string;
  readonly path: string;
  readonly sort: 'edition' | 'sources' | 'kind';
}

/** Those that are there, the edition first. */
export function ownFiles({ root }: Project): readonly OwnFile[] {
  const single = [
    ['edition.yaml', 'edition'],
    [sharedSourcesFile, 'sources'],
  ] as const;
  const kinds = join(root, 'kinds');
  return [
    ...single
      .map(([id, sort]) => ({ id, path: join(root, id), sort }))
      .filter(({ path }) => isTaken(path)),
    ...(isFolder(kinds) ? listFiles(kinds, /\.ya?ml$/i) : []).map(
      (name): OwnFile => ({ id: `kinds/${name}`, path: join(kinds, name), sort: 'kind' }),
    ),
  ];
}

/** What would be wrong if a text stood in one of them, as `check` finds it; null for nothing. */
export function ownFileFaults(
  project: Project,
  { path, sort }: OwnFile,
  text: string,
): FileFaults | null {
  const file = project.show(path);
  if (sort === 'kind') return kindTextFaults(text, file);
  if (sort === 'sources') return sourcesTextFaults(text, file);
  const read = { ok: true, text, fault: null } as const;
  const sheets = project.sheets().map((each) => fileId(each));
  return readEdition(editionOf(project.root, file, read), sheets).faults;
}
