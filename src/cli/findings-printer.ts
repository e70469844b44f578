import { acrossChecks, allChecks } from '../checks/index.ts';
import { packageVersion, projectChecks } from '../project/index.ts';
import {
  addCounts,
  type Counts,
  countFindings,
  type FileReport,
  fileText,
  findingJson,
  jsonObject,
  type Refused,
  summaryText,
  toAnnotations,
  toSarif,
} from '../report/index.ts';
import type { ReadCount } from '../rereading/index.ts';
import type { Format } from './formats.ts';
import { type Io, say, usesColor, widthOf } from './io.ts';

/** Takes one file's report after the other, and writes what its format has to say. */
export interface Printer {
  add(report: FileReport): void;
  refuse(refused: Refused): void;
  /** Writes what comes last: `files` were read, of which `others` are no sheets; figures read twice, of none for none. */
  end(files: number, others: number, read: ReadCount): void;
}

const none: Counts = countFindings([]);

/** What of the findings is written as text. */
export interface Shown {
  /** Accepted ones too, with the reasons. */
  readonly all?: boolean;
  /** Findings alone, and no word on how many. */
  readonly quiet?: boolean;
}

/**
 * A printer that keeps no more than its format needs: text and annotations are written as they
 * come, JSON waits as text, only SARIF holds the findings, for its log is one object.
 */
export function printerFor(format: Format, io: Io, shown: Shown): Printer {
  switch (format) {
    case 'json':
      return jsonPrinter(io);
    case 'sarif':
      return sarifPrinter(io);
    case 'github':
      return {
        add: (report) => void io.stdout.write(toAnnotations([report])),
        refuse: (refused) => {
          io.stdout.write(toAnnotations([], [refused]));
          tellRefused(refused, io);
        },
        end: () => {},
      };
    default:
      return textPrinter(io, shown);
  }
}

/** Says on standard error that a file could not be read. */
export function tellRefused(refused: Refused, io: Io): void {
  say(io, `gaugeleaf: ${refused.message}`);
  if (refused.fix !== null) say(io, `           ${refused.fix}`);
}

function textPrinter(io: Io, { all = false, quiet = false }: Shown): Printer {
  const options = { color: usesColor(io, io.stdout), width: widthOf(io.stdout), all };
  let counts = none;
  let shown = false;
  const told = new Set<string>();
  return {
    add(report) {
      const found = countFindings([report]);
      // What lies between sheets comes last, for files that had their own findings before.
      counts = addCounts(counts, told.has(report.file) ? { ...found, files: 0 } : found);
      if (found.files > 0) told.add(report.file);
      const text = fileText(report, options);
      if (text === '') return;
      io.stdout.write(`${shown ? '\n' : ''}${text}`);
      shown = true;
    },
    refuse: (refused) => tellRefused(refused, io),
    end(files, others, { figures, twice }) {
      if (quiet) return;
      const noun = others > 0 ? 'file' : 'sheet';
      io.stdout.write(`${shown ? '\n' : ''}${summaryText(counts, files, options, noun)}`);
      if (figures > 0) io.stdout.write(`${twice} of ${figures} figures read twice\n`);
    },
  };
}

function jsonPrinter(io: Io): Printer {
  let counts = none;
  const refusals: Refused[] = [];
  const findings: string[] = [];
  return {
    add(report) {
      counts = addCounts(counts, countFindings([report]));
      for (const finding of report.findings) findings.push(findingJson(finding));
    },
    refuse(refused) {
      refusals.push(refused);
      tellRefused(refused, io);
    },
    end: () => void io.stdout.write(jsonObject(findings, counts, refusals)),
  };
}

function sarifPrinter(io: Io): Printer {
  const reports: FileReport[] = [];
  const refusals: Refused[] = [];
  return {
    add: (report) => void reports.push(report),
    refuse(refused) {
      refusals.push(refused);
      tellRefused(refused, io);
    },
    end() {
      const checks = [...allChecks, ...acrossChecks, ...projectChecks];
      io.stdout.write(toSarif(reports, { checks, version: packageVersion(), refused: refusals }));
    },
  };
}
