import { realpathSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { acrossChecks, type Finding, runAcross, type SheetFacts } from '../../checks/index.ts';
import {
  type Examined,
  examineFile,
  type FileFaults,
  type FileSort,
  kindFileFaults,
  type Project,
  Projects,
  Refusal,
  type Target,
  targetsOf,
} from '../../project/index.ts';
import { mendFile } from '../../project/mend/index.ts';
import {
  InheritedFindings,
  placeAcross,
  placeFindings,
  stoppers,
  stoppersAcross,
} from '../../report/index.ts';
import { checkedSheet, type KeptSheets } from '../checked-sheet.ts';
import { printerFor } from '../findings-printer.ts';
import type { Format } from '../formats.ts';
import { type Io, say } from '../io.ts';
import { startProgress } from '../progress.ts';
import type { ExitStatus } from '../run.ts';

export interface CheckOptions {
  readonly format: Format;
  readonly fix?: boolean;
  readonly all?: boolean;
  /** The state after every step in place of findings; plain text, whatever the format. */
  readonly trace?: boolean;
  /** Sheets that need not be examined again, and where to keep the others. */
  readonly kept?: KeptSheets;
}

/** Fewer sheets than this are done before any preparation would pay. */
const many = 10;

/** How long the command may keep interruptions and the progress line waiting (milliseconds). */
const breath = 40;

/**
 * `gaugeleaf check`: findings to standard output, file by file, keeping no sheet once it is done; of a
 * whole project then what lies between its sheets, from the facts that were taken of each.
 * 0 with nothing that stops the press, 1 with something, 2 where a file could not be read.
 */
export async function check(
  paths: readonly string[],
  options: CheckOptions,
  io: Io,
): Promise<ExitStatus> {
  const projects = new Projects(io.cwd);
  const { sheets, whole, others: named } = targetsOf(paths, projects, io.cwd);
  if (options.trace === true) {
    const { trace } = await import('../trace.ts');
    return trace(sheets, io);
  }
  if (sheets.length >= many) io.expectLongWork?.();
  const printer = printerFor(options.format, io, options.all === true);
  const progress = startProgress(io);
  let stopped = false;
  let refused = false;
  let files = 0;
  let others = 0;

  const told = new Set<string>();
  const addFaults = (faults: FileFaults | null): void => {
    if (faults === null || faults.findings.length === 0) return;
    told.add(faults.file);
    files += 1;
    others += 1;
    stopped ||= stoppers(faults.findings, null).length > 0;
    printer.add({ file: faults.file, findings: placeFindings(faults.findings, faults.lines) });
  };
  if (options.fix === true) {
    const { mendSources } = await import('../../project/mend/index.ts');
    for (const project of whole) {
      const moved = mendSources(project);
      if (moved === null) continue;
      const { names, sheets: count, file } = moved;
      say(
        io,
        `moved ${names.join(', ')} from ${count === 1 ? '1 sheet' : `${count} sheets`} to ${file}`,
      );
    }
  }
  for (const project of whole) addFaults(project.edition().faults);
  for (const project of projects.opened) addFaults(project.sharedSources().faults());
  for (const project of projects.opened) project.kindFaults.forEach(addFaults);
  for (const { project, path, sort } of named) {
    const inPlace = placeOf(project, path, sort);
    // Faulty kinds of the project have been told of; a named one is tried as well.
    if (sort === 'kind' && !told.has(project.show(path)))
      addFaults(kindFileFaults(path, project.show(path)));
    else if (sort !== 'kind' && inPlace === null) throw misplaced(project.show(path), sort);
    else if (sort === 'edition' && !whole.includes(project)) addFaults(project.edition().faults);
    // Kinds and sources of every project that is opened have been told of above.
    if (!told.has(project.show(path))) {
      files += 1;
      others += 1;
    }
  }
  for (const project of whole) (await project.templateFaults()).forEach(addFaults);

  const facts = new Map<Project, SheetFacts[]>(whole.map((project) => [project, []]));
  const inherited = new InheritedFindings();
  let rested = performance.now();
  for (const [index, target] of sheets.entries()) {
    if (performance.now() - rested > breath) {
      progress.show(`${index} of ${sheets.length} sheets`);
      await new Promise((resolve) => setImmediate(resolve));
      rested = performance.now();
    }
    const known = options.kept?.get(target.path);
    const checked =
      known ??
      checkedSheet(
        options.fix === true ? mendAndTell(target, io) : examineTarget(target),
        facts.has(target.project),
      );
    if (known === undefined) options.kept?.set(target.path, checked);
    if (!checked.ok) {
      refused = true;
      progress.clear();
      printer.refuse(checked.refused);
      continue;
    }
    files += 1;
    stopped ||= checked.stopped;
    for (const report of checked.reports) {
      if (report.findings.length > 0) progress.clear();
      if (report.file === checked.file) {
        inherited.told(report);
        printer.add(report);
      } else inherited.hold(report, checked);
    }
    if (checked.facts !== null) facts.get(target.project)?.push(checked.facts);
  }
  progress.clear();
  for (const report of inherited.rest()) printer.add(report);
  for (const [project, taken] of facts) {
    const found = runAcross(acrossChecks, taken, project.context(project.root));
    const status = new Map(taken.map((each) => [each.file, each.status]));
    stopped ||= stoppersAcross(found, (file) => status.get(file) ?? null).length > 0;
    for (const report of placeAcross(found)) printer.add(report);
  }
  printer.end(files, others);
  return refused ? 2 : stopped ? 1 : 0;
}

/** Whether a file is the one that its project reads: its path, or null where it lies elsewhere. */
function placeOf(project: Project, path: string, sort: FileSort): string | null {
  const folder = sort === 'kind' ? join(project.root, 'kinds') : project.root;
  const isNamed = sort === 'kind' || basename(path) === `${sort}.yaml`;
  return isNamed && realpathSync(dirname(path)) === folder ? path : null;
}

function misplaced(file: string, sort: FileSort): Refusal {
  return new Refusal(
    `${file} is read by no project`,
    `put it beside the folder of the sheets, under the name ${sort}.yaml`,
  );
}

function examineTarget(target: Target): Examined {
  return examineFile(target.project, target.path);
}

function mendAndTell(target: Target, io: Io): Examined {
  const { examined, mended } = mendFile(target.project, target.path);
  if (examined.ok && mended.length > 0) {
    const names = [...new Set(mended.map((finding: Finding) => finding.check))].sort();
    const what = mended.length === 1 ? '1 finding' : `${mended.length} findings`;
    say(io, `mended ${what} in ${examined.sheet.file} (${names.join(', ')})`);
  }
  return examined;
}
