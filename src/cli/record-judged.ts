import {
  type AcceptanceRule,
  type AssessedRecord,
  assessRecord,
  type BenchRecord,
  type RecordFault,
  type VerdictWord,
  verdictWord,
} from '../conformance/index.ts';
import { type RecordFile, readRecordFile, recordFindings } from '../project/record.ts';
import type { ReadOptions } from '../quantity/index.ts';
import { type FileReport, placeFindings } from '../report/index.ts';
import type { Io } from './io.ts';
import { type Candidate, candidate } from './printing.ts';
import { recordPlace } from './record-place.ts';
import type { Projects } from './targets.ts';

/** How many of a record's settings came out which way, by their as-left readings. */
export type Tally = Readonly<Record<VerdictWord | 'no reading', number>>;

/** A record that was read, with its sheet and the verdicts. */
export interface JudgedRecord {
  readonly file: string;
  readonly record: BenchRecord;
  readonly card: Candidate;
  readonly assessed: AssessedRecord;
  readonly tally: Tally;
  readonly report: FileReport;
}

/** A record that has been judged, or what is wrong with it; null where its sheet cannot be read. */
export type RecordOutcome = JudgedRecord | { readonly report: FileReport } | null;

/**
 * Reads and judges the record at an absolute path. With an error in it nothing is judged. Fails with
 * `Refusal` where there is no such file.
 */
export function judgeRecord(
  projects: Projects,
  path: string,
  rule: AcceptanceRule,
  io: Io,
): RecordOutcome {
  const project = projects.of(path);
  const read = readRecordFile(project, path);
  if (read.record === null || read.sheet === null) return { report: reportOf(read, read.faults) };
  const card = candidate(project, read.sheet, io);
  if (card === null) return null;
  const { gauges, wireGauge } = project.context(card.path);
  const swg = card.sheet.wireGauge?.value ?? wireGauge;
  const options: ReadOptions = {
    gauges,
    swg: swg === 'imperial' || swg === 'us-steel' ? swg : null,
  };
  const place = recordPlace(read.record, card.sheet.kind, options);
  const assessed = assessRecord(read.record, card.sheet, rule, options, place);
  const report = reportOf(read, assessed.faults);
  if (assessed.faults.some(({ kind }) => kind === 'invalid')) return { report };
  const { file, record } = read;
  return { file, record, card, assessed, tally: tallyOf(assessed), report };
}

/** Whether everything that could be judged is proven right, and something was. */
export function isAllRight(tally: Tally): boolean {
  const wrong = tally['does not conform'] + tally.unproven + tally['no reading'];
  return wrong === 0 && tally.conforms > 0;
}

function reportOf({ file, text }: RecordFile, faults: readonly RecordFault[]): FileReport {
  const { findings, lines } = recordFindings(file, text, faults);
  return { file, findings: placeFindings(findings, lines) };
}

function tallyOf({ entries }: AssessedRecord): Tally {
  const tally = {
    conforms: 0,
    'does not conform': 0,
    unproven: 0,
    'no limits': 0,
    'no reading': 0,
  };
  for (const { left } of entries) tally[left === null ? 'no reading' : verdictWord(left)] += 1;
  return tally;
}
