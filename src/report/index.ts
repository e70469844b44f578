export { toAnnotations } from './annotations.ts';
export { addCounts, type Counts, countFindings } from './counts.ts';
export { applyEdits, type Mended, mend } from './edits.ts';
export { findingJson, jsonObject, toJson } from './json.ts';
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
export { type SarifOptions, toSarif } from './sarif.ts';
export { type Sharing, type SheetToShare, shareSources } from './share-sources.ts';
export { stoppers } from './stops.ts';
export { fileText, summaryText, type TextOptions, toText } from './text.ts';
export { visible } from './visible.ts';
export { wrap } from './wrap.ts';
