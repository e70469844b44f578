import { basename, join, resolve } from 'node:path';
import { isAllRight, tallyWords } from '../../conformance/index.ts';
import {
  cardReadings,
  fileId,
  isTaken,
  judgeRecord,
  Projects,
  Refusal,
  recordFolder,
  schemaWay,
  serialWord,
  sheetNamed,
  writeWhole,
} from '../../project/index.ts';
import {
  blankRecord,
  type FileReport,
  faultyRecordJson,
  fileText,
  paint,
  recordJson,
  recordText,
} from '../../report/index.ts';
import { tellRefused } from '../findings-printer.ts';
import { hand, type Io, say, usesColor, widthOf } from '../io.ts';
import { blankPlace, trusted } from '../outlet.ts';
import { candidate, candidateFrom, type PrintOptions } from '../printing.ts';
import type { ExitStatus } from '../run.ts';
import { printCards } from './card.ts';

export interface RecordOptions extends PrintOptions {
  readonly simple?: boolean;
  readonly json?: boolean;
  readonly card?: boolean;
  /** Of a blank record: the unit's number, which also names the file. */
  readonly serial?: string;
  /** A source of measured units that the record is added to. */
  readonly addTo?: string;
}

/**
 * `gaugeleaf record`: of a record (a YAML file) the verdicts, or the card filled in; of a sheet a
 * blank record. 0 where all that can be judged is proven to conform, 1 where something is not, 2 where
 * the record or its sheet cannot be read.
 */
export async function record(name: string, options: RecordOptions, io: Io): Promise<ExitStatus> {
  const isRecord = /\.ya?ml$/i.test(name);
  refuseMixed(name, isRecord, options);
  return isRecord ? judge(name, options, io) : blank(name, options, io);
}

/** Options that mean nothing for what was named would otherwise be passed over in silence. */
function refuseMixed(name: string, isRecord: boolean, options: RecordOptions): void {
  const forRecord = ['simple', 'json', 'card'] as const;
  const stray = forRecord.find((option) => options[option] === true);
  if (!isRecord && stray !== undefined) {
    throw new Refusal(
      `--${stray} is for a record, and ${name} is none: its name does not end in .yaml`,
      'a record lies beside the sheets, such as sheets/records/orlo-t71-wexcombe-six.1234.yaml',
    );
  }
  if (!isRecord && options.addTo !== undefined) {
    throw new Refusal(
      `--add-to is for a record, and ${name} is none: its name does not end in .yaml`,
      'name the record: gaugeleaf record sheets/records/NAME.yaml --add-to SOURCE',
    );
  }
  if (isRecord && options.serial !== undefined) {
    throw new Refusal('--serial is for a blank record', `write the number in ${name} itself`);
  }
  const printing = (['paper', 'proof', 'browser'] as const).find(
    (key) => options[key] !== undefined,
  );
  if (options.card !== true && printing !== undefined) {
    throw new Refusal(`--${printing} is for printing`, 'add --card to print the card filled in');
  }
  if (isRecord && options.card !== true && options.out !== undefined) {
    throw new Refusal(
      '--out is for the card or a blank record',
      'add --card; the verdicts go to standard output',
    );
  }
  if (options.card === true && options.json === true) {
    throw new Refusal('--card and --json cannot both be had', 'ask for one after the other');
  }
}

async function judge(name: string, options: RecordOptions, io: Io): Promise<ExitStatus> {
  const path = resolve(io.cwd, name);
  const rule = options.simple === true ? 'simple' : 'guarded';
  const project = new Projects(io.cwd).of(path);
  const outcome = judgeRecord(project, path, rule);
  if ('refused' in outcome) {
    tellRefused(outcome.refused, io);
    return 2;
  }
  const report = 'report' in outcome ? outcome.report : outcome.judged.report;
  if (options.json !== true) tellFindings(report, io);
  if ('report' in outcome) {
    if (options.json === true) io.stdout.write(faultyRecordJson(report));
    else say(io, 'Nothing was judged. Mend the errors first.');
    return 2;
  }
  const { judged, examined } = outcome;
  if (options.addTo !== undefined) {
    const { addRecord } = await import('./record-add.ts');
    addRecord(project, path, examined, options.addTo, io);
    return 0;
  }
  const { tally } = judged;
  const card = candidateFrom(examined);
  const errors = card.findings.filter(({ severity }) => severity === 'error').length;
  if (errors > 0) {
    const many = errors === 1 ? '1 error' : `${errors} errors`;
    say(
      io,
      `note: the sheet ${card.sheet.file} has ${many}; the verdicts are by its figures all the same`,
    );
  }
  const status: ExitStatus = isAllRight(tally) ? 0 : 1;
  if (options.card === true) {
    say(io, tallyWords(tally, rule));
    const target = { project, path: card.path };
    const stem = basename(path).replace(/\.ya?ml$/i, '');
    const job = { target, card, name: stem, readings: cardReadings(judged) };
    const printed = await printCards([job], options, io);
    return printed === 0 ? status : printed;
  }
  io.stdout.write(
    options.json === true
      ? recordJson(judged)
      : recordText(judged, paint(usesColor(io, io.stdout))),
  );
  return status;
}

function tellFindings(report: FileReport, io: Io): void {
  if (report.findings.length === 0) return;
  const options = { color: usesColor(io, io.stderr), width: widthOf(io.stderr) };
  io.stderr.write(`${fileText(report, options)}\n`);
}

function blank(name: string, options: RecordOptions, io: Io): ExitStatus {
  const projects = new Projects(io.cwd);
  const target = sheetNamed(name, projects, io.cwd);
  const read = candidate(target.project, target.path, io);
  if (read === null) return 2;
  const { sheet } = read;
  if (sheet.settings.size === 0) {
    throw new Refusal(`${sheet.file} has no settings to record`, `gaugeleaf check ${sheet.file}`);
  }
  const { root, show } = target.project;
  const id = fileId(target.path);
  const serial = options.serial?.trim() || null;
  const path = blankPath(options.out, id, serial, root, io);
  if (path !== null && isTaken(path)) {
    throw new Refusal(
      `${show(path)} is there already, and a blank record never replaces a file`,
      'give the number of this unit with --serial, or another name with --out',
    );
  }
  const text = blankRecord({ sheet, id, serial, schema: schemaWay('record', path, root) });
  if (path === null) {
    hand(io, text);
    return 0;
  }
  writeWhole(path, text, { within: trusted(options.out, { root }, io) });
  io.stdout.write(`${show(path)}\n`);
  say(io, `Now fill in what you read: gaugeleaf record ${show(path)} judges it.`);
  return 0;
}

/**
 * Where a blank record goes: `sheets/records/` of the project, or beside the sheets where there is no
 * such folder, named for the sheet and the unit, unless `--out` says otherwise; null is standard output.
 */
function blankPath(
  out: string | undefined,
  id: string,
  serial: string | null,
  root: string,
  io: Io,
): string | null {
  const place = blankPlace(out, root, recordFolder, io);
  if (place === null || 'path' in place) return place?.path ?? null;
  const unit = serial === null ? '' : `.${serialWord(serial)}`;
  return join(place.folder, `${id}${unit}.yaml`);
}
