import type { Relation } from '../model.ts';
import barometerAtAltitude from './barometer-at-altitude.ts';
import benchFuelLevel from './bench-fuel-level.ts';
import closedTime from './closed-time.ts';
import dwellShare from './dwell-share.ts';
import equalFlow from './equal-flow.ts';
import equalGap from './equal-gap.ts';
import equivalentBore from './equivalent-bore.ts';
import evenLobes from './even-lobes.ts';
import floatDropTravel from './float-drop-travel.ts';
import floatLever from './float-lever.ts';
import fuelHead from './fuel-head.ts';
import gapAndDwell from './gap-and-dwell.ts';
import halfSpeedAngle from './half-speed-angle.ts';
import halfSpeedShaft from './half-speed-shaft.ts';
import idleVacuumAtAltitude from './idle-vacuum-at-altitude.ts';
import jetFlow from './jet-flow.ts';
import jetNumber from './jet-number.ts';
import jetRatio from './jet-ratio.ts';
import mixtureAtAltitude from './mixture-at-altitude.ts';
import needleArea from './needle-area.ts';
import needleQuarterTurn from './needle-quarter-turn.ts';
import needleShut from './needle-shut.ts';
import nozzleLip from './nozzle-lip.ts';
import pairDepression from './pair-depression.ts';
import pairFlow from './pair-flow.ts';
import pairFlowByWeight from './pair-flow-by-weight.ts';
import pumpDisplacement from './pump-displacement.ts';
import pumpStrokes from './pump-strokes.ts';
import rimLength from './rim-length.ts';
import rodArea from './rod-area.ts';
import rodEnrichment from './rod-enrichment.ts';
import rodSteps from './rod-steps.ts';
import screwTravel from './screw-travel.ts';
import shareOfSpacing from './share-of-spacing.ts';
import shotDuration from './shot-duration.ts';
import springRate from './spring-rate.ts';
import springRateByWeight from './spring-rate-by-weight.ts';
import stopLever from './stop-lever.ts';
import throttleArea from './throttle-area.ts';
import throttleBarrels from './throttle-barrels.ts';
import throttleGap from './throttle-gap.ts';
import throttleOpening from './throttle-opening.ts';
import timedFlow from './timed-flow.ts';
import wearClearance from './wear-clearance.ts';
import weightOfFlow from './weight-of-flow.ts';

/**
 * All relations, in the order in which the documentation has them: each file of this folder once.
 */
export const relations: readonly Relation[] = [
  screwTravel,
  shareOfSpacing,
  stopLever,
  throttleOpening,
  throttleGap,
  throttleArea,
  throttleBarrels,
  equalGap,
  equalFlow,
  rodArea,
  equivalentBore,
  rodEnrichment,
  rodSteps,
  needleArea,
  needleQuarterTurn,
  pumpDisplacement,
  pumpStrokes,
  shotDuration,
  jetNumber,
  jetFlow,
  jetRatio,
  timedFlow,
  weightOfFlow,
  floatDropTravel,
  floatLever,
  nozzleLip,
  fuelHead,
  benchFuelLevel,
  needleShut,
  barometerAtAltitude,
  idleVacuumAtAltitude,
  mixtureAtAltitude,
  pairFlow,
  pairFlowByWeight,
  pairDepression,
  springRate,
  springRateByWeight,
  wearClearance,
  rimLength,
  evenLobes,
  dwellShare,
  closedTime,
  gapAndDwell,
  halfSpeedAngle,
  halfSpeedShaft,
];
