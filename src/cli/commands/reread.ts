import { join, resolve } from 'node:path';
import {
  fileId,
  isTaken,
  type Project,
  Projects,
  Refusal,
  schemaWay,
  sheetNamed,
  writeWhole,
} from '../../project/index.ts';
import { compareReadingFile, keepReading, settleFile } from '../../project/rereading/index.ts';
import {
  type FileReport,
  faultyRecordJson,
  fileText,
  paint,
  rereadJson,
  rereadText,
  tallyLine,
} from '../../report/index.ts';
import {
  blankPages,
  isAllSame,
  namesMeasured,
  readableSources,
  readingBlank,
  tallyOf,
} from '../../rereading/index.ts';
import type { Comparison, SettledFor } from '../../rereading/model.ts';
import type { Sheet } from '../../sheet/model.ts';
import { nearestName } from '../../text/index.ts';
import { tellRefused } from '../findings-printer.ts';
import { hand, type Io, say, usesColor, widthOf } from '../io.ts';
import { blankPlace, trusted } from '../outlet.ts';
import { candidate } from '../printing.ts';
import type { ExitStatus } from '../run.ts';

export interface RereadOptions {
  readonly source?: string;
  readonly page?: string;
  readonly by?: string;
  readonly order?: 'paper' | 'shuffled';
  readonly out?: string;
  readonly json?: boolean;
  readonly settle?: string;
  readonly why?: string;
  readonly value?: string;
}

/**
 * `gaugeleaf reread`: of a sheet a blank for each of its sources that is cited; of a file that came back
 * the comparison. 0 where all is the same or settled, 1 where something differs or was not read, 2 where
 * it cannot be done.
 */
export async function reread(name: string, options: RereadOptions, io: Io): Promise<ExitStatus> {
  const isReading = /\.ya?ml$/i.test(name);
  refuseMixed(name, isReading, options);
  return isReading ? compare(name, options, io) : blank(name, options, io);
}

function refuseMixed(name: string, isReading: boolean, options: RereadOptions): void {
  const forBlank = (['source', 'page', 'order', 'out'] as const).find(
    (key) => options[key] !== undefined,
  );
  if (isReading && forBlank !== undefined) {
    throw new Refusal(`--${forBlank} is for a blank`, `name the sheet in place of ${name}`);
  }
  const forFile = (['settle', 'why', 'value', 'json'] as const).find(
    (key) => options[key] !== undefined,
  );
  if (!isReading && forFile !== undefined) {
    throw new Refusal(
      `--${forFile} is for a second reading, and ${name} is none: its name does not end in .yaml`,
      'a second reading lies beside the sheets, such as sheets/readings/orlo-t71-wexcombe-six.m48.yaml',
    );
  }
  const alone = (['why', 'value'] as const).find((key) => options[key] !== undefined);
  if (options.settle === undefined && alone !== undefined) {
    throw new Refusal(
      `--${alone} belongs to --settle`,
      'name what is settled: --settle float-level=first',
    );
  }
  if (isReading && options.settle === undefined && options.by !== undefined) {
    throw new Refusal('--by is for a blank or for --settle', `write the name in ${name} itself`);
  }
}

function compare(name: string, options: RereadOptions, io: Io): ExitStatus {
  const path = resolve(io.cwd, name);
  const project = new Projects(io.cwd).of(path);
  const outcome = compareReadingFile(project, path);
  if ('refused' in outcome) {
    tellRefused(outcome.refused, io);
    return 2;
  }
  if ('report' in outcome) {
    if (options.json === true) io.stdout.write(faultyRecordJson(outcome.report));
    else {
      tellFindings(outcome.report, io);
      say(io, 'Nothing was compared. Mend the errors first.');
    }
    return 2;
  }
  if (options.settle !== undefined) {
    const settling = { ...settlingOf(options.settle, options), third: options.value ?? null };
    const { settled, compared, fresh, changed } = settleFile(project, outcome, settling);
    const { sheet } = outcome.examined;
    if (changed)
      say(io, `${sheet.file}: ${settled.setting} is ${options.value ?? settled.second} now`);
    for (const { check, message } of fresh) say(io, `now ${check}: ${message}`);
    if (fresh.length > 0) say(io, `gaugeleaf check ${sheet.file} shows them with their cures`);
    return told(project, outcome.file.path, compared, options, io);
  }
  keepReading(outcome.file, outcome.compared, []);
  return told(project, outcome.file.path, outcome.compared, options, io);
}

function told(
  project: Project,
  path: string,
  compared: Comparison,
  options: RereadOptions,
  io: Io,
): ExitStatus {
  const ink = paint(usesColor(io, io.stdout));
  io.stdout.write(
    options.json === true
      ? rereadJson(project.show(path), compared)
      : options.settle === undefined
        ? rereadText(compared, ink)
        : `${tallyLine(compared)}\n`,
  );
  return isAllSame(tallyOf(compared)) ? 0 : 1;
}

