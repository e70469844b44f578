export { toAnnotations } from './annotations.ts';
export { checkList } from './check-list.ts';
export { changeWord, comparisonText } from './compare-text.ts';
export { addCounts, type Counts, countFindings } from './counts.ts';
export { applyEdits, type Mended, mend } from './edits.ts';
export { InheritedFindings } from './inherited-findings.ts';
export { findingJson, jsonObject, toJson } from './json.ts';
export type { JudgedRecord } from './judged-record.ts';
export { differencesText, guessText, listSummary, slipsText } from './list-text.ts';
export { type Paint, paint } from './paint.ts';
export {
  type FileReport,
  type PlacedFinding,
  placeAcross,
  placeFindings,
  placeSheet,
  type Refused,
  type Region,
  regionOf,
} from './placed.ts';
export { type BlankRecord, blankRecord } from './record-blank.ts';
export { faultyRecordJson, recordJson } from './record-json.ts';
export { recordText } from './record-text.ts';
export { type SarifOptions, toSarif } from './sarif.ts';
export { type Sharing, type SheetToShare, shareSources } from './share-sources.ts';
export { sizeJson, unreadSizeJson } from './size-json.ts';
export { sizeRows, sizeText } from './size-text.ts';
export { stoppers, stoppersAcross } from './stops.ts';
export { fileText, summaryText, type TextOptions, toText } from './text.ts';
export { traceLegend, traceTable } from './trace-table.ts';
export { visible } from './visible.ts';
export { wrap } from './wrap.ts';
