import { join, relative } from 'node:path';
import { sheetFacts } from '../../checks/index.ts';
import { type SheetToShare, shareSources } from '../../report/index.ts';
import { readSheet } from '../../sheet/index.ts';
import type { Project } from '../project.ts';
import { readText } from '../read-text.ts';
import { isTaken, locate } from '../safe-path.ts';
import { sharedSourcesFile } from '../shared-sources.ts';
import { writeWhole } from '../write-whole.ts';

/** What was moved to the shared file. */
export interface MovedSources {
  readonly names: readonly string[];
  /** How many sheets they were taken out of. */
  readonly sheets: number;
  /** The shared file, as reports show it. */
  readonly file: string;
}

/**
 * Describes in the project's `sources.yaml`, once, what several of its sheets describe in the same
 * words, and takes it out of them. The shared file is written first: were the
 * rest to fail, a sheet that still describes a paper itself is as right as before. Null where nothing moved.
 */
export function mendSources(project: Project): MovedSources | null {
  const shared = join(project.root, sharedSourcesFile);
  const isThere = isTaken(shared);
  // A file that a link leads to outside of the project is nobody's to change.
  const isOurs = (path: string) => locate(project.root, project.root, path).status === 'found';
  if (isThere && !isOurs(sharedSourcesFile)) return null;
  const before = isThere ? readText(shared) : null;
  if (before !== null && (!before.ok || before.fault !== null)) return null;
  const { gauges } = project.context(project.root);
  const options = { kinds: new Map(), gauges, wireGauge: null };
  const paths = new Map<string, string>();
  const sheets: SheetToShare[] = [];
  for (const path of project.sheets()) {
    if (!isOurs(relative(project.root, path))) continue;
    const read = readText(path);
    if (!read.ok || read.fault !== null) continue;
    const file = project.show(path);
    const sheet = readSheet(read.text, file, options);
    if (sheet.problems.some(({ kind }) => kind === 'front-matter' || kind === 'limits')) continue;
    const facts = sheetFacts(sheet);
    if (facts === null) continue;
    paths.set(file, path);
    sheets.push({ text: read.text, facts });
  }
  const sharing = shareSources(sheets, before?.text ?? null, options);
  if (sharing === null) return null;
  if (sharing.sourcesText !== before?.text) writeWhole(shared, sharing.sourcesText);
  for (const [file, text] of sharing.sheets) writeWhole(paths.get(file) ?? file, text);
  return { names: sharing.moved, sheets: sharing.sheets.size, file: project.show(shared) };
}
