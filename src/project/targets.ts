import { statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { nearestName } from '../text/index.ts';
import { fileId } from './file-id.ts';
import { type FileSort, fileSort } from './file-sort.ts';
import { listSheets } from './list-sheets.ts';
import { notASheet } from './not-a-sheet.ts';
import { openProject, type Project } from './project.ts';
import { Refusal } from './refusal.ts';
import { findRoot, isFolder, isProjectFolder } from './root.ts';

/** A sheet that a command is to look at, with the project it belongs to. */
export interface Target {
  readonly project: Project;
  /** Absolute. */
  readonly path: string;
}

/** Opens each project once, however many of its sheets are named. */
export class Projects {
  readonly #cwd: string;
  readonly #open = new Map<string, Project>();

  constructor(cwd: string) {
    this.#cwd = cwd;
  }

  /** The project of a file or folder, opened when it is first asked for. */
  of(path: string): Project {
    const root = findRoot(path);
    let project = this.#open.get(root);
    if (project === undefined) {
      project = openProject(root, this.#cwd);
      this.#open.set(root, project);
    }
    return project;
  }

  /** All that were opened, in the order they were. */
  get opened(): readonly Project[] {
    return [...this.#open.values()];
  }
}

/**
 * The sheet that a person means by `name`: a path, or the sheet's name in the project around
 * `cwd`. Fails with `Refusal`, naming the nearest one, where there is none.
 */
export function sheetNamed(name: string, projects: Projects, cwd: string): Target {
  const path = resolve(cwd, name);
  if (exists(path) && !isFolder(path)) {
    const sort = fileSort(path);
    if (sort !== null) throw notASheet(name, sort);
    return { project: projects.of(path), path };
  }
  const project = projects.of(cwd);
  const wanted = fileId(name);
  const bare = !/[\\/]/.test(name);
  const known = project.isProject ? project.sheets() : [];
  const found = bare ? known.find((sheet) => fileId(sheet) === wanted) : undefined;
  if (found !== undefined) return { project, path: found };
  if (exists(path)) throw new Refusal(`${name} is a folder, not a file`);
  throw new Refusal(`there is no sheet ${name}`, meant(wanted, path, known, project));
}

function meant(
  wanted: string,
  path: string,
  known: readonly string[],
  project: Project,
): string | null {
  const longer = known.filter((each) => wanted.length > 2 && fileId(each).startsWith(wanted));
  const near =
    nearestName(wanted, known.map(fileId)) ??
    (longer.length === 1 && longer[0] !== undefined ? fileId(longer[0]) : null);
  const sheet = near === null ? undefined : known.find((each) => fileId(each) === near);
  if (sheet !== undefined) return `perhaps ${project.show(sheet)} was meant`;
  const folder = dirname(path);
  if (!isFolder(folder)) return `there is no folder ${project.show(folder)} either`;
  const beside = nearestName(
    basename(path),
    listSheetsQuietly(folder).map((each) => basename(each)),
  );
  return beside === null ? null : `perhaps ${project.show(join(folder, beside))} was meant`;
}

function listSheetsQuietly(folder: string): string[] {
  try {
    // Of a project's own folder the sheets lie below: their names are known by then.
    return isProjectFolder(folder) ? [] : listSheets(folder);
  } catch {
    return [];
  }
}

function exists(path: string): boolean {
  try {
    return statSync(path, { throwIfNoEntry: false }) !== undefined;
  } catch {
    return false;
  }
}

/** What `check` is to look at. */
export interface Targets {
  readonly sheets: readonly Target[];
  /** Projects that are looked at as a whole: their editions are checked too. */
  readonly whole: readonly Project[];
  /** Files that are named and are no sheets, with the project that each lies in. */
  readonly others: readonly (Target & { readonly sort: FileSort })[];
}

/**
 * The sheets that paths name, each once, in the order named; a folder stands for the sheets in it,
 * no path at all for the project around `cwd`. Fails with `Refusal` for a path that is nothing.
 */
export function targetsOf(paths: readonly string[], projects: Projects, cwd: string): Targets {
  const sheets = new Map<string, Target>();
  const whole = new Set<Project>();
  const others = new Map<string, Targets['others'][number]>();
  const addFolder = (folder: string): number => {
    const own = projects.of(folder);
    const isWhole = own.isProject && resolve(folder) === findRoot(folder);
    if (isWhole) whole.add(own);
    const listed = isWhole ? own.sheets() : listSheets(folder);
    for (const path of listed) {
      sheets.set(path, { project: isWhole ? own : projects.of(dirname(path)), path });
    }
    return listed.length;
  };
  if (paths.length === 0) {
    const root = findRoot(cwd);
    const count = addFolder(root);
    if (count === 0) {
      throw new Refusal(
        isProjectFolder(root)
          ? `the project ${root} has no sheets`
          : `there is no folder \`sheets\` here or above, and no sheet in ${root}`,
        'name a sheet or a folder: gaugeleaf check path/to/sheet.md; gaugeleaf draft writes a new one',
      );
    }
  }
  for (const name of paths) {
    const path = resolve(cwd, name);
    if (isFolder(path) && !/\.md$/i.test(path)) {
      if (addFolder(path) === 0) throw new Refusal(`there is no sheet in the folder ${name}`);
    } else if (exists(path)) {
      const sort = fileSort(path);
      if (sort === 'kind' || sort === 'edition' || sort === 'sources') {
        others.set(path, { project: projects.of(dirname(path)), path, sort });
        continue;
      }
      if (sort !== null) throw notASheet(name, sort);
      sheets.set(path, { project: projects.of(dirname(path)), path });
    } else {
      const target = sheetNamed(name, projects, cwd);
      sheets.set(target.path, target);
    }
  }
  return { sheets: [...sheets.values()], whole: [...whole], others: [...others.values()] };
}
