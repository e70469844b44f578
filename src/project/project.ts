import { realpathSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { CheckContext } from '../checks/index.ts';
import { gaugeBook } from '../gauges/index.ts';
import type { Kind } from '../kinds/model.ts';
import { type Edition, readEdition } from './edition.ts';
import { openEdition, truth, whole, written } from './edition-file.ts';
import { familyBooks } from './family-book.ts';
import { type FileFaults, fileFaults } from './file-faults.ts';
import { fileId } from './file-id.ts';
import { houseTolerancesIn, idleTolerances } from './house-tolerances.ts';
import { readKinds } from './kinds-folder.ts';
import { listSheets } from './list-sheets.ts';
import { findPicture } from './pictures.ts';
import { recordBooks } from './record-book.ts';
import { type ReadingFolder, readingFolder } from './rereading/kept-readings.ts';
import { findRoot, isFolder, isProjectFolder, shownPath } from './root.ts';
import { readSharedSources, type SharedSourcesRead, sharedSourcesFile } from './shared-sources.ts';

/** A club's folder, with everything in it that holds for all of its sheets. */
export interface Project {
  /** Absolute, links resolved. */
  readonly root: string;
  /** The same as it was come upon, from which reports show paths. */
  readonly named: string;
  /** Whether the folder is laid out as a project; otherwise a sheet merely lies in it. */
  readonly isProject: boolean;
  readonly kinds: ReadonlyMap<string, Kind>;
  /** The file of the project's own that describes a kind, as reports show it; null for one of the program's. */
  readonly kindFile: (kind: string) => string | null;
  /** What is wrong with files of kinds of unit. */
  readonly kindFaults: readonly FileFaults[];
  /** What is wrong in its own templates; looked at when first asked for. */
  readonly templateFaults: () => Promise<readonly FileFaults[]>;
  /** What `edition.yaml` says; read when first asked for. `edition` is null where there is none. */
  readonly edition: () => { readonly edition: Edition | null; readonly faults: FileFaults | null };
  /** All that is wrong with the edition, its sheets looked at: tolerances of the house that none of them takes. */
  readonly editionFaults: () => FileFaults | null;
  /** What `sources.yaml` describes for all sheets; read when first asked for. */
  readonly sharedSources: () => SharedSourcesRead;
  /** Its second readings, looked for when first asked for; null where it has no folder of them. */
  readonly readings: () => ReadingFolder | null;
  /** Absolute paths of its sheets, in byte order. */
  readonly sheets: () => readonly string[];
  /** What the checks may know for the sheet at an absolute path. */
  readonly context: (sheetPath: string) => CheckContext;
  /** A path as reports show it. */
  readonly show: (path: string) => string;
}

/**
 * Opens the project that a file or folder belongs to: the nearest folder upward that holds
 * `edition.yaml` or `sheets/`, else the folder itself. Reports show paths as seen from `cwd`.
 * Mistakes in its files come back as faults; fails with `Refusal` only where a folder cannot be read.
 */
export function openProject(start: string, cwd: string = process.cwd()): Project {
  const named = findRoot(resolve(cwd, start));
  const root = real(named);
  const show = (path: string) =>
    shownPath(path.startsWith(root) ? named + path.slice(root.length) : path, cwd);
  const { kinds, files, faults } = readKinds(root, show);
  const gauges = gaugeBook();
  const family = familyBooks(root, show);
  const records = recordBooks(root, show);
  let list: readonly string[] | null = null;
  const sheets = () => {
    list ??= listSheets(root);
    return list;
  };
  const file = once(() => openEdition(root, show(resolve(root, 'edition.yaml'))));
  const edition = once(() =>
    readEdition(
      file(),
      sheets().map((path) => fileId(path)),
      kinds,
    ),
  );
  // What checks of every sheet ask for; the edition's own mistakes are told with the whole project.
  const said = (key: string) => file().value[key];
  const sharedSources = once(() => readSharedSources(root, show(resolve(root, sharedSourcesFile))));
  const readings = once(() => readingFolder({ root, show, sheets }));
  const kit = once(() => (said('kit') ? (edition().edition?.facts.kit ?? null) : null));
  const house = once(() => houseTolerancesIn(said('house-tolerances')));
  const project: Project = {
    root,
    named,
    isProject: isProjectFolder(root),
    kinds,
    kindFile: (kind) => files.get(kind) ?? null,
    kindFaults: faults,
    templateFaults: once(async () => {
      // Most projects have none, and most commands don't print: what it takes is loaded late.
      if (!isFolder(join(root, 'templates'))) return [];
      const { clubFolder } = await import('./templates.ts');
      const folder = clubFolder(root);
      if (folder === null) return [];
      const { templateFaults } = await import('./template-faults.ts');
      return templateFaults(root, folder, kinds, show);
    }),
    edition,
    editionFaults: once(() => {
      const { faults } = edition();
      const { yaml, read } = file();
      const all = house();
      if (faults === null || all === null || yaml === null || !read?.ok) return faults;
      const idle = fileFaults(faults.file, read.text, idleTolerances(all, yaml, project));
      return { ...faults, findings: [...faults.findings, ...idle.findings] };
    }),
    sharedSources,
    readings,
    sheets,
    context: (sheetPath) => ({
      gauges,
      kinds,
      wireGauge: written(said('wire-gauge')),
      // Few sheets have a figure that it bears upon.
      get altitude() {
        return written(said('altitude'));
      },
      get measuredUnits() {
        return whole(said('measured-units'));
      },
      get secondReading() {
        const asked = said('second-reading');
        return asked === 'released' || asked === 'proof' ? asked : null;
      },
      get readings() {
        return readings()?.of(fileId(sheetPath)) ?? null;
      },
      get usualOrder() {
        return truth(said('usual-order'));
      },
      get houseTolerances() {
        return house();
      },
      get sharedSources() {
        return sharedSources().sources;
      },
      get kit() {
        return kit();
      },
      family: family(sheetPath),
      records: records(sheetPath),
      picture: (url) => findPicture(root, sheetPath, url).status,
    }),
    show,
  };
  return project;
}

/** What a function gives at its first call, at every call. */
function once<T>(work: () => T): () => T {
  let known: { readonly value: T } | null = null;
  return () => {
    known ??= { value: work() };
    return known.value;
  };
}

function real(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}
