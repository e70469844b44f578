export {
  ALTITUDE_RELATION,
  type Altitude,
  usualAltitudes,
  vacuumByAltitude,
} from './altitude-table.ts';
export {
  isReduced,
  placeAtAltitude,
  placeAtBarometer,
  type ReadingPlace,
  vacuumCarried,
} from './carried-vacuum.ts';
export { altitudeNamed, altitudeReading, clubFigure, isSameHeight } from './club-figure.ts';
export {
  type CourseBroken,
  courseBroken,
  type OutOfPlace,
  outOfPlace,
  rowOff,
  stationsBeyond,
  stationsTwice,
} from './curve-course.ts';
export { type CurveDispute, curveDisputes, rowsAbove } from './curve-points.ts';
export { figureOf } from './figure.ts';
export { joined, toldInputs } from './input-text.ts';
export { type PairOutOfOrder, pairsOutOfOrder } from './orders.ts';
export { solvedKeys } from './solved-keys.ts';
export type { StatedPlace } from './stated-place.ts';
export {
  explainedByUnstated,
  inWordsOf,
  type OtherWay,
  otherWay,
  threadVerdict,
  wouldAgree,
  wouldAgreeAt,
} from './supposed.ts';
export { type Suspect, suspectsOf } from './suspects.ts';
export { type Likeness, likenesses } from './two-sheets.ts';
export type { Verdict } from './verdicts.ts';
export {
  isWrong,
  type WorkEntry,
  type WorkQuantity,
  type WorkResult,
  workTable,
} from './work-table.ts';
export {
  formulaNames,
  type WorkedFigure,
  type WorkedNumbers,
  workedNumbers,
} from './worked-numbers.ts';
