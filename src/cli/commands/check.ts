import { realpathSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Finding } from '../../checks/index.ts';
import {
  type Checked,
  type FileFaults,
  type FileSort,
  kindFileFaults,
  type Project,
  Projects,
  partFolder,
  Refusal,
  type Target,
  targetsOf,
  toldOf,
  userCache,
} from '../../project/index.ts';
import { mendFile } from '../../project/mend/index.ts';
import { InheritedFindings, placeAcross, placeFindings, stoppers } from '../../report/index.ts';
import { AcrossSheets } from '../check-across.ts';
import { breath, checkInOrder, type Keeping, type KeptSheets, many } from '../check-in-order.ts';
import { printerFor } from '../findings-printer.ts';
import type { Format } from '../formats.ts';
import { type Io, say } from '../io.ts';
import { startProgress } from '../progress.ts';
import type { ExitStatus } from '../run.ts';

export interface CheckOptions {
  readonly format: Format;
  readonly fix?: boolean;
  readonly all?: boolean;
  /** Findings alone, and no word on how many. */
  readonly quiet?: boolean;
  /** False checks every sheet anew. */
  readonly cache?: boolean;
  /** The state after every step in place of findings; plain text, whatever the format. */
  readonly trace?: boolean;
  /** Sheets that need not be examined again, and where to keep the others. */
  readonly kept?: KeptSheets;
}

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
  const printer = printerFor(options.format, io, options);
  const progress = startProgress(io);
  let stopped = false;
  let refused = false;
  let files = 0;
  let others = 0;
  let read = { figures: 0, twice: 0 };

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
  for (const project of whole) addFaults(project.editionFaults());
  for (const project of projects.opened) addFaults(project.sharedSources().faults());
  for (const project of projects.opened) project.kindFaults.forEach(addFaults);
  for (const { project, path, sort } of named) {
    const inPlace = placeOf(project, path, sort);
    // Faulty kinds of the project have been told of; a named one is tried as well.
    if (sort === 'kind' && !told.has(project.show(path)))
      addFaults(kindFileFaults(project.root, path, project.show(path)));
    else if (sort !== 'kind' && inPlace === null) throw misplaced(project.show(path), sort);
    else if (sort === 'edition' && !whole.includes(project)) addFaults(project.editionFaults());
    // Kinds and sources of every project that is opened have been told of above.
    if (!told.has(project.show(path))) {
      files += 1;
      others += 1;
    }
  }
  for (const project of whole) (await project.templateFaults()).forEach(addFaults);
  for (const project of whole) project.readings()?.faults().forEach(addFaults);

  const keeping = options.cache === false || io.remembers !== true ? null : keepingFor(io);
  const show = (done: number) => progress.show(`${done} of ${sheets.length} sheets`);
  const across = new Map(whole.map((project) => [project, new AcrossSheets(project)]));
  const inherited = new InheritedFindings();
  const all =
    options.fix === true
      ? mendInOrder(sheets, io, show)
      : checkInOrder(sheets, { keeping, kept: options.kept ?? null }, io, show);
  let index = 0;
  for await (const checked of all) {
    const target = sheets[index++];
    if (!checked.ok) {
      refused = true;
      progress.clear();
      printer.refuse(checked.refused);
      continue;
    }
    files += 1;
    const { file, reports, stops, read: count } = checked.sheet;
    if (count !== null)
      read = { figures: read.figures + count.figures, twice: read.twice + count.twice };
    stopped ||= stops;
    if (reports.some(({ findings }) => findings.length > 0)) progress.clear();
    for (const report of reports) {
      if (report.file === file) {
        inherited.told(report);
        printer.add(report);
      } else inherited.hold(report, file);
    }
    if (target !== undefined) across.get(target.project)?.add(checked.sheet);
  }
  progress.clear();
  for (const report of inherited.rest()) printer.add(report);
  for (const sheetsOfOne of across.values()) {
    const { found, stops } = sheetsOfOne.check(keeping?.store ?? null);
    stopped ||= stops;
    for (const report of placeAcross(found)) printer.add(report);
  }
  keeping?.store.tidyAtTimes();
  printer.end(files, others, read);
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

/** Where the press keeps its own. */
function keepingFor(io: Io): Keeping {
  const folder = join(userCache(io.env, process.platform), 'parts');
  return { store: partFolder(folder), folder };
}

/** Mends sheet by sheet, and checks what came of it. */
async function* mendInOrder(
  targets: readonly Target[],
  io: Io,
  progress: (done: number) => void,
): AsyncGenerator<Checked> {
  if (targets.length >= many) io.expectLongWork?.();
  let rested = performance.now();
  for (const [index, target] of targets.entries()) {
    if (performance.now() - rested > breath) {
      progress(index);
      await new Promise((resolve) => setImmediate(resolve));
      rested = performance.now();
    }
    const { examined, mended } = mendFile(target.project, target.path);
    if (!examined.ok) {
      yield examined;
      continue;
    }
    if (mended.length > 0) {
      const names = [...new Set(mended.map((finding: Finding) => finding.check))].sort();
      const what = mended.length === 1 ? '1 finding' : `${mended.length} findings`;
      say(io, `mended ${what} in ${examined.sheet.file} (${names.join(', ')})`);
    }
    yield {
      ok: true,
      sheet: { ...toldOf(examined, target.project.context(examined.path)), digest: null },
    };
  }
}
