import { realpathSync } from 'node:fs';
import { type BenchRecord, type RecordFault, readRecord } from '../conformance/index.ts';
import { gaugeBook } from '../gauges/index.ts';
import { nearestName } from '../text/index.ts';
import { type FileFaults, fileFaults } from './file-faults.ts';
import { fileId } from './file-id.ts';
import type { Project } from './project.ts';
import { readOwnText } from './read-text.ts';
import { causeInWords, Refusal } from './refusal.ts';

/** A bench record of a project, with the sheet that it belongs to. */
export interface RecordFile {
  /** As reports show it. */
  readonly file: string;
  readonly text: string;
  /** Null, with the reasons in `faults`, where it cannot be read or its sheet is not there. */
  readonly record: BenchRecord | null;
  /** Absolute path of its sheet; null where there is none. */
  readonly sheet: string | null;
  readonly faults: readonly RecordFault[];
}

/**
 * Reads the bench record at an absolute path. Mistakes in it come back as faults; fails with
 * `Refusal` where there is no such file, or none that is text.
 */
export function readRecordFile(project: Project, path: string): RecordFile {
  const file = project.show(path);
  let real: string;
  try {
    real = realpathSync(path);
  } catch (error) {
    throw new Refusal(
      `the record ${file} cannot be read: ${causeInWords(error)}`,
      'to begin one, name the sheet: gaugeleaf record orlo-t71-wexcombe-six',
    );
  }
  const read = readOwnText(project.root, real, file);
  if (!read.ok) throw new Refusal(read.message, read.fix);
  const { text } = read;
  if (read.fault !== null) {
    const { start, end, message, fix } = read.fault;
    const fault: RecordFault = { kind: 'invalid', span: { start, end }, message, fix };
    return { file, text, record: null, sheet: null, faults: [fault] };
  }
  const { record, faults } = readRecord(text, gaugeBook());
  if (record === null) return { file, text, record, sheet: null, faults };
  const sheets = project.sheets();
  const sheet = sheets.find((each) => fileId(each) === record.sheet.value) ?? null;
  if (sheet !== null) return { file, text, record, sheet, faults };
  const near = nearestName(record.sheet.value, sheets.map(fileId));
  const missing: RecordFault = {
    kind: 'invalid',
    span: record.sheet.span,
    message: `this project has no sheet \`${record.sheet.value}\``,
    fix: near === null ? 'correct the name of the sheet' : `did you mean \`${near}\`?`,
  };
  return { file, text, record: null, sheet, faults: [...faults, missing] };
}

/** The faults of a record as findings, by place. */
export function recordFindings(
  file: string,
  text: string,
  faults: readonly RecordFault[],
): FileFaults {
  return fileFaults(
    file,
    text,
    faults.map(({ kind, span, message, fix, related }) => ({
      check: `record-${kind}`,
      span,
      message,
      fix,
      related: related ?? [],
    })),
  );
}
