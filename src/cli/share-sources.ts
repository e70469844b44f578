import { join, relative } from 'node:path';
import { sheetFacts } from '../checks/across/facts.ts';
import type { Project } from '../project/project.ts';
import { readText } from '../project/read-text.ts';
import { isTaken, locate } from '../project/safe-path.ts';
import { sharedSourcesFile } from '../project/shared-sources.ts';
import { writeWhole } from '../project/write-whole.ts';
import { type SheetToShare, shareSources } from '../report/index.ts';
import { readSheet } from '../sheet/index.ts';
import { type Io, say } from './io.ts';

/**
 * Describes in the project's `sources.yaml`, once, what several of its sheets describe in the same
 * words, and takes it out of them; tells what was moved. The shared file is written first: were the
 * rest to fail, a sheet that still describes a paper itself is as right as before.
 */
export function mendSources(project: Project, io: Io): void {
  const shared = join(project.root, sharedSourcesFile);
  const isThere = isTaken(shared);
  // A file that a link leads to outside of the project is nobody's to change.
  const isOurs = (path: string) => locate(project.root, project.root, path).status === 'found';
  if (isThere && !isOurs(sharedSourcesFile)) return;
  const before = isThere ? readText(shared) : null;
  if (before !== null && (!before.ok || before.fault !== null)) return;
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
  if (sharing === null) return;
  if (sharing.sourcesText !== before?.text) writeWhole(shared, sharing.sourcesText);
  for (const [file, text] of sharing.sheets) writeWhole(paths.get(file) ?? file, text);
  const names = sharing.moved.join(', ');
  const count = sharing.sheets.size === 1 ? '1 sheet' : `${sharing.sheets.size} sheets`;
  say(io, `moved ${names} from ${count} to ${project.show(shared)}`);
}
