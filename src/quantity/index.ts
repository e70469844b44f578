export { agree, liesInside } from './agree.ts';
export { spaced } from './amount-text.ts';
export { incomparable } from './comparable.ts';
export { compareAmounts } from './compare.ts';
export { agreeLimits, convertLimits, type LimitsAgreement } from './convert.ts';
export { asFraction, differenceText, gapText, rewritten, sizeBeside } from './difference.ts';
export {
  equivalents,
  figuresIn,
  figuresText,
  type LengthFigures,
  lengthFigures,
} from './equivalents.ts';
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
export { normalize } from './normalize.ts';
export { numberWordsAt } from './number-words.ts';
export { scanStatements } from './prose.ts';
export {
  exactPlaces,
  exactText,
  formatDecimal,
  greater,
  type RoundingMode,
  rational,
  roundTo,
  ZERO,
} from './rational.ts';
export { type ReadOptions, readStatement } from './read.ts';
export { namedTool } from './read-words.ts';
export { rescaled } from './rescaled.ts';
export { opposites } from './sense.ts';
export {
  allUnits,
  inUnit,
  isUnit,
  sameFamily,
  toBase,
  type UnitOfMeasure,
  unitById,
} from './units.ts';
export { placesToShow, principal, unitWord, usualPlaces, writeCount, writeIn } from './write.ts';
