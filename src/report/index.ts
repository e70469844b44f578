export { addRecordEdits } from './add-record.ts';
export { toAnnotations } from './annotations.ts';
export { checkList } from './check-list.ts';
export { comparisonText } from './compare-text.ts';
export { addCounts, type Counts, countFindings } from './counts.ts';
export { askCurve, curveData, curveText } from './curve-text.ts';
export { applyEdits, mend } from './edits.ts';
export { InheritedFindings } from './inherited-findings.ts';
export { findingJson, jsonObject } from './json.ts';
export type { JudgedRecord } from './judged-record.ts';
export { likeText } from './like-text.ts';
export { differencesText, guessText, listSummary, slipsText } from './list-text.ts';
export { measuredText } from './measured-text.ts';
export { paint } from './paint.ts';
export {
  type FileReport,
  type PlacedFinding,
  placeAcross,
  placeFindings,
  placeSheet,
  type Refused,
} from './placed.ts';
export { readingsJson, readingsText } from './readings-text.ts';
export { blankRecord } from './record-blank.ts';
export { faultyRecordJson, recordJson } from './record-json.ts';
export { recordText } from './record-text.ts';
export { rereadJson } from './reread-json.ts';
export { rereadText, tallyLine } from './reread-text.ts';
export { toSarif } from './sarif.ts';
export { type SheetToShare, shareSources } from './share-sources.ts';
export { sizeJson, unreadSizeJson } from './size-json.ts';
export { sizeRows, sizeText } from './size-text.ts';
export { stoppers, stoppersAcross } from './stops.ts';
export { fileText, summaryText } from './text.ts';
export { traceLegend, traceTable } from './trace-table.ts';
export { workText } from './work-text.ts';
