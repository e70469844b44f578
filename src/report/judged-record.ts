import type { AssessedRecord, BenchRecord, Tally } from '../conformance/index.ts';
import type { Sheet } from '../sheet/model.ts';
import type { FileReport } from './placed.ts';

/** A record that was read and judged, with its sheet. */
export interface JudgedRecord {
  readonly file: string;
  readonly record: BenchRecord;
  readonly sheet: Sheet;
  readonly assessed: AssessedRecord;
  readonly tally: Tally;
  /** What was found in the record itself. */
  readonly report: FileReport;
}
