import type { Finding } from '../checks/index.ts';
import type {
  Browser,
  Paper,
  PartStore,
  PictureSource,
  Printed,
  Proofs,
  SheetToPrint,
} from '../press/index.ts';
import {
  type Examined,
  examineFile,
  type Project,
  pictureData,
  writeWhole,
} from '../project/index.ts';
import {
  countFindings,
  type FileReport,
  fileText,
  placeSheet,
  stoppers,
  summaryText,
} from '../report/index.ts';
import { provedFigures } from '../rereading/index.ts';
import { tellRefused } from './findings-printer.ts';
import { type Io, say, usesColor, widthOf } from './io.ts';
import type { Outlet } from './outlet.ts';
import type { Progress } from './progress.ts';

export interface PrintOptions {
  readonly paper?: Paper;
  readonly out?: string;
  readonly proof?: boolean;
  readonly browser?: string;
  /** False prints every page anew. */
  readonly cache?: boolean;
}

/** A sheet ready for the press, and the findings that keep it from it. */
export interface Candidate extends SheetToPrint {
  /** Absolute, links resolved. */
  readonly path: string;
  readonly stops: readonly Finding[];
}

/** Reads and checks a sheet for printing; null, with the reason told, where it cannot be read. */
export function candidate(
  project: Project,
  path: string,
  io: Io,
  store: PartStore | null = null,
): Candidate | null {
  const examined = examineFile(project, path, store);
  if (!examined.ok) {
    tellRefused(examined.refused, io);
    return null;
  }
  return { ...candidateFrom(examined), proofs: proofsOf(project, examined) };
}

/** How far its figures are proved, where the project reads twice; of several of a setting, that of the figure itself. */
function proofsOf(
  project: Project,
  { sheet, path }: Pick<Examined & { readonly ok: true }, 'sheet' | 'path'>,
): Proofs | null {
  const { readings } = project.context(path);
  if (!readings) return null;
  const figures = provedFigures(sheet, readings).filter(({ statement }) => statement === 0);
  return new Map(figures.map(({ setting, proof }) => [setting.name.value, proof]));
}

/** What was read and checked already, as what goes to the press. */
export function candidateFrom({
  path,
  sheet,
  findings,
  digest = null,
}: Examined & { readonly ok: true }): Candidate {
  return {
    path,
    sheet,
    findings,
    digest,
    stops: stoppers(findings, sheet.status?.value ?? null),
  };
}

/** Shows on standard error what keeps sheets from the press, and how to go on. */
export function tellStops(
  reports: readonly FileReport[],
  sheets: number,
  io: Io,
  otherwise = 'or print a proof with --proof: DRAFT on every page.',
): void {
  const options = { color: usesColor(io, io.stderr), width: widthOf(io.stderr) };
  for (const report of reports) io.stderr.write(`${fileText(report, options)}\n`);
  io.stderr.write(summaryText(countFindings(reports), sheets, options));
  say(io, `Nothing was printed. Mend these, ${otherwise}`);
}

/** The findings that stop a candidate, as reports of the files they stand in. */
export function stopReports({ sheet, stops }: Candidate): readonly FileReport[] {
  return placeSheet(sheet, stops).filter(({ findings }) => findings.length > 0);
}

/** Pictures as data, found from the sheet that shows them. */
export function pictureSource(project: Project, candidates: readonly Candidate[]): PictureSource {
  const paths = new Map(candidates.map(({ sheet, path }) => [sheet.file, path]));
  return (url, sheetFile) => {
    const path = paths.get(sheetFile);
    return path === undefined ? null : pictureData(project.root, path, url);
  };
}

/** Why a browser is started without its sandbox. */
function whyUnsandboxed(io: Io): string {
  return io.env.GAUGELEAF_NO_SANDBOX === '1'
    ? 'as GAUGELEAF_NO_SANDBOX says'
    : 'which it refuses to have when root starts it';
}

/** Finds the browser to print with, telling what takes long. Fails with `PressStopped`. */
export async function browserFor(
  options: PrintOptions,
  io: Io,
  progress: Progress,
): Promise<Browser> {
  const { findBrowser } = await import('../project/browser/index.ts');
  const browser = await findBrowser(options.browser, {
    env: io.env,
    onProgress: (message) => progress.show(message),
  });
  // For people who watch: a log of every print would repeat it without end.
  if (io.stderr.isTTY === true && browser.args.includes('--no-sandbox')) {
    say(
      io,
      `note: the browser prints without its own sandbox, ${whyUnsandboxed(io)}; pages stay shut in from network and files.`,
    );
  }
  return browser;
}

/**
 * Writes a print, whole, and says where. Returns false, having written nothing, where the print has
 * faults that keep it from being used and is no proof.
 */
export function deliver(
  printed: Printed,
  { path, within, style }: Outlet,
  proof: boolean,
  show: (path: string) => string,
  io: Io,
): boolean {
  for (const remark of printed.remarks) say(io, `note: ${remark}`);
  for (const problem of printed.problems) say(io, `gaugeleaf: ${problem}`);
  if (printed.problems.length > 0 && style !== null) {
    say(io, `           ${style} is laid over all of it: look there first`);
  }
  if (printed.problems.length > 0 && !proof) {
    say(io, 'Nothing was written. Mend this, or print a proof with --proof.');
    return false;
  }
  if (path === null) {
    io.stdout.write(printed.pdf);
    return true;
  }
  writeWhole(path, printed.pdf, { within });
  const pages = printed.pages === 1 ? '1 page' : `${printed.pages} pages`;
  io.stdout.write(`${show(path)}\n`);
  say(io, `${pages}${proof ? ', a proof with DRAFT across every page' : ''}`);
  return true;
}
