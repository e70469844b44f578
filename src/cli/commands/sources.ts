import { resolve } from 'node:path';
import { concordanceOf } from '../../concordance/index.ts';
import {
  fileId,
  flate,
  Projects,
  projectSheets,
  Refusal,
  readTemplates,
  sheetNamed,
  type Target,
  targetsOf,
  writeWhole,
} from '../../project/index.ts';
import { concordanceCsv, concordancesText } from '../../report/concordance/index.ts';
import { hand, type Io } from '../io.ts';
import { outlet } from '../outlet.ts';
import {
  browserFor,
  candidate,
  deliver,
  type PrintOptions,
  stopReports,
  tellStops,
} from '../printing.ts';
import { startProgress } from '../progress.ts';
import type { ExitStatus } from '../run.ts';
import { styleStops } from '../style-stops.ts';

export interface SourcesOptions extends Pick<PrintOptions, 'paper' | 'out' | 'browser'> {
  readonly format: 'text' | 'csv';
  /** A page to print, in place of the table. */
  readonly pdf?: boolean;
  /** Only settings that sources differ on. */
  readonly differing?: boolean;
  /** Also settings that one source alone speaks to. */
  readonly all?: boolean;
}

/**
 * `gaugeleaf sources`: what each source says of each setting, for a sheet or for the edition. As text
 * the settings that several sources speak to, as CSV every statement. 2 where a sheet cannot be read.
 */
export async function sources(
  name: string | undefined,
  options: SourcesOptions,
  io: Io,
): Promise<ExitStatus> {
  const projects = new Projects(io.cwd);
  if (options.pdf === true) {
    if (name === undefined) {
      throw new Refusal(
        '--pdf prints the sources of one sheet',
        'name it: gaugeleaf sources SHEET --pdf; the booklet has the pages of all',
      );
    }
    return print(sheetNamed(name, projects, io.cwd), options, io);
  }
  const sheets = sheetsOf(name, projects, io);
  if (sheets === null) return 2;
  const found = sheets.map(({ sheet }) => concordanceOf(sheet));
  const chosen = found.map((concordance) => ({
    ...concordance,
    rows: concordance.rows.filter((row) => options.differing !== true || row.differs),
  }));
  const text =
    options.format === 'csv'
      ? concordanceCsv(chosen)
      : concordancesText(chosen, {
          differing: options.differing === true,
          all: options.all === true,
          width: Math.min(io.stdout.columns ?? 80, 120),
          whole: name === undefined,
        });
  if (options.out === undefined || options.out === '-') hand(io, text);
  else {
    const path = resolve(io.cwd, options.out);
    writeWhole(path, text, { within: path });
    io.stdout.write(`${projects.of(io.cwd).show(path)}\n`);
  }
  return 0;
}

/** Prints the page of one sheet; nothing that has an error is printed, but the table is still to be had. */
async function print(
  { project, path }: Target,
  options: SourcesOptions,
  io: Io,
): Promise<ExitStatus> {
  const found = candidate(project, path, io);
  if (found === null) return 2;
  const stops = found.findings.filter(({ severity }) => severity === 'error');
  if (stops.length > 0) {
    tellStops(
      stopReports({ ...found, stops }),
      1,
      io,
      'or take the table: the same without --pdf.',
    );
    return 1;
  }
  const { sheet } = found;
  if (await styleStops([project], io)) return 1;
  const progress = startProgress(io);
  io.expectLongWork?.();
  const press = await import('../../press/index.ts');
  const browser = await browserFor(options, io, progress);
  const edition = project.edition().edition;
  const printed = await press.printConcordance({
    sheet,
    edition: edition?.facts ?? null,
    paper: options.paper ?? edition?.cardPaper ?? 'letter',
    templates: readTemplates(project.root),
    flate,
    browser,
  });
  progress.clear();
  const file = `${fileId(path)}-sources.pdf`;
  return deliver(printed, outlet(options.out, file, project, io), false, project.show, io) ? 0 : 1;
}

function sheetsOf(name: string | undefined, projects: Projects, io: Io) {
  if (name === undefined) {
    // Told as everywhere, where the folder has no sheets.
    targetsOf([], projects, io.cwd);
    return projectSheets(projects.of(io.cwd));
  }
  const { project, path } = sheetNamed(name, projects, io.cwd);
  const found = candidate(project, path, io);
  return found === null ? null : [found];
}
