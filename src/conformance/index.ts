export { type Assessed, type AssessedSize, limitsIn } from './assess.ts';
export {
  type AssessedEntry,
  type AssessedRecord,
  assessRecord,
  type RecordPlace,
} from './assess-record.ts';
export { limitsText, uncertaintyFigure } from './figure.ts';
export { leftTexts } from './left-texts.ts';
export { readRecord } from './read-record.ts';
export type { BenchRecord, RecordFault } from './record.ts';
export { wantedOf } from './stated-limits.ts';
export { isAllRight, type Tally, tallyOf, tallyWords } from './tally.ts';
export {
  percentWords,
  readingText,
  reasonFor,
  ruleWords,
  trustWords,
  type VerdictWord,
  verdictWord,
} from './words.ts';
