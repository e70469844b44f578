export type { OrderMove } from './cure.ts';
export { faultKey } from './fault-key.ts';
export { knownMarks, meets, plainWords, stateNamed } from './marks.ts';
export type * from './model.ts';
export { type OwnRules, ownRules, type RuleFault } from './own-rules.ts';
export { placeToCheck, placeToRestore } from './places.ts';
export { type Proof, proveOrder } from './proof.ts';
export { type ReadState, readStates, readSteps } from './reading.ts';
export {
  freePairs,
  orderedOperations,
  type Reversal,
  reversals,
  stageRank,
} from './sequence.ts';
export { workingOperations, workOf } from './steps.ts';
export { type TraceRow, type TraceStage, traceOf } from './trace.ts';
export { walkSheet, walkWork } from './walk.ts';
