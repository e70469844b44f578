import { resolve } from 'node:path';
import { comparedRows, concordanceOf } from '../../concordance/index.ts';
import { projectSheets } from '../../project/edition-source.ts';
import { writeWhole } from '../../project/write-whole.ts';
import { concordanceCsv, concordanceText, signsInWords } from '../../report/concordance/index.ts';
import type { Io } from '../io.ts';
import { candidate } from '../printing.ts';
import type { ExitStatus } from '../run.ts';
import { Projects, sheetNamed, targetsOf } from '../targets.ts';

export interface SourcesOptions {
  readonly format: 'text' | 'csv';
  readonly out?: string;
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
  const sheets = sheetsOf(name, projects, io);
  if (sheets === null) return 2;
  const found = sheets.map(({ sheet, kind }) => concordanceOf(sheet, kind));
  const chosen = found.map((concordance) => ({
    ...concordance,
    rows: concordance.rows.filter((row) => options.differing !== true || row.differs),
  }));
  const text =
    options.format === 'csv'
      ? concordanceCsv(chosen)
      : inWords(chosen, options, Math.min(io.stdout.columns ?? 80, 120), name);
  if (options.out === undefined || options.out === '-') io.stdout.write(text);
  else {
    const path = resolve(io.cwd, options.out);
    writeWhole(path, text);
    io.stdout.write(`${projects.of(io.cwd).show(path)}\n`);
  }
  return 0;
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

function inWords(
  concordances: readonly ReturnType<typeof concordanceOf>[],
  { all, differing }: SourcesOptions,
  width: number,
  name: string | undefined,
): string {
  const blocks = concordances.flatMap((concordance) => {
    const rows = all === true || differing === true ? concordance.rows : comparedRows(concordance);
    return rows.length === 0 ? [] : [concordanceText(concordance, rows, width)];
  });
  if (blocks.length === 0) {
    const where = name === undefined ? 'of these sheets' : 'of the sheet';
    const what = differing === true ? 'differ on a setting' : 'speak to one setting together';
    return `No two sources ${where} ${what}.\n`;
  }
  return `${blocks.join('\n')}\n${signsInWords}\n`;
}
