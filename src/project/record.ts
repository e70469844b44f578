import { type BenchRecord, type RecordFault, readRecord } from '../conformance/index.ts';
import { gaugeBook } from '../gauges/index.ts';
import { type FileFaults, fileFaults } from './file-faults.ts';
import { sheetItNames, textOfSheet } from './file-of-sheet.ts';
import type { Project } from './project.ts';

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
  const { file, text, fault } = textOfSheet(project, path, { called: 'record', begins: 'record' });
  const bare = { file, text, record: null, sheet: null };
  if (fault !== null) return { ...bare, faults: [{ kind: 'invalid', ...fault }] };
  const { record, faults } = readRecord(text, gaugeBook());
  if (record === null) return { ...bare, faults };
  const { span, value } = record.sheet;
  const named = sheetItNames(project, value);
  return 'sheet' in named
    ? { ...bare, record, ...named, faults }
    : { ...bare, faults: [...faults, { kind: 'invalid', span, ...named }] };
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
