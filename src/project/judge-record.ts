import { assessRecord, type RecordFault, tallyOf } from '../conformance/index.ts';
import type { AcceptanceRule } from '../conformance/model.ts';
import { type ReadOptions, wireGaugeNamed } from '../quantity/index.ts';
import {
  type FileReport,
  type JudgedRecord,
  placeFindings,
  type Refused,
} from '../report/index.ts';
import { type Examined, examineFile } from './examine-file.ts';
import type { Project } from './project.ts';
import { type RecordFile, readRecordFile, recordFindings } from './record.ts';
import { recordPlace } from './record-place.ts';

/** A judged record with all that was found of its sheet, what is wrong with it, or why its sheet can't be read. */
export type RecordOutcome =
  | { readonly judged: JudgedRecord; readonly examined: Examined & { readonly ok: true } }
  | { readonly report: FileReport }
  | { readonly refused: Refused };

/**
 * Reads and judges the record at an absolute path. With an error in it nothing is judged. Fails with
 * `Refusal` where there is no such file.
 */
export function judgeRecord(project: Project, path: string, rule: AcceptanceRule): RecordOutcome {
  const read = readRecordFile(project, path);
  if (read.record === null || read.sheet === null) return { report: reportOf(read, read.faults) };
  const examined = examineFile(project, read.sheet);
  if (!examined.ok) return { refused: examined.refused };
  const { sheet } = examined;
  const { gauges, wireGauge } = project.context(examined.path);
  const swg = sheet.wireGauge?.value ?? wireGauge;
  const options: ReadOptions = {
    gauges,
    swg: wireGaugeNamed(swg),
  };
  const place = recordPlace(read.record, sheet.kind, options);
  const assessed = assessRecord(read.record, sheet, rule, options, place);
  const report = reportOf(read, assessed.faults);
  if (assessed.faults.some(({ kind }) => kind === 'invalid')) return { report };
  const { file, record } = read;
  return { judged: { file, record, sheet, assessed, tally: tallyOf(assessed), report }, examined };
}

function reportOf({ file, text }: RecordFile, faults: readonly RecordFault[]): FileReport {
  const { findings, lines } = recordFindings(file, text, faults);
  return { file, findings: placeFindings(findings, lines) };
}
