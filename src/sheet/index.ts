export {
  addBands,
  type Band,
  type CurveReading,
  type CurveRow,
  inOrder,
  isBelow,
  middleOf,
  NOTHING,
  ownBand,
  readingAt,
  rowsOf,
  stationNamed,
  stationOf,
  timesBand,
} from './curve.ts';
export { bandText, readingText, stationText } from './curve-words.ts';
export { type FamilyBook, linesOf, originOf, ownText, regionIn, type SheetText } from './family.ts';
export { entriesOf, Fields, itemsOf, under } from './fields.ts';
export { citing, curvesOf } from './figures.ts';
export { findFrontMatter } from './front-matter.ts';
export { gapsOf, type SettingGap } from './gaps.ts';
export { heldLimits } from './held-limits.ts';
export { type HouseTolerances, readHouseTolerance } from './house-tolerance.ts';
export { inMeasureOf, inOwnMeasure, timesOf } from './measure.ts';
export type { RecordBook, RecordTexts } from './measured-readings.ts';
export { operationIn, settingNamed } from './names.ts';
export { type PlainDissent, type PlainSetting, plainHead, plainSetting } from './plain.ts';
export { type ReadSheetOptions, readSheet } from './read-sheet.ts';
export { differs, isFollowed } from './rule-statements.ts';
export { gaugeWords, settingLabel, whereWords, withEquivalents } from './setting-words.ts';
export { type SharedSources, sourcesIn } from './shared-sources.ts';
export { isMeasured, kindOfSource } from './source-kind.ts';
export { lettersFor, tasksOf } from './tasks.ts';
export { unitCount } from './unit-count.ts';
export { ownOperation } from './work-rules.ts';
