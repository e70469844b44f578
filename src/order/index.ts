export { knownMarks, meets, stateNamed } from './marks.ts';
export type * from './model.ts';
export { type ReadState, readStates } from './reading.ts';
export {
  freePairs,
  type Move,
  movesFor,
  orderedOperations,
  type Reversal,
  reversals,
  stageRank,
} from './sequence.ts';
export { workingOperations, workOf } from './steps.ts';
export { walkSheet } from './walk.ts';
