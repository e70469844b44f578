export type { OrderMove } from './cure.ts';
export { meets } from './meets.ts';
export { ownRules } from './own-rules.ts';
export { placeToCheck, placeToRestore, stepToRestoreBefore } from './places.ts';
export { type Proof, proveOrder } from './proof.ts';
export { freePairs, orderedOperations, stageRank } from './sequence.ts';
export { workingOperations, workOf } from './steps.ts';
export { type TraceRow, type TraceStage, traceOf } from './trace.ts';
