export { altitudeReadings, tableAltitudes } from './altitude-readings.ts';
export { type OperationBody, type SheetBody, sheetBody } from './body.ts';
export { type SourceLine, sourceLines } from './citations.ts';
export { type EditorsNote, editorsNotes } from './editors-notes.ts';
export { endState } from './end-state.ts';
export { type Gathering, gaugesToGather } from './gauges-to-gather.ts';
export { type HazardWords, hazardWords } from './hazard-words.ts';
export { ruleNotes } from './rule-notes.ts';
export { type SafetyGroup, type SafetyLine, safetyGroups, safetyLines } from './safety.ts';
export {
  AS_WRITTEN,
  type DissentLine,
  type GaugeTold,
  type SettingRow,
  settingRows,
  type ValueLine,
} from './setting-rows.ts';
export { hasError, type SheetFace, sheetFace } from './sheet-face.ts';
export { sheetMarks, withMarks } from './sheet-marks.ts';
export { signalOrder } from './signal-order.ts';
export { stepFigures } from './step-figures.ts';
export type { WorkedFacts, WorkedLine } from './worked-lines.ts';
