import { realpathSync } from 'node:fs';
import { basename, relative, resolve, sep } from 'node:path';
import { sheetSnapshot } from '../compare/index.ts';
import type { EditionSnapshot } from '../compare/model.ts';
import { validate } from '../generated/validate-export.js';
import { fromData } from '../report/export/index.ts';
import { type FamilyBook, readSheet, type SharedSources, sourcesIn } from '../sheet/index.ts';
import type { Sheet } from '../sheet/model.ts';
import { readYaml } from '../text/index.ts';
import { decodeText } from './decode.ts';
import { fileId } from './file-id.ts';
import { runGit } from './git.ts';
import { openProject, type Project } from './project.ts';
import { readBounded, readOwnText } from './read-text.ts';
import { causeInWords, Refusal } from './refusal.ts';
import { isFolder } from './root.ts';
import { sharedSourcesFile } from './shared-sources.ts';

/** An edition to compare, and what to call it where it has no name of its own. */
export interface EditionSource {
  readonly snapshot: EditionSnapshot;
  readonly label: string;
}

/** A data file is longer than a sheet: 64 MiB at most. */
const longestData = 64 * 1024 * 1024;

/**
 * The edition that a person means: a project folder, a data file of `gaugeleaf export`, or a
 * revision of the repository that the project lies in (`v1`, `HEAD~3`). Fails with `Refusal` where
 * it is none of these.
 */
export function editionNamed(name: string, around: Project, cwd: string): EditionSource {
  const path = resolve(cwd, name);
  if (isFolder(path)) {
    const project = openProject(path, cwd);
    if (project.sheets().length === 0) {
      throw new Refusal(`there is no sheet in the folder ${name}`, 'name a project folder');
    }
    return { snapshot: projectSnapshot(project), label: name };
  }
  if (/\.json$/i.test(name)) return { snapshot: dataSnapshot(path, name), label: name };
  return { snapshot: revisionSnapshot(name, around), label: name };
}

/** A sheet as it was read and not checked. */
export interface ReadSheet {
  readonly sheet: Sheet;
}

/**
 * A project's sheets as they stand, read and not checked, in the order of its edition, those that it
 * leaves out at the end. Fails with `Refusal` for one that cannot be read.
 */
export function projectSheets(project: Project): ReadSheet[] {
  const sheets = new Map<string, ReadSheet>();
  for (const path of project.sheets()) {
    const file = project.show(path);
    const read = readOwnText(project.root, path, file);
    if (!read.ok) throw new Refusal(read.message, read.fix);
    const { family } = project.context(path);
    sheets.set(fileId(path), readFor(read.text, file, project, family ?? null));
  }
  return inOrder(sheets, project.edition().edition?.sheets ?? null);
}

/** What a project's edition says, from its sheets as `projectSheets` gave them. */
export function projectSnapshot(
  project: Project,
  sheets: readonly ReadSheet[] = projectSheets(project),
): EditionSnapshot {
  const { edition } = project.edition();
  return {
    title: edition?.facts.title ?? null,
    edition: edition?.facts.edition ?? null,
    date: edition?.facts.date ?? null,
    sheets: sheets.map(({ sheet }) => sheetSnapshot(sheet)),
  };
}

function readFor(
  text: string,
  file: string,
  project: Project,
  family: FamilyBook | null,
  sharedSources: SharedSources = project.sharedSources().sources,
): ReadSheet {
  const { gauges, wireGauge } = project.context(file);
  const sheet = readSheet(text, file, {
    kinds: project.kinds,
    gauges,
    wireGauge,
    family,
    sharedSources,
  });
  return { sheet };
}

function inOrder<T>(sheets: ReadonlyMap<string, T>, order: readonly string[] | null): T[] {
  const named = (order ?? []).flatMap((name) => sheets.get(name) ?? []);
  const rest = [...sheets].filter(([name]) => !order?.includes(name)).map(([, sheet]) => sheet);
  return [...named, ...rest];
}

