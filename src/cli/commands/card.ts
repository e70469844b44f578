import type {
  Browser,
  CardOrder,
  CardReadings,
  Printed,
  Punch,
  Templates,
} from '../../press/index.ts';
import {
  fileId,
  flate,
  isFolder,
  namedKind,
  openProject,
  type Project,
  Projects,
  projectSheets,
  Refusal,
  readTemplates,
  sheetNamed,
  type Target,
} from '../../project/index.ts';
import type { Sheet } from '../../sheet/model.ts';
import type { Io } from '../io.ts';
import { outlet } from '../outlet.ts';
import {
  browserFor,
  type Candidate,
  candidate,
  deliver,
  type PrintOptions,
  pictureSource,
  stopReports,
  tellStops,
} from '../printing.ts';
import { startProgress } from '../progress.ts';
import type { ExitStatus } from '../run.ts';
import { styleStops } from '../style-stops.ts';

export interface CardPrintOptions extends PrintOptions {
  readonly punch?: Punch;
  readonly trimMarks?: boolean;
  /** A browser that was found already. */
  readonly found?: Browser;
  readonly all?: boolean;
  readonly kind?: string;
}

/** One card to print. */
export interface CardJob {
  readonly target: Target;
  readonly card: Candidate;
  /** The file's name without its ending; the sheet's own where it is left out. */
  readonly name?: string;
  /** A bench record to fill it in with. */
  readonly readings?: CardReadings;
}

/** `gaugeleaf card`: a card for each sheet; see `printCards`. */
export async function card(
  names: readonly string[],
  options: CardPrintOptions,
  io: Io,
): Promise<ExitStatus> {
  const projects = new Projects(io.cwd);
  const targets = namesOf(names, options, io).map((name) => sheetNamed(name, projects, io.cwd));
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

/** The sheets that are named, or those of the edition that are of a kind; all of them for `--all`. */
function namesOf(
  names: readonly string[],
  { all, kind }: CardPrintOptions,
  io: Io,
): readonly string[] {
  const asked = [
    ...(names.length > 0 ? ['sheets by name'] : []),
    ...(all === true ? ['--all'] : []),
    ...(kind !== undefined ? ['--kind'] : []),
  ];
  if (asked.length === 0) {
    throw new Refusal('no sheet is named', 'name one, or print those of the edition with --all');
  }
  if (asked.length > 1) {
    throw new Refusal(
      `${asked.join(' and ')} cannot be had together`,
      'name the sheets, or ask for all of the edition or for those of one kind',
    );
  }
  if (names.length > 0) return names;
  const project = openProject(io.cwd, io.cwd);
  const wanted = kind === undefined ? null : namedKind(kind, project);
  const listed =
    project.edition().edition === null ? projectSheets(project) : editionSheets(project);
  const sheets = listed.filter(({ sheet }) => wanted === null || sheet.kind?.name === wanted.name);
  if (sheets.length === 0) {
    throw new Refusal(
      wanted === null
        ? `the project ${project.root} has no sheets to print`
        : `the edition has no sheet of the kind ${wanted.name}`,
    );
  }
  return sheets.map(({ sheet }) => fileId(sheet.file));
}

/**
 * Prints cards, all in one browser. 1 where findings stop the press, and then nothing at all is
 * printed; 1 too where a card has a fault of its own, and then it is held back alone.
 */
export async function printCards(
  jobs: readonly CardJob[],
  options: CardPrintOptions,
  io: Io,
): Promise<ExitStatus> {
  const stopped = jobs.filter((job) => job.card.stops.length > 0);
  if (stopped.length > 0 && options.proof !== true) {
    tellStops(
      stopped.flatMap((job) => stopReports(job.card)),
      jobs.length,
      io,
    );
    return 1;
  }
  if (
    await styleStops(
      jobs.map(({ target }) => target.project),
      io,
    )
  )
    return 1;
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
  options: CardPrintOptions,
  io: Io,
): Promise<ExitStatus> {
  const progress = startProgress(io);
  io.expectLongWork?.();
  const press = await import('../../press/index.ts');
  const browser = options.found ?? (await browserFor(options, io, progress));
  const templates = new Map<string, Templates>();
  const editions = new Map<string, readonly EditionSheet[]>();
  const proof = options.proof === true;
  const orders = jobs.map((job) => {
    const { root } = job.target.project;
    const found = templates.get(root) ?? readTemplates(root);
    templates.set(root, found);
    const sheets = editions.get(root) ?? editionSheets(job.target.project);
    editions.set(root, sheets);
    return cardOrder(job, options, { templates: found, sheets, browser }, (message) =>
      progress.show(message),
    );
  });
  const printed = await press.printCards(orders);
  progress.clear();
  let status: ExitStatus = 0;
  for (const [index, { target, card: job, name: stem }] of jobs.entries()) {
    const print = printed[index];
    if (print === undefined) continue;
    const named = stem ?? fileId(job.path);
    const name = `${named}-card${proof ? '-proof' : ''}.pdf`;
    const place = outlet(options.out, name, target.project, io);
    if (!deliver(bounded(print), place, proof, target.project.show, io)) status = 1;
  }
  return status;
}

/** More pages than the longest sheet takes on the smallest paper; a style of the club's may make thousands. */
const mostPages = 40;

function bounded(print: Printed): Printed {
  if (print.pages <= mostPages) return print;
  const problem = `A card of ${print.pages} pages is none: at most ${mostPages} are printed.`;
  return { ...print, problems: [...print.problems, problem] };
}

type EditionSheet = { readonly sheet: Sheet };

/** The sheets that the edition lists, so that a card takes the gauges that the booklet gathers; none without one. */
function editionSheets(project: Project): readonly EditionSheet[] {
  const { edition } = project.edition();
  if (edition === null) return [];
  const listed = edition.sheets;
  return projectSheets(project).filter(
    ({ sheet }) => listed === null || listed.includes(fileId(sheet.file)),
  );
}

function cardOrder(
  { target: { project }, card: job, readings }: CardJob,
  options: CardPrintOptions,
  {
    templates,
    sheets,
    browser,
  }: {
    readonly templates: Templates;
    readonly sheets: readonly EditionSheet[];
    readonly browser: Browser;
  },
  onProgress: (message: string) => void,
): CardOrder {
  const edition = project.edition().edition;
  return {
    sheet: job.sheet,
    findings: job.findings,
    proofs: job.proofs ?? null,
    edition: edition?.facts ?? null,
    sheets: sheets.some(({ sheet }) => sheet.file === job.sheet.file) ? sheets : [...sheets, job],
    readings: readings ?? null,
    paper: options.paper ?? edition?.cardPaper ?? 'letter',
    templates,
    picture: pictureSource(project, [job]),
    flate,
    browser,
    draft: options.proof === true,
    marks: { punch: options.punch ?? null, trim: options.trimMarks === true },
    onProgress,
  };
}