function settlingOf(
  written: string,
  { by, why, value }: RereadOptions,
): { name: string; for: SettledFor; by: string; why: string } {
  const at = written.lastIndexOf('=');
  const [name, word] = [
    written.slice(0, at).trim(),
    written
      .slice(at + 1)
      .trim()
      .toLowerCase(),
  ];
  const words: Readonly<Record<string, SettledFor>> = {
    first: 'first',
    second: 'second',
    both: 'neither',
    neither: 'neither',
  };
  const side = at < 0 ? undefined : words[word];
  if (side === undefined || name === '') {
    throw new Refusal(
      `--settle ${written} does not say who is right`,
      'write the setting and `first` (the sheet), `second` (the second reading) or `both` (both are wrong): --settle float-level=second',
    );
  }
  if (side === 'neither' && value === undefined) {
    throw new Refusal(
      `--settle ${written} needs the figure that the page does print`,
      'add it: --value "7/32 in"',
    );
  }
  if (side !== 'neither' && value !== undefined) {
    throw new Refusal(
      '--value is for `both`, where both are wrong',
      'leave it out, or write =both',
    );
  }
  if (!by?.trim() || !why?.trim()) {
    throw new Refusal(
      `--settle needs ${by?.trim() ? 'a reason' : 'a name'}: whoever reads it later wants to know who and why`,
      'add --by "H. Marlow" --why "read again under a lens"',
    );
  }
  return { name, for: side, by: by.trim(), why: why.trim() };
}

function tellFindings(report: FileReport, io: Io): void {
  const options = { color: usesColor(io, io.stderr), width: widthOf(io.stderr) };
  io.stderr.write(`${fileText(report, options)}\n`);
}

function blank(name: string, options: RereadOptions, io: Io): ExitStatus {
  const projects = new Projects(io.cwd);
  const { project, path } = sheetNamed(name, projects, io.cwd);
  const read = candidate(project, path, io);
  if (read === null) return 2;
  const { sheet } = read;
  const sources = sourcesOf(sheet, options);
  const page = options.page ?? null;
  const seed = options.order === 'shuffled' ? Math.floor(Math.random() * 2 ** 32) : null;
  const id = fileId(path);
  const asked = sources.filter((source) => blankPages(sheet, source, page, null).length > 0);
  if (asked.length === 0) {
    const cited = sources.flatMap((source) => blankPages(sheet, source, null, null));
    throw new Refusal(
      `${sheet.file} cites nothing on ${page ?? 'any page'}`,
      `pages that it cites: ${[...new Set(cited.map((each) => each.page))].join(', ')}`,
    );
  }
  if (asked.length > 1 && options.out !== undefined) {
    throw new Refusal(
      `${sheet.file} cites ${asked.join(', ')}, and --out is one file`,
      `name one of them: --source ${asked[0]}`,
    );
  }
  for (const source of asked) {
    const out = blankPath(options.out, `${id}.${source}`, project.root, io);
    const by = options.by?.trim() || null;
    const schema = schemaWay('reading', out, project.root);
    const text = readingBlank({ sheet, id, source, page, by, seed, schema });
    if (out === null) {
      hand(io, text);
      continue;
    }
    writeWhole(out, text, { within: trusted(options.out, project, io) });
    io.stdout.write(`${project.show(out)}\n`);
  }
  if (options.out !== '-') {
    say(
      io,
      'Now read the pages without the sheet, and fill in: gaugeleaf reread and the file compares.',
    );
  }
  return 0;
}

/** The sources that are to be read: the one that is named, or all that are cited and can be. */
function sourcesOf(sheet: Sheet, { source }: RereadOptions): readonly string[] {
  const readable = [...readableSources(sheet).keys()];
  if (source === undefined) {
    if (readable.length > 0) return readable;
    throw new Refusal(
      `${sheet.file} cites no paper that could be read a second time`,
      'write in `from:` of each setting where it stands, such as m48 p. 31',
    );
  }
  const found = readable.find((each) => each.toLowerCase() === source.trim().toLowerCase());
  if (found !== undefined) return [found];
  if (namesMeasured(source, sheet)) {
    throw new Refusal(
      `${source} is units that somebody measured: there is no page to read again`,
      readable.length > 0 ? `name one of ${readable.join(', ')}` : null,
    );
  }
  const near = nearestName(source, readable);
  throw new Refusal(
    `${sheet.file} cites no source ${source}`,
    near === null ? `name one of ${readable.join(', ')}` : `did you mean ${near}?`,
  );
}

/** Where a blank goes: `sheets/readings/` of the project, with a number behind where one is there. */
function blankPath(out: string | undefined, stem: string, root: string, io: Io): string | null {
  const place = blankPlace(out, root, join('sheets', 'readings'), io);
  if (place === null) return null;
  if ('folder' in place) return free(place.folder, stem);
  if (!isTaken(place.path)) return place.path;
  throw new Refusal(
    `${out} is there already, and a blank never replaces a file`,
    'give another name with --out',
  );
}

function free(folder: string, stem: string): string {
  for (let count = 1; ; count++) {
    const path = join(folder, `${stem}${count === 1 ? '' : `-${count}`}.yaml`);
    if (!isTaken(path)) return path;
  }
}
