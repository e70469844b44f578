export { allowedText } from './allowed.ts';
export {
  hasReadings,
  listsOf,
  numberIn,
  pooled,
  printedFigure,
  samplesOf,
  unitsOf,
} from './samples.ts';
export {
  holds,
  isOffMean,
  isWithin,
  type MeasuredSummary,
  meanText,
  numberText,
  stretchText,
  summaryOf,
} from './summary.ts';
