import { basename, join, resolve } from 'node:path';
import { browserCache } from '../../project/browser-cache.ts';
import { flate } from '../../project/flate.ts';
import { partFolder } from '../../project/part-store.ts';
import { Refusal } from '../../project/refusal.ts';
import { readTemplates } from '../../project/templates.ts';
import { placeFindings, stoppers } from '../../report/index.ts';
import type { Io } from '../io.ts';
import {
  browserFor,
  type Candidate,
  candidate,
  deliver,
  outPath,
  type PrintOptions,
  pictureSource,
  stopReport,
  tellStops,
} from '../printing.ts';
import { startProgress } from '../progress.ts';
import type { ExitStatus } from '../run.ts';
import { Projects } from '../targets.ts';

/**
 * `gaugeleaf booklet`: the edition of a project, its sheets in the order of `edition.yaml`. 1 where
 * findings stop the press; then nothing is printed.
 */
export async function booklet(
  folder: string | undefined,
  options: PrintOptions,
  io: Io,
): Promise<ExitStatus> {
  const project = new Projects(io.cwd).of(resolve(io.cwd, folder ?? '.'));
  const { edition, faults } = project.edition();
  if (edition === null && faults === null) {
    throw new Refusal(
      `there is no edition.yaml in ${project.root}`,
      'a booklet needs one, with at least `gaugeleaf-edition: 1` and `title:`',
    );
  }
  const blocks = faults === null ? [] : stoppers(faults.findings, null);
  const reports =
    faults === null || blocks.length === 0
      ? []
      : [{ file: faults.file, findings: placeFindings(blocks, faults.lines) }];
  if (edition === null) {
    tellStops(reports, 1, io);
    return 1;
  }
  const paths = inOrder(project.sheets(), edition.sheets);
  if (paths.length === 0) throw new Refusal(`the project ${project.root} has no sheets to print`);
  const progress = startProgress(io);
  io.expectLongWork?.();
  const store =
    options.cache === false
      ? null
      : partFolder(join(browserCache(io.env, process.platform), 'parts'));
  const sheets: Candidate[] = [];
  for (const [index, path] of paths.entries()) {
    progress.show(`reading ${index + 1} of ${paths.length} sheets`);
    const found = candidate(project, path, io, store);
    if (found === null) return 2;
    sheets.push(found);
  }
  const stopped = sheets.filter((sheet) => sheet.stops.length > 0);
  const proof = options.proof === true;
  if ((reports.length > 0 || stopped.length > 0) && !proof) {
    progress.clear();
    tellStops([...reports, ...stopped.map(stopReport)], sheets.length, io);
    return 1;
  }
  const { printBooklet } = await import('../../press/index.ts');
  const printed = await printBooklet({
    sheets,
    edition: edition.facts,
    orderGraphs: edition.orderGraphs,
    paper: options.paper ?? edition.paper ?? 'half-letter',
    templates: readTemplates(project.root),
    picture: pictureSource(project, sheets),
    browser: await browserFor(options, io, progress),
    draft: proof,
    flate,
    store,
    onProgress: (message) => progress.show(message),
  });
  store?.tidy();
  progress.clear();
  const path = outPath(options.out, `booklet${proof ? '-proof' : ''}.pdf`, project, io);
  return deliver(printed, path, proof, project.show, io) ? 0 : 1;
}

/** The sheets that the edition lists, as it lists them; all, in byte order, where it lists none. */
function inOrder(paths: readonly string[], order: readonly string[] | null): readonly string[] {
  if (order === null) return paths;
  const byName = new Map(paths.map((path) => [basename(path).replace(/\.md$/i, ''), path]));
  const listed = [...new Set(order)].map((name) => byName.get(name));
  return listed.filter((path) => path !== undefined);
}
