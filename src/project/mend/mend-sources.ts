import { join } from 'node:path';
import { sheetFacts } from '../../checks/index.ts';
import { type SheetToShare, shareSources } from '../../report/index.ts';
import { readSheet } from '../../sheet/index.ts';
import type { Project } from '../project.ts';
import { readOwnText } from '../read-text.ts';
import { isTaken } from '../safe-path.ts';
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
  // A file that a link leads to outside of the project is not read, and nobody's to change.
  const before = isThere ? readOwnText(project.root, shared, sharedSourcesFile) : null;
  if (before !== null && (!before.ok || before.fault !== null)) return null;
  const { gauges } = project.context(project.root);
  const options = { kinds: new Map(), gauges, wireGauge: null };
  const read = new Map<string, { readonly path: string; readonly was: string }>();
  const sheets: SheetToShare[] = [];
  for (const path of project.sheets()) {
    const file = project.show(path);
    const own = readOwnText(project.root, path, file);
    if (!own.ok || own.fault !== null) continue;
    const sheet = readSheet(own.text, file, options);
    if (sheet.problems.some(({ kind }) => kind === 'front-matter' || kind === 'limits')) continue;
    const facts = sheetFacts(sheet);
    if (facts === null) continue;
    read.set(file, { path, was: own.text });
    sheets.push({ text: own.text, facts });
  }
  const sharing = shareSources(sheets, before?.text ?? null, options);
  if (sharing === null) return null;
  const within = project.root;
  if (sharing.sourcesText !== before?.text) {
    writeWhole(shared, sharing.sourcesText, { within, ...(before && { was: before.text }) });
  }
  for (const [file, text] of sharing.sheets) {
    const { path, was } = read.get(file) ?? { path: file, was: '' };
    writeWhole(path, text, { within, was });
  }
  return { names: sharing.moved, sheets: sharing.sheets.size, file: project.show(shared) };
}
