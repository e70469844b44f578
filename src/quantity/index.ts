export { type AgreeOptions, agree, liesInside } from './agree.ts';
export { type AmountVerdict, compareAmounts } from './compare.ts';
export {
  agreeLimits,
  type Conversion,
  type ConversionOptions,
  convertLimits,
  type LimitsAgreement,
} from './convert.ts';
export { asFraction, differenceText, gapText, rewritten, sizeBeside } from './difference.ts';
export { type Equivalents, equivalents, figuresIn, figuresText } from './equivalents.ts';
export {
  GAUGE_FAMILIES,
  gaugeLabel,
  isFlat,
  isNamedBySize,
  isNumbered,
  SYSTEMS,
  saysItsSize,
  systemRecord,
  systemsWhere,
  type WireGauge,
  wireGaugeNamed,
} from './gauge-systems.ts';
export { LETTERS_PATTERN, NUMBERED_PATTERN } from './gauge-words.ts';
export { heightText } from './height-text.ts';
export { type ExactFigures, type PrintedFigures, printedFigures } from './inward.ts';
export { FLOW_NUMBER, type JetNumbering, jetNumbering } from './jets.ts';
export { NOT_STATED } from './lexicon.ts';
export { findMisprint, likelySlips, type RankedMisprint } from './misprint.ts';
export type * from './model.ts';
export { normalize } from './normalize.ts';
export { numberWordsAt } from './number-words.ts';
export { type FoundStatement, scanStatements } from './prose.ts';
export {
  exactPlaces,
  exactText,
  formatDecimal,
  type RoundingMode,
  rational,
  roundTo,
} from './rational.ts';
export { namedTool, type ReadOptions, readStatement } from './read.ts';
export {
  allUnits,
  inUnit,
  isUnit,
  sameFamily,
  toBase,
  type UnitOfMeasure,
  unitById,
} from './units.ts';
export { principal, unitWord, writeCount, writeIn, writeStatement } from './write.ts';