function dataSnapshot(path: string, name: string): EditionSnapshot {
  const read = readBounded(path, longestData);
  if (!read.ok) throw new Refusal(`${name} cannot be read: ${read.why}`);
  let data: unknown;
  try {
    data = JSON.parse(
      Buffer.from(read.bytes)
        .toString('utf8')
        .replace(/^\ufeff/, ''),
    );
  } catch {
    throw new Refusal(`${name} is no data file: it is not JSON`, exportHint);
  }
  const snapshot = validate(data) ? fromData(data) : null;
  if (snapshot === null) {
    throw new Refusal(`${name} is no data file that this version of gaugeleaf wrote`, exportHint);
  }
  return snapshot;
}

const exportHint = 'gaugeleaf export --format json writes one';

/** A revision of a repository as its sheets were then, read without touching the working folder. */
function revisionSnapshot(revision: string, project: Project): EditionSnapshot {
  const unknown = new Refusal(
    `there is no folder, data file or revision ${revision}`,
    'name a project folder, a file of `gaugeleaf export --format json`, or a git revision of this project',
  );
  // A name that begins with a dash would be taken for an option.
  if (revision.startsWith('-')) throw unknown;
  const top = git(project.root, ['rev-parse', '--show-toplevel']);
  if (top === null) throw unknown;
  const commit = git(project.root, [
    'rev-parse',
    '--verify',
    '--quiet',
    '--end-of-options',
    `${revision}^{commit}`,
  ]);
  if (commit === null) throw unknown;
  const id = commit.toString('utf8').trim();
  const below = relative(realpathSync(top.toString('utf8').trim()), project.root)
    .split(sep)
    .join('/');
  const at = (path: string) => (below === '' ? path : `${below}/${path}`);
  const list = git(project.root, [
    'ls-tree',
    '-z',
    '--name-only',
    '--full-tree',
    id,
    at('sheets/'),
  ]);
  const files = (list?.toString('utf8') ?? '')
    .split('\0')
    .filter((file) => /\.md$/i.test(file) && !basename(file).startsWith('.'));
  if (files.length === 0) {
    throw new Refusal(`revision ${revision} has no sheets in ${at('sheets')}`);
  }
  const texts = new Map(
    files.map((file) => {
      const bytes = git(project.root, ['cat-file', 'blob', `${id}:${file}`]);
      if (bytes === null) throw new Refusal(`${file} of revision ${revision} cannot be read`);
      return [fileId(file), { file, text: decodeText(bytes).text }] as const;
    }),
  );
  const family: FamilyBook = {
    find: (name) => texts.get(name) ?? null,
    names: () => [...texts.keys()],
  };
  const papers = git(project.root, ['cat-file', 'blob', `${id}:${at(sharedSourcesFile)}`]);
  const shared = sourcesIn(readYaml(papers === null ? '' : decodeText(papers).text));
  const sheets = new Map(
    [...texts].map(([name, { file, text }]) => {
      const { sheet } = readFor(text, file, project, family, shared);
      return [name, sheetSnapshot(sheet)] as const;
    }),
  );
  const yaml = git(project.root, ['cat-file', 'blob', `${id}:${at('edition.yaml')}`]);
  const facts = yaml === null ? {} : editionFacts(decodeText(yaml).text);
  const written = (value: unknown) =>
    typeof value === 'string' || typeof value === 'number' ? String(value) : null;
  const order = Array.isArray(facts.order)
    ? facts.order.map((name) =>
        (written(name) ?? '').replace(/^sheets\//, '').replace(/\.md$/i, ''),
      )
    : null;
  return {
    title: written(facts.title),
    edition: written(facts.edition),
    date: written(facts.date) ?? written(facts.year),
    sheets: inOrder(sheets, order),
  };
}

function editionFacts(text: string): Readonly<Record<string, unknown>> {
  const { root, value } = readYaml(text, 0);
  return root?.kind === 'map' ? (value as Record<string, unknown>) : {};
}

/** What git prints; null where it fails. Fails with `Refusal` where there is no git. */
function git(root: string, args: readonly string[]): Buffer | null {
  const { output, fault } = runGit(root, args, longestData);
  if (fault) {
    throw new Refusal(
      fault.code === 'ENOENT'
        ? 'comparing revisions takes git, and it is not installed here'
        : `git could not be run: ${causeInWords(fault)}`,
    );
  }
  return output;
}
