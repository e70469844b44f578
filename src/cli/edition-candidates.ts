import type { PartStore } from '../press/index.ts';
import { type Edition, fileId, type Project, Refusal } from '../project/index.ts';
import { placeFindings, stoppers } from '../report/index.ts';
import { nearestName } from '../text/index.ts';
import type { Io } from './io.ts';
import { type Candidate, candidate, stopReports, tellStops } from './printing.ts';
import { type Progress, startProgress } from './progress.ts';
import type { ExitStatus } from './run.ts';
import { styleStops } from './style-stops.ts';

/** An edition that may go to the press, with its sheets in its own order. */
export interface EditionCandidates {
  readonly edition: Edition;
  readonly sheets: readonly Candidate[];
  /** Still running: whoever goes on takes its line away at the end. */
  readonly progress: Progress;
}

/**
 * The edition of a project and all of its sheets, read and checked for printing `what`; or the exit
 * status where it stops here, with the reason told. A proof is printed in spite of findings. Fails
 * with `Refusal` where there is no edition, or no sheet.
 */
export async function editionCandidates(
  project: Project,
  options: {
    readonly what: string;
    readonly proof: boolean;
    readonly store: PartStore | null;
    /** Names of the sheets that are wanted; all, if absent. */
    readonly only?: readonly string[] | undefined;
  },
  io: Io,
): Promise<EditionCandidates | ExitStatus> {
  const { edition, faults } = project.edition();
  if (edition === null && faults === null) {
    throw new Refusal(
      `there is no edition.yaml in ${project.root}`,
      `${options.what} needs one, with at least \`gaugeleaf-edition: 1\` and \`title:\``,
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
  if (await styleStops([project], io)) return 1;
  const paths = wanted(inOrder(project.sheets(), edition.sheets), options.only);
  if (paths.length === 0) throw new Refusal(`the project ${project.root} has no sheets to print`);
  const progress = startProgress(io);
  io.expectLongWork?.();
  const sheets: Candidate[] = [];
  for (const [index, path] of paths.entries()) {
    progress.show(`reading ${index + 1} of ${paths.length} sheets`);
    const found = candidate(project, path, io, options.store);
    if (found === null) return 2;
    sheets.push(found);
  }
  const stopped = sheets.filter((sheet) => sheet.stops.length > 0);
  if ((reports.length > 0 || stopped.length > 0) && !options.proof) {
    progress.clear();
    tellStops([...reports, ...stopped.flatMap(stopReports)], sheets.length, io);
    return 1;
  }
  return { edition, sheets, progress };
}

/** Those of the sheets that are asked for. Fails with `Refusal` where the edition has none of that name. */
function wanted(paths: readonly string[], only: readonly string[] | undefined): readonly string[] {
  if (only === undefined) return paths;
  const asked = new Set(only.map(fileId));
  const names = paths.map(fileId);
  for (const name of asked) {
    if (names.includes(name)) continue;
    const near = nearestName(name, names);
    throw new Refusal(
      `the edition has no sheet ${name}`,
      near === null ? `name one of ${names.join(', ')}` : `perhaps ${near} is meant`,
    );
  }
  return paths.filter((path) => asked.has(fileId(path)));
}

/** The sheets that the edition lists, as it lists them; all, in byte order, where it lists none. */
function inOrder(paths: readonly string[], order: readonly string[] | null): readonly string[] {
  if (order === null) return paths;
  const byName = new Map(paths.map((path) => [fileId(path), path]));
  const listed = [...new Set(order)].map((name) => byName.get(name));
  return listed.filter((path) => path !== undefined);
}
