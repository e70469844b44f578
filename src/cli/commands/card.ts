import { basename } from 'node:path';
import type { Browser, CardReadings, Templates } from '../../press/index.ts';
import { Refusal } from '../../project/refusal.ts';
import { isFolder } from '../../project/root.ts';
import { readTemplates } from '../../project/templates.ts';
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
import { Projects, sheetNamed, type Target } from '../targets.ts';

/** One card to print. */
export interface CardJob {
  readonly target: Target;
  readonly card: Candidate;
  /** The file's name without its ending; the sheet's own where it is left out. */
  readonly name?: string;
  /** A bench record to fill it in with. */
  readonly readings?: CardReadings;
}

/**
 * `gaugeleaf card`: one leaf for each sheet, in one browser after the other. 1 where findings, or a
 * card longer than its leaf, stop the press; then nothing at all is printed.
 */
export async function card(
  names: readonly string[],
  options: PrintOptions,
  io: Io,
): Promise<ExitStatus> {
  const projects = new Projects(io.cwd);
  const targets = names.map((name) => sheetNamed(name, projects, io.cwd));
  if (targets.length > 1 && options.out !== undefined && !isFolderName(options.out, io)) {
    throw new Refusal(
      `${targets.length} cards cannot go to one file, ${options.out}`,
      'give a folder, with a slash at its end: --out cards/',
    );
  }
  const jobs: CardJob[] = [];
  for (const target of targets) {
    const found = candidate(target.project, target.path, io);
    if (found === null) return 2;
    jobs.push({ target, card: found });
  }
  return printCards(jobs, options, io);
}

/**
 * Prints cards in one browser, one after the other. 1 where findings, or a card longer than its
 * leaf, stop the press; where findings do, nothing at all is printed.
 */
export async function printCards(
  jobs: readonly CardJob[],
  options: PrintOptions,
  io: Io,
): Promise<ExitStatus> {
  const stopped = jobs.filter((job) => job.card.stops.length > 0);
  if (stopped.length > 0 && options.proof !== true) {
    tellStops(
      stopped.map((job) => stopReport(job.card)),
      jobs.length,
      io,
    );
    return 1;
  }
  return printAll(jobs, options, io);
}

function isFolderName(out: string, io: Io): boolean {
  return out !== '-' && (/[\\/]$/.test(out) || isFolder(outFolder(out, io)));
}

function outFolder(out: string, io: Io): string {
  return out.startsWith('/') ? out : `${io.cwd}/${out}`;
}

async function printAll(
  jobs: readonly CardJob[],
  options: PrintOptions,
  io: Io,
): Promise<ExitStatus> {
  const progress = startProgress(io);
  io.expectLongWork?.();
  const { printCard } = await import('../../press/index.ts');
  const browser: Browser = await browserFor(options, io, progress);
  const templates = new Map<string, Templates>();
  let status: ExitStatus = 0;
  const proof = options.proof === true;
  for (const { target, card: job, name: stem, readings } of jobs) {
    const { project } = target;
    const edition = project.edition().edition;
    const found = templates.get(project.root) ?? readTemplates(project.root);
    templates.set(project.root, found);
    const printed = await printCard({
      sheet: job.sheet,
      kind: job.kind,
      findings: job.findings,
      edition: edition?.facts ?? null,
      readings: readings ?? null,
      paper: options.paper ?? edition?.cardPaper ?? 'letter',
      templates: found,
      picture: pictureSource(project, [job]),
      browser,
      draft: proof,
      onProgress: (message) => progress.show(message),
    });
    progress.clear();
    const named = stem ?? basename(job.path).replace(/\.md$/i, '');
    const name = `${named}-card${proof ? '-proof' : ''}.pdf`;
    const path = outPath(options.out, name, project, io);
    if (!deliver(printed, path, proof, project.show, io)) status = 1;
  }
  return status;
}
